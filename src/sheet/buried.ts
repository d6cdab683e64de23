/** Openings that later layers paint over wholly. */
import { areaOf, boxOfPolygon, contains, difference, perimeterOf } from '../geometry/polygons';
import { indexBoxes } from '../geometry/clusters';
import type { Point } from '../geometry/curve';
import type { Polygon, Region } from '../geometry/region';
import type { BuriedOpening } from './seams';

export interface Buried {
  /** The layers' openings, in painting order. */
  readonly layers: readonly Region[];
  readonly found: readonly BuriedOpening[];
}

/** mm: what shows in a narrower line is left over from curves that were written in two ways. */
const HAIRLINE = 0.005;

/** So many points of an opening are tried first, this far (mm) inside it: nearly all openings show at one of them. */
const SAMPLES = 24;
const INSET = 0.02;

/** @param earlier layers whose openings are the same objects, they and all later ones, are not looked at again */
export function findBuried(layers: readonly Region[], earlier?: Buried): Buried {
  const found = layers.flatMap((openings, layer) => {
    const known = earlier && isSameFrom(layer, layers, earlier.layers);
    if (known) return earlier.found.filter((each) => each.layer === layer);
    return buriedIn(openings, layers.slice(layer + 1).flat()).map((opening) => ({ layer, opening }));
  });
  return { layers, found };
}

function isSameFrom(layer: number, layers: readonly Region[], before: readonly Region[]): boolean {
  return layers.length === before.length && layers.every((openings, i) => i < layer || openings === before[i]);
}

function buriedIn(openings: Region, later: Region): number[] {
  if (later.length === 0) return [];
  const index = indexBoxes(later.map(boxOfPolygon));
  return openings.flatMap((opening, number) => {
    const { minX, minY, maxX, maxY } = boxOfPolygon(opening);
    const above = index.search(minX, minY, maxX, maxY).flatMap((i) => later[i] ?? []);
    return above.length > 0 && isBuried(opening, above) ? [number] : [];
  });
}

function isBuried(opening: Polygon, above: Region): boolean {
  if (samples(opening).some((point) => !contains(above, point))) return false;
  return difference([opening], above).every((rest) => 2 * areaOf(rest) < HAIRLINE * perimeterOf(rest));
}

/** Points of the opening, a little inside its outer edge: edges that two layers share tell nothing. */
function samples(opening: Polygon): Point[] {
  const { outer } = opening;
  const edges = outer.length / 2;
  const step = Math.max(1, Math.ceil(edges / SAMPLES));
  const points: Point[] = [];
  for (let i = 0; i < edges; i += step) {
    const next = (i + 1) % edges;
    const [x0, y0, x1, y1] = [outer[2 * i], outer[2 * i + 1], outer[2 * next], outer[2 * next + 1]] as [number, number, number, number];
    const scale = INSET / Math.hypot(x1 - x0, y1 - y0);
    const point = { x: (x0 + x1) / 2 - scale * (y1 - y0), y: (y0 + y1) / 2 + scale * (x1 - x0) };
    if (contains([opening], point)) points.push(point);
  }
  return points;
}
