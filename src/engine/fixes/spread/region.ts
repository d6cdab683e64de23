/** What a colour gains when it is spread under a later neighbour, so that a slip leaves no bare ground. Millimetres. */

import type { Point } from '../../../geometry/base/curve-types';
import type { Box, Polygon, Region } from '../../../geometry/base/polygon-types';
import { boxesTouch, growBox, joinBoxes } from '../../../geometry/base/ring';
import { MEANT_TO_MEET, PLAINLY_BESIDE, WRITTEN_STEP } from '../../../geometry/base/tolerances';
import {
  areaOf,
  boxOfPolygon,
  clipToBox,
  difference,
  intersection,
  offset,
  regionContains,
  union,
} from '../../../geometry/boolean/index';
import type { Sheet } from '../../../sheet/types';
import type { BareGap, ShortOverlap } from '../../../stack/index';

/** mm: how far the new shape reaches into the colour that it widens, so that the two are one opening. */
const OVERLAP_DEPTH = 0.15;

/** mm: what is spread more than needed, for curves that are written down and flattened again. */
const ROOM = PLAINLY_BESIDE;

/** mm: so far within the border of the paint above it a colour stays, wherever its course is drawn a little otherwise. */
const INSIDE = 0.8 * PLAINLY_BESIDE;

/** In distances: a mitred corner reaches no farther. */
const MITRE = 1.5;

/** mm: ground between edges that were meant to meet, which goes to the colour as well. */
const CRACK = MEANT_TO_MEET + WRITTEN_STEP;

/** In least widths: half of what is still a bridge across. */
const AS_BRIDGE = 0.6;

/** In least widths: so far before a bridge's end, where it is no longer as narrow, it is seen no more. */
const MOUTH = 0.5;

/** In squares of the least width. */
const CORNER = 0.5;

/** mm²: less is left over where edges run together. */
const SLIVER = 0.002;

/** In squares of the slip: a part that is no larger, beside what is added, is a crumb of it that a bridge has cut off. */
const CRUMB = 1;

/** What a colour may be extended by: mm. */
export interface SpreadLimits {
  readonly slip: number;
  /** The least width of a bridge as drawn. */
  readonly bridge: number;
}

/** What a colour is to gain. */
export interface Gain {
  /** Where it is not painted yet. */
  readonly added: Region;
  /**
   * The same a little within the paint above it, with a rim that reaches into what is painted already: the two are then
   * one opening, and what is drawn there may run a little otherwise.
   */
  readonly joined: Region;
  /** All that is painted there, and bare ground that it takes: what it changes elsewhere would be seen. */
  readonly ground: Region;
}

/** What layers after the earlier one paint in a box. */
export type LaterPaintIn = (box: Box) => Region;

/**
 * Along the part of a seam that is short, the earlier colour grows until it reaches `slip` mm under the later one's
 * edge; where several colours meet, under whichever of them is painted there.
 */
export function spreadUnder(
  earlier: Sheet,
  paintIn: LaterPaintIn,
  overlap: ShortOverlap,
  limits: SpreadLimits,
): Gain[] {
  const { slip } = limits;
  const samples = samplesOf(overlap, slip / 2);
  const around = growBox(joinBoxes(samples.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y }))), 6 * slip);
  const band = union(samples.map((point) => [discAbout(point, 2 * slip + ROOM)]));
  const [own, other] = [cropRegion(earlier.openings, around), clipToBox(paintIn(around), around)];
  return gainsOf({ own, other, filled: [], band, lacks: slip - overlap.width }, limits);
}

/** Fills a bare gap with the earlier colour, and goes on to `slip` mm under the later ones. */
export function spreadAcross(
  earlier: Sheet,
  later: Sheet,
  paintIn: LaterPaintIn,
  gap: BareGap,
  limits: SpreadLimits,
): Gain[] {
  const { slip } = limits;
  const { onEarlier, onLater, length } = gap;
  const middle = { x: (onEarlier.x + onLater.x) / 2, y: (onEarlier.y + onLater.y) / 2 };
  const reach = length + 6 * slip;
  const around = growBox({ minX: middle.x, minY: middle.y, maxX: middle.x, maxY: middle.y }, reach);
  const [own, other] = [cropRegion(earlier.openings, around), cropRegion(later.openings, around)];
  const painted = union([own, other]);
  const half = (slip + ROOM) / 2;
  // Along straight edges the closing leaves hairs, which would be widened like the gap itself.
  const narrow = morphologicalOpening(difference(morphologicalClosing(painted, half), painted), CRACK / 2);
  const filled = narrow.filter((polygon) => regionContains(offset([polygon], ROOM), middle));
  const band = offset(filled, 2 * slip + ROOM);
  const gains = gainsOf({ own, other: clipToBox(paintIn(around), around), filled, band, lacks: slip }, limits);
  const whole = (region: Region) => region.filter((polygon) => areaOf(polygon) > CRUMB * slip * slip);
  return gains.map(({ added, joined, ground }) => ({ added: whole(added), joined: whole(joined), ground }));
}

