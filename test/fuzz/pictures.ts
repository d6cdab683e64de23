/** The picture before and after a fix: it may change where the openings of the sheets do, and nowhere else. */
import { Resvg } from '@resvg/resvg-js';
import type { Fix, Report } from '../../src/engine/index';
import type { Box } from '../../src/geometry/base/polygon-types';
import { boxOfRing } from '../../src/geometry/base/ring';
import { difference } from '../../src/geometry/boolean/index';
import type { Fault } from './judge';

/** Pixels across. */
const WIDTH = 300;
/** Pixels that an edge may bleed, and how far a channel may change there without being another picture. */
const BLEED = 2;
const SAME = 24;

function drawn(text: string): { readonly width: number; readonly height: number; readonly pixels: Buffer } | undefined {
  try {
    const { width, height, pixels } = new Resvg(text, {
      fitTo: { mode: 'width', value: WIDTH },
      font: { loadSystemFonts: false },
    }).render();
    return { width, height, pixels };
  } catch {
    // What the renderer does not read has no picture.
    return undefined;
  }
}

export function pictureFaults(before: Report, fix: Fix, after: Report): Fault[] {
  const [one, two] = [drawn(before.text), drawn(after.text)];
  if (!one || !two || one.width !== two.width || one.height !== two.height) return [];
  const boxes = changedBoxes(before, after);
  const scale = one.width / before.drawing.width;
  for (let i = 0; i < one.pixels.length; i += 1) {
    if (Math.abs((one.pixels[i] ?? 0) - (two.pixels[i] ?? 0)) <= SAME) continue;
    const pixel = Math.floor(i / 4);
    const [x, y] = [pixel % one.width, Math.floor(pixel / one.width)];
    if (boxes.some((box) => isWithin(box, x, y, scale))) continue;
    return [
      { kind: 'picture changed', words: `${fix.title}: at ${(x / scale).toFixed(1)}, ${(y / scale).toFixed(1)} mm` },
    ];
  }
  return [];
}

function isWithin({ minX, minY, maxX, maxY }: Box, x: number, y: number, scale: number): boolean {
  return (
    x >= minX * scale - BLEED && x <= maxX * scale + BLEED && y >= minY * scale - BLEED && y <= maxY * scale + BLEED
  );
}

/** Round each place where the openings of a layer differ, sheet mm. */
function changedBoxes(before: Report, after: Report): Box[] {
  const layers = Math.max(before.sheets.length, after.sheets.length);
  return Array.from({ length: layers }, (_, i) => {
    const [a, b] = [before.sheets[i]?.openings ?? [], after.sheets[i]?.openings ?? []];
    return [...difference(a, b), ...difference(b, a)].map(({ outer }) => boxOfRing(outer));
  }).flat();
}
