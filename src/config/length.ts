/** Lengths as people write them in settings, a number and a physical unit; measures and counts as they are told. */
import { MM_PER_UNIT } from '../text/css-units';

/**
 * Reads `148mm`, `6.14 in`, `.5cm`.
 * @returns millimetres, or undefined where the text is no such length. A number without a unit is no length.
 */
export function parseLength(text: string): number | undefined {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]+)\s*$/i.exec(text);
  const factor = MM_PER_UNIT[match?.[2]?.toLowerCase() ?? ''];
  if (!match || factor === undefined) return undefined;
  const value = Number(match[1]) * factor;
  return Number.isFinite(value) ? value : undefined;
}

/** `0.8` → `0.80 mm`: two decimals are what a caliper shows and what the limits are stated in. */
export function formatMillimetres(value: number): string {
  return `${value.toFixed(2)} mm`;
}

/** `148.0 × 105.0 mm`. */
export function formatSides(width: number, height: number, decimals: number): string {
  return `${width.toFixed(decimals)} × ${height.toFixed(decimals)} mm`;
}

/** At most two decimals, none that say nothing: `148`, `52.5`. */
export function shortNumber(value: number): string {
  return String(Number(value.toFixed(2)));
}

/** `148 × 52.5 mm`. */
export function shortSides(width: number, height: number): string {
  return `${shortNumber(width)} × ${shortNumber(height)} mm`;
}

/** `1 island`, `3 islands`. */
export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
