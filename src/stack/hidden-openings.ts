/** Openings that later layers paint over wholly. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Point } from '../geometry/base/curve-types';
import type { Box, Polygon, Region } from '../geometry/base/polygon-types';
import { boxesTouch } from '../geometry/base/ring';
import { MEANT_TO_MEET, NEAR_EDGE } from '../geometry/base/tolerances';
import { areaOf, boxOfPolygon, difference, perimeterOf, regionContains } from '../geometry/boolean/index';
import { matchIdentical } from '../geometry/polygon/diff';
import { indexBoxes } from '../geometry/spatial/clusters';
import type { HiddenOpening } from './seam-types';

export interface HiddenOpenings {
  /** The layers' openings, in painting order. */
  readonly layers: readonly Region[];
  readonly firsts: readonly number[];
  readonly found: readonly HiddenOpening[];
}

/** mm: what shows in a narrower line is left over from curves that were written in two ways. */
const HAIRLINE = MEANT_TO_MEET;

/** So many points of an opening are tried first, this far (mm) inside it: nearly all openings show at one of them. */
const SAMPLES = 24;
const INSET = NEAR_EDGE;

/**
 * @param firsts for each layer the first of those that it is one painted region with: they do not hide each other
 * @param earlier of a stack of the same order: openings above which nothing has changed are not looked at again
 */
export function findHidden(
  layers: readonly Region[],
  firsts: readonly number[],
  earlier?: HiddenOpenings,
): HiddenOpenings {
  const before = earlier && isSameOrder(earlier.firsts, firsts) ? earlier : undefined;
  const changes = before && layers.map((openings, i) => changesOf(openings, before.layers[i]));
  const all = layers.flatMap((openings, layer) => openings.map((opening) => ({ opening, layer })));
  const index = all.length > 0 ? indexBoxes(all.map(({ opening }) => boxOfPolygon(opening))) : undefined;
  const found = layers.flatMap((openings, layer) => {
    const isAbove = (other: number) => other > layer && firsts[other] !== firsts[layer];
    const changed = changes?.filter((_, other) => isAbove(other)).flatMap(({ boxes }) => boxes) ?? [];
    const known = new Set(before?.found.flatMap((each) => (each.layer === layer ? [each.opening] : [])));
    return openings.flatMap((opening, number) => {
      checkpoint();
      const box = boxOfPolygon(opening);
      const twin = changes?.[layer]?.identical(number);
      const isKnown = twin !== undefined && !changed.some((other) => boxesTouch(box, other));
      if (isKnown) return known.has(twin) ? [{ layer, opening: number }] : [];
      const touching = index?.search(box.minX, box.minY, box.maxX, box.maxY, (i) => isAbove(defined(all[i]).layer));
      const above = touching?.map((i) => defined(all[i]).opening) ?? [];
      return above.length > 0 && isHidden(opening, above) ? [{ layer, opening: number }] : [];
    });
  });
  return { layers, firsts, found };
}

function isSameOrder(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((first, i) => first === b[i]);
}

interface OpeningChanges {
  /** Of openings that came or went. */
  readonly boxes: readonly Box[];
  /** The number that an opening had before, if it was there. */
  identical(opening: number): number | undefined;
}

function changesOf(openings: Region, before: Region | undefined): OpeningChanges {
  if (openings === before) return { boxes: [], identical: (opening) => opening };
  const twins = matchIdentical(openings, before ?? []);
  const stayed = new Set(twins);
  const changed = [
    ...openings.filter((_, i) => twins[i] === undefined),
    ...(before ?? []).filter((_, i) => !stayed.has(i)),
  ];
  return { boxes: changed.map(boxOfPolygon), identical: (opening) => twins[opening] };
}

function isHidden(opening: Polygon, above: Region): boolean {
  for (const point of samples(opening)) if (!regionContains(above, point)) return false;
  return difference([opening], above).every((rest) => 2 * areaOf(rest) < HAIRLINE * perimeterOf(rest));
}

/** Points of the opening, a little inside its outer edge: edges that two layers share tell nothing. */
function* samples(opening: Polygon): Iterable<Point> {
  const { outer } = opening;
  const edges = outer.length / 2;
  const step = Math.max(1, Math.ceil(edges / SAMPLES));
  for (let i = 0; i < edges; i += step) {
    const next = (i + 1) % edges;
    const [x0, y0] = [defined(outer[2 * i]), defined(outer[2 * i + 1])];
    const [x1, y1] = [defined(outer[2 * next]), defined(outer[2 * next + 1])];
    const scale = INSET / Math.hypot(x1 - x0, y1 - y0);
    const point = { x: (x0 + x1) / 2 - scale * (y1 - y0), y: (y0 + y1) / 2 + scale * (x1 - x0) };
    if (regionContains([opening], point)) yield point;
  }
}
