/** Lengths as people write them in settings, a number and a physical unit; measures and counts as they are told. */

/** Millimetres in one unit. CSS Values and Units, "Absolute Lengths" (1in = 2.54cm = 96px). */
const MILLIMETRES: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  px: 25.4 / 96,
};

/**
 * Reads `148mm`, `6.14 in`, `.5cm`.
 * @returns millimetres, or undefined where the text is no such length. A number without a unit is no length.
 */
export function parseLength(text: string): number | undefined {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]+)\s*$/i.exec(text);
  const factor = MILLIMETRES[match?.[2]?.toLowerCase() ?? ''];
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
