/** The view box of a root as its start tag states it, or what its size makes of it. */

const PIXELS: Readonly<Record<string, number>> = { mm: 96 / 25.4, cm: 96 / 2.54, in: 96, pt: 96 / 72 };

/** @returns left, top, width and height, in user units */
export function viewBoxOf(tag: string): readonly [number, number, number, number] {
  const stated = /\sviewBox\s*=\s*"([^"]*)"/.exec(tag)?.[1];
  const [left, top, width, height] = (stated ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (width && height) return [left ?? 0, top ?? 0, width, height];
  return [0, 0, lengthOf(tag, 'width'), lengthOf(tag, 'height')];
}

/** In pixels. */
function lengthOf(tag: string, name: string): number {
  const [, value, unit = 'px'] = new RegExp(`\\s${name}\\s*=\\s*"\\s*([\\d.]+)\\s*([a-z]*)`).exec(tag) ?? [];
  return Number(value) * (PIXELS[unit] ?? 1);
}
