/** Edits of the root element that add sheet round the artwork, at the scale that it has. */

import type { Drawing } from '../../drawing/types';
import { OVERLAY_GRID } from '../../geometry/base/tolerances';
import { attributeOf } from '../../markup/query';
import { MM_PER_PX } from '../../text/css-units';
import type { TextEdit } from '../../text/text';
import { attributeEdits, lengthText, unitOf } from './root-attributes';

/**
 * Edits after which the drawing's frame reaches `margin` mm farther on every side, with everything in it at its old size:
 * the viewBox grows, and whatever states the size. Register marks stay where they are among the artwork.
 * @returns undefined where a style sets the size, or nothing is drawn
 */
export function marginEdits(drawing: Drawing, margin: number): TextEdit[] | undefined {
  const { document, width, height, toMm, ownSize } = drawing;
  const { root, text } = document;
  const { a, d, e, f } = toMm;
  if (!root || ownSize.byStyle || !(width > 0) || !(height > 0) || !(a > 0) || !(d > 0)) return undefined;
  const [wide, high] = [width + 2 * margin, height + 2 * margin];
  const viewBox = [
    [(-margin - e) / a, a],
    [(-margin - f) / d, d],
    [wide / a, a],
    [high / d, d],
  ].map(([value = 0, scale = 1]) => userUnits(value, scale));
  const sizes = { width: wide, height: high, 'data-tombolo-width': wide, 'data-tombolo-height': high };
  const stated = Object.entries(sizes).flatMap(([name, length]) => {
    const value = attributeOf(root, name)?.value;
    return value === undefined || value.includes('%') ? [] : [[name, lengthLike(value, length)]];
  });
  return attributeEdits(text, root, { viewBox: viewBox.join(' '), ...Object.fromEntries(stated) });
}

/** In the unit that the author has; what is in px says no real size afterwards either. */
function lengthLike(value: string, mm: number): string {
  const pixels = /^[-+.\d]*(px)?$/i.exec(value.trim());
  if (!pixels) return lengthText(mm, unitOf(value));
  return `${userUnits(mm / MM_PER_PX, MM_PER_PX)}${pixels[1] ?? ''}`;
}

/** To a tenth of a micrometre, without needless digits. */
function userUnits(value: number, mmPerUnit: number): string {
  const decimals = Math.max(0, Math.min(12, Math.ceil(-Math.log10(OVERLAY_GRID / mmPerUnit) - 1e-9)));
  return String(Number(value.toFixed(decimals)) + 0);
}
