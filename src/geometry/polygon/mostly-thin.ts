/** Whether a polygon is thin nearly everywhere, told without working out all of its thin parts. */
import type { Box, Polygon, Region } from '../base/polygon-types';
import { edgesIn, ringsOf } from '../base/ring';
import { NEAR_EDGE } from '../base/tolerances';
import { areaOf, boxOfPolygon, clipToBox, difference, offset, perimeterOf } from '../boolean/index';
import { cellsOf } from './cells';

/** So many edges are looked at in one go: what moving an outline takes grows faster than its edges. */
const MANY = 1000;

/** In widths: cells are no smaller, for round each so much more is looked at. */
const LEAST_CELL = 8;

/** In widths: a disc that reaches into a cell lies within one of its border. */
const REACH = 1.25;

/**
 * Whether discs of the width (mm) within the polygon cover less than half of its area. Cell by cell, until what is known to
 * be thin or to be covered makes up half: first by the middles of the discs, which is a third of the work.
 */
export function isMostlyThin(polygon: Polygon, width: number): boolean {
  const half = areaOf(polygon) / 2;
  if (2 * half - mostAlong([polygon], polygon.holes.length, width / 2) >= half) return false;
  const rings = ringsOf(polygon);
  const count = edgesIn(rings) / MANY;
  const cells = cellsOf(rings, boxOfPolygon(polygon), { count, least: LEAST_CELL * width, margin: REACH * width });
  const unsure: Middles[] = [];
  let [thin, covered] = [0, 0];
  for (const cell of cells) {
    const around = cell.around();
    const middles = offset(around, -width / 2);
    const own = clipToBox(around, cell.box);
    const area = areaOf(clipToBox(middles, cell.box));
    covered += area;
    if (covered >= half) return false;
    if (middles.length > 0) unsure.push({ box: cell.box, own, middles, area });
    else thin += areaOf(own);
    if (thin > half) return true;
  }
  for (const { own, middles, area, box } of unsure) {
    const bare = areaOf(difference(own, clipToBox(offset(middles, width / 2 + NEAR_EDGE), box)));
    thin += bare;
    covered += areaOf(own) - bare - area;
    if (thin > half) return true;
    if (covered >= half) return false;
  }
  return thin > half;
}

interface Middles {
  readonly box: Box;
  /** What of the polygon lies in the cell. */
  readonly own: Region;
  /** Where discs that reach into the cell have their middles, and how much of that lies in it (mm²). */
  readonly middles: Region;
  readonly area: number;
}

/**
 * mm²: no more than this lies within `reach` mm of a region's border on its inside, where each hole adds the disc round a
 * point (Szőkefalvi-Nagy, "Über Parallelmengen nichtkonvexer ebener Bereiche", 1959).
 */
function mostAlong(region: Region, holes: number, reach: number): number {
  return perimeterOf(region) * reach + holes * Math.PI * reach ** 2;
}
