/** Colours as text. */
import type { Rgb } from '../raster';

/** @param hex `#rrggbb` */
export function rgbOf(hex: string): Rgb {
  const value = Number.parseInt(hex.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255];
}

/** `#rrggbb`, lower case */
export function hexOf([red, green, blue]: Rgb): string {
  return `#${((red << 16) | (green << 8) | blue).toString(16).padStart(6, '0')}`;
}
