/** A path of many rings on the page, drawn anew only when it changes or when other parts of it come into sight. */
import type { Box } from '../../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../../geometry/base/ring';
import { setAttributes, svg } from '../dom/dom';
import { levelFor, OutlineRings } from './outline-rings';

export class OutlinePath {
  /** In sheet mm. */
  readonly element: SVGPathElement;
  private readonly rings = new OutlineRings();
  private drawn: { readonly area: Box; readonly level: number } | undefined;

  constructor(attributes: Readonly<Record<string, string | number>> = {}) {
    this.element = svg('path', { 'fill-rule': 'evenodd', d: '', ...attributes });
  }

  /** @param text path data of the stack; it shows with the next `show` */
  set(text: string): void {
    if (this.rings.set(text)) this.drawn = undefined;
  }

  /**
   * Draws what is needed for a part of the sheet, and some more on all sides, so that small moves cost nothing.
   * @param seen the part that is seen, in the path's own mm
   * @param scale CSS pixels to the mm
   * @param slack how many levels of detail what is drawn may be off
   */
  show(seen: Box, scale: number, slack = 0): void {
    const level = levelFor(scale);
    const { drawn } = this;
    if (drawn && Math.abs(drawn.level - level) <= slack && boxContainsBox(drawn.area, seen)) return;
    const area = growBox(seen, Math.max(seen.maxX - seen.minX, seen.maxY - seen.minY) / 2);
    this.drawn = { area, level };
    setAttributes(this.element, { d: this.rings.within(area, level) });
  }
}
