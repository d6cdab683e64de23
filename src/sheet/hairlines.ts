/** Sheet that holds together by less than can be cut, taken apart. Millimetres. */
import { checkpoint } from '../base/checkpoint';
import type { Polygon, Region, Ring } from '../geometry/base/polygon-types';
import { ringOfPoints, ringsOf } from '../geometry/base/ring';
import { LEAST_SHEET, NECK_MARGIN, OVERLAY_GRID } from '../geometry/base/tolerances';
import { add, normalise, perpendicular, scale, subtract } from '../geometry/base/vector';
import { difference } from '../geometry/boolean/index';
import { nearnessTo } from '../geometry/boolean/near-rings';
import { nestRings } from '../geometry/boolean/nest';
import { findThinPartsIncrementally } from '../geometry/thickness/incremental';
import { findThinParts } from '../geometry/thickness/index';
import type { ThinPart } from '../geometry/thickness/types';

/** A region whose hairlines were looked for. */
export interface HairlineSplit {
  readonly given: Region;
  readonly thin: readonly ThinPart[];
  /** The region parted where only a hairline held it together; polygons without any pass as they are. */
  readonly result: Region;
}

/** mm: a search finds all that is narrower than its width by this, and some that is not. */
const SEARCHED = LEAST_SHEET + NECK_MARGIN;

/** mm: half the width of the cut, and what it goes on for beyond either side. */
const CUT = 2 * OVERLAY_GRID;

/** Where three or more hairlines meet, the next ones are found when the first is cut. A hairline of two sides is one. */
const MAX_ROUNDS = 8;

/**
 * Parts a region wherever less than the least sheet holds it together (`LEAST_SHEET`): no tool leaves that standing. It
 * is cut across at the narrowest place, by a slit of 0.4 µm, so that all areas stay what they are.
 * @param given as cut
 * @param earlier of the same sheet before an edit
 */
export function splitAtHairlines(given: Region, earlier?: HairlineSplit): HairlineSplit {
  const thin = earlier
    ? findThinPartsIncrementally(given, SEARCHED, { region: earlier.given, parts: earlier.thin })
    : findThinParts(given, SEARCHED);
  return { given, thin, result: cutAt(given, thin, MAX_ROUNDS) };
}

function cutAt(region: Region, thin: readonly ThinPart[], rounds: number): Region {
  const cuts = new Map<number, Polygon[]>();
  const forked = new Set<number>();
  for (const part of thin) {
    const slit = isHairline(part) ? slitAcross(part) : undefined;
    if (!slit) continue;
    cuts.set(part.polygon, [...(cuts.get(part.polygon) ?? []), slit]);
    if (part.sides > 2) forked.add(part.polygon);
  }
  if (cuts.size === 0) return region;
  return region.flatMap((polygon, number) => {
    const slits = cuts.get(number);
    if (!slits) return [polygon];
    checkpoint(polygon.outer.length);
    const parted = cutAlong(polygon, slits);
    return rounds > 1 && forked.has(number) ? cutAt(parted, findThinParts(parted, SEARCHED), rounds - 1) : parted;
  });
}

/** A sheet has many holes and few hairlines: only those holes are overlaid that a slit comes near to. */
function cutAlong({ outer, holes }: Polygon, slits: readonly Polygon[]): Region {
  const isNear = nearnessTo(slits.flatMap(ringsOf), CUT);
  const [near, apart]: [Ring[], Ring[]] = [[], []];
  for (const hole of holes) (isNear(hole) ? near : apart).push(hole);
  const parted = difference([{ outer, holes: near }], slits);
  return apart.length > 0 ? nestRings([...parted.flatMap(ringsOf), ...apart]) : parted;
}

function isHairline({ kind, width }: ThinPart): boolean {
  return kind === 'neck' && width < LEAST_SHEET;
}

function slitAcross({ from, to }: ThinPart): Polygon | undefined {
  const along = normalise(subtract(to, from));
  if (!along) return undefined;
  const beyond = scale(along, CUT);
  const aside = scale(perpendicular(along), CUT / 2);
  const [start, end] = [subtract(from, beyond), add(to, beyond)];
  const corners = [subtract(start, aside), subtract(end, aside), add(end, aside), add(start, aside)];
  return { outer: ringOfPoints(corners), holes: [] };
}
