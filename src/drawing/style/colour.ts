/** Colours and paints as CSS and SVG write them. */
import { colord, extend } from 'colord';
import hwb from 'colord/plugins/hwb';
import lab from 'colord/plugins/lab';
import lch from 'colord/plugins/lch';
import names from 'colord/plugins/names';

extend([names, hwb, lab, lch]);

export interface Colour {
  /** `#rrggbb`, lower case. */
  readonly hex: string;
  /** 0..1 */
  readonly alpha: number;
}

/** The value of `fill` and `stroke`. */
export type PaintValue =
  | { readonly kind: 'none' }
  | { readonly kind: 'current-colour' }
  /** Within a marker or a `use`: what the referring element is filled or stroked with. */
  | { readonly kind: 'context'; readonly of: 'fill' | 'stroke' }
  | { readonly kind: 'colour'; readonly colour: Colour }
  /** `fallback` is undefined where none is written. */
  | { readonly kind: 'server'; readonly target: string; readonly fallback: PaintValue | undefined };

export const BLACK: Colour = { hex: '#000000', alpha: 1 };

/** Undefined where the text is no colour. `currentColor` is none: see `parsePaint`. */
export function parseColour(text: string): Colour | undefined {
  const colour = colord(text.trim());
  if (!colour.isValid()) return undefined;
  return { hex: colour.alpha(1).toHex(), alpha: Math.min(1, Math.max(0, colour.rgba.a)) };
}

/** L* of CIELAB, 0 for black and 100 for white. */
export function lightnessOf(hex: string): number {
  return colord(hex).toLab().l;
}

/** Reads `none`, `currentColor`, a colour, `context-fill`, or `url(#id)` with or without a fallback. */
export function parsePaint(text: string): PaintValue | undefined {
  const trimmed = text.trim();
  switch (trimmed.toLowerCase()) {
    case 'none':
      return { kind: 'none' };
    case 'currentcolor':
      return { kind: 'current-colour' };
    case 'context-fill':
      return { kind: 'context', of: 'fill' };
    case 'context-stroke':
      return { kind: 'context', of: 'stroke' };
  }
  const reference = parseReference(trimmed);
  if (reference) {
    const fallback = reference.rest === '' ? undefined : parsePaint(reference.rest);
    return { kind: 'server', target: reference.target, fallback };
  }
  // SVG 1.1 allows an ICC colour after the sRGB one, which is what a reader without colour management takes.
  const colour = parseColour(trimmed.replace(/\s+icc-color\([^)]*\)\s*$/i, ''));
  return colour && { kind: 'colour', colour };
}

const REFERENCE = /^url\(\s*(?:"([^"]*)"|'([^']*)'|([^"')\s]*))\s*\)\s*/i;

/** Reads `url(#id)` at the beginning: `target` is what stands in it, `rest` what follows it. */
export function parseReference(text: string): { target: string; rest: string } | undefined {
  const match = REFERENCE.exec(text);
  if (!match) return undefined;
  return { target: match[1] ?? match[2] ?? match[3] ?? '', rest: text.slice(match[0].length).trim() };
}
