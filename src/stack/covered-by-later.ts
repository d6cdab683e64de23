/**
 * Ground that later layers paint over, whatever is sprayed there before. Millimetres, y down; all regions as cut, with the
 * upper left corner of the stack's frames in common.
 */
import type { Region } from '../geometry/base/polygon-types';
import { boxesTouch, growBox, joinBoxes } from '../geometry/base/ring';
import { DRAWN_ALIKE, MEANT_TO_MEET } from '../geometry/base/tolerances';
import { areaOf, boxOfPolygon, difference, intersection, offset, perimeterOf, union } from '../geometry/boolean/index';

/** mm: what is left over in a narrower line comes from curves that were written in two ways. */
const HAIRLINE = MEANT_TO_MEET;

/** mm: how far the arcs of grown regions may stay from true ones. */
const ARCS = DRAWN_ALIKE;

/**
 * Whether a place that is bare in one layer is painted by later ones, so that it may as well be painted in that layer
 * too. What shows all the same must be less than half of it, a rim within `slip` of both the place's own edge and the later
 * paint in it: such a gap is no wider than what a sheet that lands off its place opens.
 * @param place one or more polygons round which the layer is painted, as the polygon of an island
 * @param later the openings of the later layers; they may overlap
 * @param slip mm: how far a sheet may land from where it should; 0 asks for paint everywhere
 */
export function isCoveredByLater(place: Region, later: Region, slip: number): boolean {
  const paint = near(later, place);
  if (paint.length === 0) return false;
  const bare = withoutHairlines(difference(place, union([paint])));
  if (bare.length === 0) return true;
  if (slip <= 0 || 2 * areaOf(bare) > areaOf(place)) return false;
  const inner = offset(place, -slip, 'round', ARCS);
  return isWithin(bare, slip, intersection(place, paint)) && isEmpty(intersection(bare, inner));
}

/** Whether all of `region` lies within `distance` mm of the other region. */
export function isWithin(region: Region, distance: number, of: Region): boolean {
  const seen = withoutHairlines(of);
  return seen.length > 0 && isEmpty(difference(region, offset(seen, distance, 'round', ARCS)));
}

/** What of a region is more than the rounding of edges that were drawn to one line. */
export function withoutHairlines(region: Region): Region {
  return region.filter((polygon) => 2 * areaOf(polygon) >= HAIRLINE * perimeterOf(polygon));
}

/** The polygons of `region` whose boxes touch those of `place`. */
function near(region: Region, place: Region): Region {
  if (place.length === 0) return [];
  const box = growBox(joinBoxes(place.map(boxOfPolygon)), ARCS);
  return region.filter((polygon) => boxesTouch(boxOfPolygon(polygon), box));
}

/** Arcs are drawn inside of true ones: a line as narrow as their error is nothing. */
function isEmpty(region: Region): boolean {
  return region.every((polygon) => areaOf(polygon) < ARCS * perimeterOf(polygon));
}
