/** Drawings in flat colours: their very colours, as they were drawn. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Picture, Rgb } from '../raster';
import { colourDifference, labOf } from './difference';
import type { Bin } from './histogram';

/** In a flat drawing so much of all blocks of 2 × 2 pixels has one colour; in photos hardly any. */
const MOSTLY_FLAT = 0.8;

/** A drawing with more flat colours than these is shaded, and is no flat drawing. */
const MOST_COLOURS = 4096;

/** Of all pixels: a colour that covers less is none that somebody drew with. */
const LEAST_SHARE = 1e-5;

/** CIEDE2000: colours that differ less were meant as one. */
export const ALIKE = 2;

/** A picture with so many times more colours than are meant was compressed. */
const COMPRESSED = 2;

/** There a colour is a trace of a commoner one, left by compression, if it differs by no more (CIEDE2000), */
const TRACE = 5;
/** and covers less than this part of the picture, and of the other. */
const TRACE_SHARE = 1e-3;
const TRACE_BESIDE = 1 / 64;

/** The flat colours, the commonest first, with the number of blocks they fill; undefined for what is no flat drawing. */
export function flatColours({ width, height, data }: Picture): Bin[] | undefined {
  const counts = new Map<number, number>();
  const all = (width - 1) * (height - 1);
  const most = (1 - MOSTLY_FLAT) * all;
  let others = 0;
  for (let y = 0; y + 1 < height; y += 1) {
    checkpoint(width);
    let last = -1;
    let run = 0;
    for (let x = 0; x + 1 < width; x += 1) {
      const colour = colourOfBlock(data, 4 * (y * width + x), 4 * width);
      if (colour === last) {
        run += 1;
        continue;
      }
      addRun(counts, last, run);
      if (last < 0) others += run;
      last = colour;
      run = 1;
    }
    addRun(counts, last, run);
    if (last < 0) others += run;
    if (others > most || counts.size > MOST_COLOURS) return undefined;
  }
  return distinct(counts, all);
}

function addRun(counts: Map<number, number>, colour: number, run: number): void {
  if (colour >= 0) counts.set(colour, (counts.get(colour) ?? 0) + run);
}

/** As 0xrrggbb; -1 where the four pixels differ. */
function colourOfBlock(data: Picture['data'], at: number, row: number): number {
  const colour = colourAt(data, at);
  const even =
    colourAt(data, at + 4) === colour && colourAt(data, at + row) === colour && colourAt(data, at + row + 4) === colour;
  return even ? colour : -1;
}

function colourAt(data: Picture['data'], at: number): number {
  return (defined(data[at]) << 16) | (defined(data[at + 1]) << 8) | defined(data[at + 2]);
}

function distinct(counts: ReadonlyMap<number, number>, all: number): Bin[] {
  const bins: Bin[] = [];
  for (const [value, count] of [...counts].sort((a, b) => b[1] - a[1])) {
    if (count < LEAST_SHARE * all) break;
    const colour: Rgb = [value >> 16, (value >> 8) & 255, value & 255];
    if (bins.every((bin) => differenceOf(bin.colour, colour) > ALIKE)) bins.push({ colour, count });
  }
  return counts.size > COMPRESSED * bins.length ? bins.filter((bin) => !isTrace(bin, bins, all)) : bins;
}

function isTrace({ colour, count }: Bin, bins: readonly Bin[], all: number): boolean {
  if (count > TRACE_SHARE * all) return false;
  return bins.some((other) => count < TRACE_BESIDE * other.count && differenceOf(other.colour, colour) < TRACE);
}

function differenceOf(one: Rgb, other: Rgb): number {
  return colourDifference(labOf(one), labOf(other));
}
