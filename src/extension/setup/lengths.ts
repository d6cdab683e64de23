/** Lengths as people type them. */
import { parseLength } from '../../config/values';

const MM_PER_PIXEL = 25.4 / 96;

/** mm: what a drawing's user units are taken for where they can be millimetres. */
const LIKELY = { from: 20, to: 600 };

/** Where nothing is likely: A6, lying. */
const USUAL_WIDTH = '148mm';

const NUMBER = /^\d+(?:[.,]\d+)?$/;

/** What was typed, with `mm` where it is a number alone. A comma is a decimal point. */
export function withUnit(text: string): string {
  const trimmed = text.trim();
  return NUMBER.test(trimmed) ? `${trimmed.replace(',', '.')}mm` : trimmed;
}

/**
 * What is likely meant to be the width of the artwork, with its unit: what the drawing says; else as many millimetres
 * as it has user units.
 * @param width mm, as the drawing is read now
 */
export function likelyWidth(width: number, sizeStated: boolean): string {
  if (sizeStated) return `${Number(width.toFixed(2))}mm`;
  const units = Number((width / MM_PER_PIXEL).toFixed(2));
  return units >= LIKELY.from && units <= LIKELY.to ? `${units}mm` : USUAL_WIDTH;
}

/** "148 × 105", "148mm x 105mm", "6in * 4in". In mm; undefined where it is not two lengths above zero. */
export function parseSides(text: string): readonly [number, number] | undefined {
  const [width, height, ...more] = text.split(/[x×*]/i).map((side) => parseLength(withUnit(side)) ?? 0);
  return width && height && width > 0 && height > 0 && more.length === 0 ? [width, height] : undefined;
}
