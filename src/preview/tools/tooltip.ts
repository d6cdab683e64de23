/** The card that tells the measures of a part, beside it on the picture and aloud. */

import { formatSides } from '../../config/values';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import type { PreviewLayer } from '../../protocol/index';
import type { PartKind, PickedPart } from '../../protocol/parts';
import { html, setAttributes, setText, svg, syncChildren } from '../dom/dom';
import type { Size } from '../state/viewport';

/** Pixels between the pointer and the card. */
const OFF = 14;

const NAMES: Readonly<Record<PartKind, string>> = {
  opening: 'Opening',
  island: 'Island',
  tie: 'Narrow bridge',
  slot: 'Narrow slot',
  sheet: 'Sheet',
};

export class PartCard {
  readonly element = html('div', { class: 'part-card', role: 'tooltip', id: 'part-card' });
  private readonly swatch = svg('rect', { width: 11, height: 11, x: 0.5, y: 0.5, rx: 2 });
  private readonly title = html('strong');
  private readonly rows = html('dl');

  constructor() {
    const swatch = svg('svg', { class: 'swatch', width: 12, height: 12, 'aria-hidden': 'true' }, [this.swatch]);
    this.element.append(html('p', {}, [swatch, this.title]), this.rows);
    this.element.hidden = true;
  }

  /** @param at in the window; the card stands beside it, wherever there is room */
  show(part: PickedPart, layer: PreviewLayer, at: Point, window: Size): void {
    setAttributes(this.swatch, { fill: layer.paint });
    setText(this.title, titleOf(part, layer));
    const makeRow = () => html('div', {}, [html('dt'), html('dd')]);
    syncChildren(this.rows, measuresOf(part, layer), makeRow, (row, [name, text]) => {
      const [term, value] = row.children;
      if (term) setText(term as HTMLElement, name);
      if (value) setText(value as HTMLElement, text);
    });
    this.element.hidden = false;
    const { offsetWidth, offsetHeight } = this.element;
    const x = at.x + OFF + offsetWidth > window.width ? at.x - OFF - offsetWidth : at.x + OFF;
    const y = at.y + OFF + offsetHeight > window.height ? at.y - OFF - offsetHeight : at.y + OFF;
    this.element.style.setProperty('transform', `translate(${Math.max(x, 0)}px, ${Math.max(y, 0)}px)`);
  }

  hide(): void {
    this.element.hidden = true;
  }

  get shown(): boolean {
    return !this.element.hidden;
  }
}

/** "Opening 3 of 12, Sun" */
export function titleOf({ kind, number, count }: PickedPart, { name }: PreviewLayer): string {
  return count === 0 ? `${NAMES[kind]}, ${name}` : `${NAMES[kind]}, part ${number + 1} of ${count}, ${name}`;
}

/**
 * All that is told of a part, in one sentence: where it lies tells it from its like.
 * @param sheet its box in the part's mm
 */
export function spoken(part: PickedPart, layer: PreviewLayer, sheet: Box): string {
  // The title names the layer already.
  const measures = measuresOf(part, layer).filter(([name]) => name !== 'layer');
  return [
    titleOf(part, layer),
    placeInWords(part.at, sheet),
    ...measures.map(([name, text]) => `${name} ${text}`),
  ].join(', ');
}

/** "upper left", "middle", "right": in which ninth of the sheet a point lies. */
function placeInWords({ x, y }: Point, { minX, minY, maxX, maxY }: Box): string {
  const third = (value: number, from: number, to: number) => Math.floor(((value - from) / (to - from)) * 3);
  const [column, row] = [third(x, minX, maxX), third(y, minY, maxY)];
  const words = [row < 1 ? 'upper' : row > 1 ? 'lower' : '', column < 1 ? 'left' : column > 1 ? 'right' : ''];
  return words.filter((word) => word !== '').join(' ') || 'middle';
}

function measuresOf(part: PickedPart, { paint, openingCount, name }: PreviewLayer): (readonly [string, string])[] {
  const { kind, width, height, area, cutLength, across } = part;
  const size = formatSides(width, height, 2);
  if (across !== undefined)
    return [
      ['across', `${across.toFixed(2)} mm`],
      ['layer', name],
      ['paint', paint],
    ];
  return [
    ['size', size],
    [kind === 'sheet' ? 'material' : 'area', `${area.toFixed(area < 10 ? 2 : 1)} mm²`],
    ['cut', `${cutLength.toFixed(1)} mm`],
    ...(kind === 'sheet' ? [['openings', String(openingCount)] as const] : []),
    ['layer', name],
    ['paint', paint],
  ];
}