interface Ground {
  readonly own: Region;
  /** What later layers paint. */
  readonly other: Region;
  /** Bare ground that the colour is to take as well. */
  readonly filled: Region;
  /** Where it may grow. */
  readonly band: Region;
  /** mm: how much of an overlap is missing. */
  readonly lacks: number;
}

/** What it is to gain, first with the bridges of its own sheet left as they are, then with narrow ones painted over. */
function gainsOf({ own, other, filled, band, lacks }: Ground, limits: SpreadLimits): Gain[] {
  const taken = union([own, filled]);
  const beyond = difference(intersection(grownFrom(difference(taken, other), limits), other), own);
  // Where nothing of the colour itself is seen, its edge under the others counts.
  const grown =
    areaOf(intersection(beyond, band)) < SLIVER
      ? offset(own, lacks + ROOM)
      : grownFrom(difference(taken, other), limits);
  const under = intersection(grown, band);
  const painted = morphologicalClosing(union([taken, other]), CRACK);
  const added = difference(union([filled, intersection(under, other)]), own);
  const inside = difference(union([filled, intersection(under, offset(painted, -INSIDE))]), own);
  const bridges = besideBridges(own, limits);
  const kept = gainOf(difference(added, bridges), difference(inside, bridges), own, painted);
  if (areaOf(intersection(added, bridges)) < SLIVER) return [kept];
  const across = AS_BRIDGE * limits.bridge;
  const closed = offset(offset(union([own, added]), across), -across);
  const between = intersection(difference(closed, own), offset(added, across));
  const flooded = (region: Region, hidden: Region) => union([region, intersection(between, hidden)]);
  return [kept, gainOf(flooded(added, painted), flooded(inside, offset(painted, -INSIDE)), own, painted)];
}

/** @param inside of what is added what keeps clear of the border of the paint above */
function gainOf(added: Region, inside: Region, own: Region, ground: Region): Gain {
  const clear = inside.filter(isNoSliver);
  const rim = intersection(offset(clear, OVERLAP_DEPTH), own);
  // A crack that rounding leaves between the two is closed by it.
  const joined = intersection(offset(clear, OVERLAP_DEPTH), morphologicalClosing(union([clear, rim]), CRACK));
  return { added: added.filter(isNoSliver), joined: joined.filter(isNoSliver), ground };
}

/** As far as a slip of the later colour may bare: with mitred corners, as long as they are not too sharp. */
function grownFrom(seen: Region, { slip }: SpreadLimits): Region {
  return intersection(offset(seen, slip + ROOM, 'miter'), offset(seen, MITRE * (slip + ROOM)));
}

function isNoSliver(polygon: Polygon): boolean {
  return areaOf(polygon) > SLIVER;
}

/**
 * Where bridges of the colour's own sheet stand, and what is so near to them that a slip shows at their shadows anyway:
 * nothing is added there, so that they stay as wide as they are and go on into what they hold.
 */
function besideBridges(own: Region, { slip, bridge }: SpreadLimits): Region {
  const narrow = difference(offset(offset(own, AS_BRIDGE * bridge), -AS_BRIDGE * bridge), offset(own, ROOM));
  // What is left in corners of the openings is smaller.
  const bridges = narrow.filter((polygon) => areaOf(polygon) > CORNER * bridge * bridge);
  return offset(bridges, slip + OVERLAP_DEPTH + MOUTH * bridge);
}

/** With ground up to twice the distance wide filled. */
function morphologicalClosing(region: Region, by: number): Region {
  return offset(offset(region, by, 'miter'), -by, 'miter');
}

/** Without what is less than twice the distance wide. */
function morphologicalOpening(region: Region, by: number): Region {
  return offset(offset(region, -by), by);
}

function cropRegion(openings: Region, box: Box): Region {
  return clipToBox(
    openings.filter((polygon) => boxesTouch(boxOfPolygon(polygon), box)),
    box,
  );
}

/** Points along the course, no farther apart than `step` mm; where many segments are short, fewer than there are. */
function samplesOf({ course }: ShortOverlap, step: number): Point[] {
  const cells = new Map<string, Point>();
  for (const { ax, ay, bx, by } of course) {
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / step));
    for (let i = 0; i <= steps; i += 1) {
      const point = { x: ax + (i / steps) * (bx - ax), y: ay + (i / steps) * (by - ay) };
      cells.set(`${Math.round(point.x / step)} ${Math.round(point.y / step)}`, point);
    }
  }
  return [...cells.values()];
}

const CORNERS = 16;

function discAbout({ x, y }: Point, radius: number): Polygon {
  const outer = new Float64Array(2 * CORNERS);
  for (let i = 0; i < CORNERS; i += 1) {
    const angle = (2 * Math.PI * i) / CORNERS;
    outer[2 * i] = x + radius * Math.cos(angle);
    outer[2 * i + 1] = y + radius * Math.sin(angle);
  }
  return { outer, holes: [] };
}
