/** What of a thin part of an opening is seen when later layers have been sprayed. Sheet mm. */
import type { Point } from '../geometry/base/curve-types';
import { pointInside } from '../geometry/base/point-inside';
import type { Box, Polygon, Region } from '../geometry/base/polygon-types';
import { boxesTouch, boxOfRing, growBox } from '../geometry/base/ring';
import { DRAWN_ALIKE, NEAR_EDGE, PLAINLY_BESIDE } from '../geometry/base/tolerances';
import { distance, interpolate, normalise, subtract } from '../geometry/base/vector';
import {
  areaOf,
  boxOfPolygon,
  clipToBox,
  difference,
  intersection,
  offset,
  regionContains,
} from '../geometry/boolean/index';
import { stripLength } from '../geometry/polygon/strip-length';
import { thinWithin } from '../geometry/polygon/thin-within';
import { firstHit } from '../geometry/spatial/raycast';
import { buildSegmentIndex, nearestSegment } from '../geometry/spatial/segment-index';
import type { ThinPlace } from '../sheet/thin-places';
import type { SheetMeasures } from '../sheet/types';
import { withoutHairlines } from './covered-by-later';
import type { LaterPaint } from './later-paint';

export interface ShownLimits {
  /** mm: how far a sheet may land from where it should. */
  readonly slip: number;
  /** mm as cut: openings are thin where they are narrower. */
  readonly opening: number;
}

/**
 * A part that later layers paint over as a whole is covered, for nothing of it is meant to be seen. Of any other only those
 * places are that they reach over by the slip or more.
 * @param layer index of the sheet in the stack
 * @returns the part as it is where its narrowest place counts; where only others do, the narrowest of those, and of a tip
 * the reach that is left; undefined where nothing is, or no more of a tip than blunt corners have
 */
export function shownThinPart(
  paint: LaterPaint,
  layer: number,
  sheet: Pick<SheetMeasures, 'openings' | 'kerf'>,
  part: ThinPlace,
  { slip, opening: limit }: ShownLimits,
): ThinPlace | undefined {
  const opening = sheet.openings[part.polygon];
  const cover = paint.within(growBox(part.extent, 2 * slip), layer);
  if (!opening || cover.length === 0) return part;
  if (part.kind === 'whole') return paint.hides(opening, sheet, layer) ? undefined : part;
  if (isPlainlySeen(opening, part, cover)) return part;
  const width = limit - sheet.kerf;
  const thin = thinWithin([opening], part.extent, width);
  // Between two corners alone there is no area.
  if (thin.length === 0) return isChordIn(cover, part) ? undefined : part;
  if (outside(thin, cover).length === 0) return undefined;
  const covered = slip > 0 ? offset(cover, -slip, 'round', DRAWN_ALIKE) : cover;
  const shown = outside(thin, covered);
  const isCovered = isChordIn(covered, part);
  if (part.kind === 'tip') return shownTip(part, opening, { thin, shown, width, isCovered });
  if (!isCovered) return part;
  return narrowestShown(part, opening, width, (least) => outside(thinWithin([opening], part.extent, least), covered));
}

/** Told without looking for all that is thin: nothing is painted over it, or not over the narrowest place of a slot. */
function isPlainlySeen(opening: Polygon, part: ThinPlace, cover: Region): boolean {
  const box = growBox(part.extent, NEAR_EDGE);
  const over = cover.filter((polygon) => boxesTouch(boxOfPolygon(polygon), box));
  if (part.kind === 'neck' && part.drawnWidth > NEAR_EDGE) {
    const middle = interpolate(part.from, part.to, 0.5);
    if (clipToBox(over, growBox(boxOfRing(Float64Array.of(middle.x, middle.y)), PLAINLY_BESIDE)).length === 0)
      return true;
  }
  return over.length === 0 || intersection(clipToBox([opening], box), over).length === 0;
}

function outside(region: Region, cover: Region): Region {
  return withoutHairlines(difference(region, cover));
}

/** Whether a part lies in a region where it is measured. */
function isChordIn(region: Region, { from, to }: ThinPlace): boolean {
  return [from, interpolate(from, to, 0.5), to].every((point) => regionContains(region, point));
}

interface Tip {
  /** All of it, and what of it shows. */
  readonly thin: Region;
  readonly shown: Region;
  /** mm as drawn */
  readonly width: number;
  /** Whether the place that it is measured at is covered. */
  readonly isCovered: boolean;
}

/** What is hidden of its reach does not count. As everywhere, what reaches no farther than the width is a corner. */
function shownTip(part: ThinPlace, opening: Polygon, { thin, shown, width, isCovered }: Tip): ThinPlace | undefined {
  const hidden = outside(thin, shown);
  if (hidden.length === 0) return part;
  const reach = hidden.reduce((left, polygon) => left - stripLength(polygon), part.reach);
  if (reach <= width) return undefined;
  const largest = largestOf(shown);
  const place = isCovered ? chordAt(opening, pointInside(largest.outer, largest.holes), part) : part;
  return { ...place, reach };
}

/**
 * The narrowest place that shows, by halving: a slot that is narrower than a width has a part thinner than it.
 * @param shownBelow what shows of the part where it is narrower than a width in mm as drawn
 */
function narrowestShown(
  part: ThinPlace,
  opening: Polygon,
  width: number,
  shownBelow: (width: number) => Region,
): ThinPlace {
  let [low, high] = [part.drawnWidth, width];
  let shown = shownBelow(high);
  while (high - low > DRAWN_ALIKE / 2) {
    const middle = (low + high) / 2;
    const narrower = shownBelow(middle);
    if (narrower.length > 0) [high, shown] = [middle, narrower];
    else low = middle;
  }
  const { outer, holes } = largestOf(shown);
  return chordAt(opening, pointInside(outer, holes), part);
}

/** The part, measured across a point within it. */
function chordAt(opening: Polygon, point: Point, part: ThinPlace): ThinPlace {
  const index = buildSegmentIndex([opening]);
  const from = nearestSegment(index, point)?.point;
  const across = from && normalise(subtract(point, from));
  const to = across && firstHit(index, point, across, diagonalOf(part.extent))?.point;
  if (!from || !to) return part;
  const drawnWidth = distance(from, to);
  return { ...part, from, to, drawnWidth, cutWidth: drawnWidth + part.cutWidth - part.drawnWidth };
}

function diagonalOf({ minX, minY, maxX, maxY }: Box): number {
  return Math.hypot(maxX - minX, maxY - minY);
}

function largestOf(region: Region): Polygon {
  return region.reduce((largest, each) => (areaOf(each) > areaOf(largest) ? each : largest));
}
