/** Quantities other than lengths, as people write them in settings: a number and a unit. */
import { parseLength } from './length';

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

function scaled(text: string, units: Readonly<Record<string, number>>): number | undefined {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z][a-z0-9/]*)\s*$/i.exec(text);
  const unit = match?.[2]?.toLowerCase() ?? '';
  if (!match || !Object.hasOwn(units, unit)) return undefined;
  const value = Number(match[1]) * (units[unit] as number);
  return Number.isFinite(value) ? value : undefined;
}
