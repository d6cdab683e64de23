/** The picture before and after a fix: it may change where the openings of the sheets do, and nowhere else. */
import { Resvg } from '@resvg/resvg-js';
import { parseViewBoxAttribute } from '../../src/drawing/viewport/viewport';
import type { Fix, Report } from '../../src/engine/index';
import type { Box } from '../../src/geometry/base/polygon-types';
import { boxOfRing, growBox } from '../../src/geometry/base/ring';
import { difference } from '../../src/geometry/boolean/index';
import { cutLinesOf } from '../../src/sheet/cut-lines/index';
import { curvesKey } from '../../src/sheet/layer/artwork-key';
import { ringOfCurves } from '../../src/sheet/layer/shape-region';
import type { Fault } from './judge';
import { isWellFormed } from './well-formed';

/** Pixels across. */
const WIDTH = 300;
/** Of these no picture is made: the renderer ends its process for want of memory. */
const HIGHEST = 10 * WIDTH;
/** Pixels that an edge may bleed, and how far a channel may change there without being another picture. */
const BLEED = 2;
const SAME = 24;

interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Buffer;
}

/** What the renderer does not read has no picture. What is not well-formed can end its process. */
function drawn(text: string): Picture | undefined {
  if (!isWellFormed(text)) return undefined;
  try {
    const fitTo = { mode: 'width', value: WIDTH } as const;
    const renderer = new Resvg(text, { fitTo, font: { loadSystemFonts: false } });
    const high = (WIDTH * renderer.height) / renderer.width;
    if (!(high >= 1 && high <= HIGHEST)) return undefined;
    const { width, height, pixels } = renderer.render();
    return { width, height, pixels };
  } catch {
    return undefined;
  }
}

/** The last picture before a fix: of one text many fixes are made. */
let last: { readonly text: string; readonly picture: Picture | undefined } | undefined;

function drawnOnce(text: string): Picture | undefined {
  if (last?.text !== text) last = { text, picture: drawn(text) };
  return last.picture;
}

/** @returns undefined where there are no two pictures to compare */
export function pictureFaults(before: Report, fix: Fix, after: Report): Fault[] | undefined {
  if (!isSameFrame(before, after)) return undefined;
  const [one, two] = [drawnOnce(before.text), drawn(after.text)];
  if (!one || !two || one.width !== two.width || one.height !== two.height) return undefined;
  const changed = changedPixels(one, two, channelsOf(before));
  const boxes = changed.length > 0 ? [...changedBoxes(before, after), ...boxesOfRemoved(before, fix, after)] : [];
  const scale = one.width / before.drawing.width;
  const stray = changed.find(([x, y]) => !boxes.some((box) => isWithin(box, x, y, scale)));
  if (!stray) return [];
  const [x, y] = stray.map((pixels) => (pixels / scale).toFixed(1));
  return [{ kind: 'picture changed', words: `${fix.kind}: ${fix.title}: at ${x}, ${y} mm` }];
}

/** A renderer makes a frame of its own round what has none, or none that can be read; and where a fix adds sheet, everything is drawn smaller. */
function isSameFrame({ drawing: before }: Report, { drawing: after }: Report): boolean {
  const { root } = before.document;
  const attribute = root?.attributes.find(({ localName }) => localName === 'viewBox');
  const box = parseViewBoxAttribute(attribute?.value ?? '');
  const isFramed = box !== undefined && box.width > 0 && box.height > 0;
  return isFramed && before.width === after.width && before.height === after.height;
}

/** Where several colours are sprayed as one, what counts is where there is paint: the last of four channels. */
function channelsOf({ complete }: Report): readonly number[] {
  return complete.some(({ check }) => check === 'mixed-colours') ? [3] : [0, 1, 2, 3];
}

/** Those that changed with all their neighbours: two edges over each other are darker than one, by a pixel. */
function changedPixels(one: Picture, two: Picture, channels: readonly number[]): [number, number][] {
  if (one.pixels.equals(two.pixels)) return [];
  const { width, height } = one;
  const changed = Array.from({ length: width * height }, (_, pixel) =>
    channels.some((i) => Math.abs((one.pixels[4 * pixel + i] ?? 0) - (two.pixels[4 * pixel + i] ?? 0)) > SAME),
  );
  const found: [number, number][] = [];
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      if (!changed[y * width + x]) continue;
      const rows = [y - 1, y, y + 1].map((row) => row * width + x);
      if (rows.every((at) => changed[at - 1] && changed[at] && changed[at + 1])) found.push([x, y]);
    }
  }
  return found;
}

function isWithin({ minX, minY, maxX, maxY }: Box, x: number, y: number, scale: number): boolean {
  return (
    x >= minX * scale - BLEED && x <= maxX * scale + BLEED && y >= minY * scale - BLEED && y <= maxY * scale + BLEED
  );
}

/** Round each line that is taken out because it cuts nothing, sheet mm: it is drawn all the same. */
function boxesOfRemoved(before: Report, { kind }: Fix, after: Report): Box[] {
  if (kind !== 'remove-open-line') return [];
  const linesOf = ({ sheets }: Report) => sheets.flatMap(({ layer }) => cutLinesOf(layer));
  const kept = new Set(linesOf(after).map(({ curves }) => curvesKey(curves)));
  const removed = linesOf(before).filter(({ curves }) => !kept.has(curvesKey(curves)));
  return removed.map(({ curves, shape }) => growBox(boxOfRing(ringOfCurves(curves)), shape.strokeWidth ?? 0));
}

/** Round each place where the openings of a layer differ, sheet mm. */
function changedBoxes(before: Report, after: Report): Box[] {
  const layers = Math.max(before.sheets.length, after.sheets.length);
  return Array.from({ length: layers }, (_, i) => {
    const [a, b] = [before.sheets[i]?.openings ?? [], after.sheets[i]?.openings ?? []];
    return [...difference(a, b), ...difference(b, a)].map(({ outer }) => boxOfRing(outer));
  }).flat();
}
