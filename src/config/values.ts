/** Values as people write them in settings, a number and a unit; measures and counts as they are told. */
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

/**
 * Reads `20mm/s`, `1200 mm/min`, `1in/s`.
 * @returns mm/s, or undefined where the text is no such speed
 */
export function parseSpeed(text: string): number | undefined {
  const match = /^(.+)\/\s*(s|sec|min)\s*$/i.exec(text);
  const distance = parseLength(match?.[1] ?? '');
  if (distance === undefined) return undefined;
  return match?.[2]?.toLowerCase() === 'min' ? distance / 60 : distance;
}

/**
 * Reads `500mm/s²` and `500 mm/s2`.
 * @returns mm/s², or undefined where the text is no such acceleration
 */
export function parseAcceleration(text: string): number | undefined {
  const match = /^(.+)\/\s*s\s*(?:²|\^?2)\s*$/i.exec(text);
  return parseLength(match?.[1] ?? '');
}

/**
 * Reads `1.5m²`, `1.5 m2`.
 * @returns m², or undefined where the text is no such area
 */
export function parseArea(text: string): number | undefined {
  const match = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*m(?:²|\^?2)\s*$/i.exec(text);
  return match ? Number(match[1]) : undefined;
}

/**
 * Reads `10000mm/s³` and `10000 mm/s3`.
 * @returns mm/s³, or undefined where the text is no such jerk
 */
export function parseJerk(text: string): number | undefined {
  const match = /^(.+)\/\s*s\s*(?:³|\^?3)\s*$/i.exec(text);
  return parseLength(match?.[1] ?? '');
}

/**
 * Reads `3000MPa`, `4.5 GPa`.
 * @returns MPa, or undefined where the text is no such modulus
 */
export function parseStiffness(text: string): number | undefined {
  return scaled(text, { mpa: 1, gpa: 1000 });
}

/**
 * Reads `800kg/m³`, `800 kg/m3`, `0.8g/cm³`.
 * @returns kg/m³, or undefined where the text is no such density
 */
export function parseDensity(text: string): number | undefined {
  return scaled(text.replace('³', '3'), { 'kg/m3': 1, 'g/cm3': 1000 });
}

/**
 * Reads `6.75mN·m`, `6.75 mNm`, `0.00675N·m`.
 * @returns mN·m, or undefined where the text is no such bending stiffness
 */
export function parseBendingStiffness(text: string): number | undefined {
  return scaled(text.replace(/[·*⋅]/g, ''), { mnm: 1, nm: 1000, nmm: 1 });
}

/**
 * Reads `240g/m²`, `240 g/m2`, `240gsm`.
 * @returns g/m², or undefined where the text is no such weight
 */
export function parseGrammage(text: string): number | undefined {
  return scaled(text.replace('²', '2'), { 'g/m2': 1, gsm: 1 });
}

/**
 * Reads `0.04N`, `40 mN`.
 * @returns newtons, or undefined where the text is no such force
 */
export function parseForce(text: string): number | undefined {
  return scaled(text, { n: 1, mn: 1e-3 });
}

function scaled(text: string, units: Readonly<Record<string, number>>): number | undefined {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z][a-z0-9/]*)\s*$/i.exec(text);
  const unit = match?.[2]?.toLowerCase() ?? '';
  if (!match || !Object.hasOwn(units, unit)) return undefined;
  const value = Number(match[1]) * (units[unit] as number);
  return Number.isFinite(value) ? value : undefined;
}

/** `0.8` → `0.80 mm`: two decimals are what a caliper shows and what the limits are stated in. */
export function formatMillimetres(value: number): string {
  return `${value.toFixed(2)} mm`;
}

/** mm²: of less, only that it is less is told. */
const LEAST_AREA = 0.001;

/** `272.8 mm²`, `0.0031 mm²` of what is smaller than 1 mm², `under 0.001 mm²` of what nobody can see. */
export function formatArea(value: number): string {
  if (value < LEAST_AREA) return `under ${LEAST_AREA} mm²`;
  return `${value < 1 ? value.toPrecision(2) : value.toFixed(1)} mm²`;
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
