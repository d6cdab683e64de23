/** What makes a bridge that is not in the text yet be found: a ring round a small one, and its measure. Window pixels. */
import type { Point } from '../../geometry/base/curve-types';
import { setAttributes, setText, svg } from '../dom/dom';

/** Pixels: a strip shorter than this is ringed; the ring's radius. */
export const SMALL = 24;
const RING = 11;

/** Round the origin. */
export function makeRing(): SVGGElement {
  const rings = ['ghost-halo', 'ghost-ring'].map((name) => svg('circle', { class: name, r: RING }));
  return svg('g', {}, rings);
}

export function makeMeasure(): SVGGElement {
  return svg('g', {}, [svg('rect', { class: 'plate', height: 18, rx: 4 }), svg('text', { class: 'tape-label' })]);
}

/** @param at the middle of the writing; undefined for none */
export function writeMeasure(measure: SVGGElement, text: string, at: Point | undefined): void {
  const [plate, label] = measure.children;
  const { x, y } = at ?? { x: 0, y: 0 };
  const width = text.length * 6.6 + 12;
  setAttributes(measure, { visibility: at ? 'inherit' : 'hidden' });
  if (plate) setAttributes(plate, { x: x - width / 2, y: y - 9, width });
  if (!label) return;
  setAttributes(label, { x, y });
  setText(label, text);
}
