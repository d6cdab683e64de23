/** The outline of the cutting area, with the sheet laid into its upper left corner. */

import type { Box } from '../../geometry/base/polygon-types';
import type { Scene } from '../../picture/scene';
import type { PreviewStack } from '../../protocol/index';
import { setAttributes, setText, svg } from '../dom/dom';
import { toWindow, type Viewport } from '../state/viewport';

export class CuttingArea {
  /** In window pixels. */
  readonly element = svg('g', { class: 'cutting-area', 'aria-hidden': 'true' });
  private readonly outline = svg('rect');
  private readonly label = svg('text');
  private wanted = false;
  private known: Box | undefined;

  constructor() {
    this.element.append(this.outline, this.label);
  }

  show(wanted: boolean): void {
    this.wanted = wanted;
  }

  get shown(): boolean {
    return this.wanted;
  }

  /** In sheet mm; undefined where none is shown. Sheets that are laid out side by side lie on none. */
  get box(): Box | undefined {
    return this.wanted ? this.known : undefined;
  }

  draw({ bed, sheet }: PreviewStack, { kind }: Scene): void {
    this.known = bed && kind !== 'sheets' ? areaBelow(sheet, bed) : undefined;
  }

  place(view: Viewport): void {
    const { box } = this;
    setAttributes(this.element, { visibility: box ? 'visible' : 'hidden' });
    if (!box) return;
    const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
    const { x, y } = toWindow(view, { x: box.minX, y: box.minY });
    const end = toWindow(view, { x: box.maxX, y: box.maxY });
    setAttributes(this.outline, { x, y, width: width * view.scale, height: height * view.scale });
    setAttributes(this.label, { x: end.x - 6, y: end.y - 6 });
    setText(this.label, `Cutting area, ${width} × ${height} mm`);
  }
}

/** Turned by a quarter where the sheet fits only so. */
export function areaBelow(sheet: Box, [width, height]: readonly [number, number]): Box {
  const [wide, high] = [sheet.maxX - sheet.minX, sheet.maxY - sheet.minY];
  const turned = (wide > width || high > height) && wide <= height && high <= width;
  const { minX, minY } = sheet;
  return turned
    ? { minX, minY, maxX: minX + height, maxY: minY + width }
    : { minX, minY, maxX: minX + width, maxY: minY + height };
}
