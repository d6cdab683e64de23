/**
 * Which faults are new after a change, or worse in sum. An old fault that was parted in two, moved, or made smaller is
 * not new: faults are compared by what they take up, not by the points that they are shown at. Sheet mm.
 */

import { defined } from '../../../base/defined';
import type { Box, Region } from '../../../geometry/base/polygon-types';
import { boxesTouch, growBox, joinBoxes } from '../../../geometry/base/ring';
import { DRAWN_ALIKE, SAME_FINDING, WRITTEN_STEP } from '../../../geometry/base/tolerances';
import {
  areaOf,
  boxOfPolygon,
  clipToBox,
  difference,
  intersection,
  offset,
  perimeterOf,
} from '../../../geometry/boolean/index';
import { isCourseNear, lengthBeyond } from './course';
import { isCutOff } from './cut-off';
import type { Extent } from './extent';

/** A fault, with what others of its kind have in common. */
export interface Fault {
  /** Faults of one group may take each other's place: of the same kind, in the same layer or between the same two. */
  readonly group: string;
  /** The higher, the more serious. */
  readonly rank: number;
  readonly extent: Extent;
}

/** What a sheet had before the change, for faults that are made worse by taking from it. */
export interface Earlier<F extends Fault> {
  readonly faults: readonly F[];
  /** What hung safely in the layer of a group of loose pieces. */
  readonly sound: (fault: F) => Region;
}

/** mm: an old fault reaches so far; what is nearer has moved. */
const NEAR = SAME_FINDING;

/** Measures that get worse by less than this, in mm, are as good as before. */
const DEPTH_TOLERANCE = DRAWN_ALIKE;

/** mm that a course may come out longer in sum: both its ends bend round what was changed. */
const LENGTH_TOLERANCE = SAME_FINDING;

/** Of a tongue that is held at another root now, at most so much may be new: more would be another tongue. */
const ROOT_SHARE = 0.5;

/** Area in mm² for each mm of outline that may differ through rounding. */
export const AREA_PER_LENGTH = 2 * WRITTEN_STEP;
const THIN_AREA_PER_LENGTH = DRAWN_ALIKE;

/** @returns those after the change that were not there before, or not as bad */
export function newOrWorse<F extends Fault>(earlier: Earlier<F>, now: readonly F[]): F[] {
  const groups = new Map<string, F[]>();
  for (const fault of now) groups.set(fault.group, [...(groups.get(fault.group) ?? []), fault]);
  return [...groups].flatMap(([group, faults]) => {
    const old = earlier.faults.filter((fault) => fault.group === group);
    const fresh = faults.filter((fault) => isNewOrWorse(fault, old, earlier.sound));
    return fresh.length > 0 || !isMoreInSum(old, faults) ? fresh : [worstOf(faults)];
  });
}

/** Boxes come first: where these tell, no place is worked out. */
function isNewOrWorse<F extends Fault>(fault: F, old: readonly F[], sound: Earlier<F>['sound']): boolean {
  const mayBeNear = old.filter((other) => mayTouch(fault.extent, other.extent));
  if (isWorseThanAll(fault, mayBeNear)) return true;
  const near = mayBeNear.filter((other) => isNear(fault.extent, other.extent));
  return isWorseThanAll(fault, near) || reachesBeyond(fault, near, sound);
}

function isWorseThanAll({ rank, extent }: Fault, others: readonly Fault[]): boolean {
  if (others.length === 0 || rank > Math.max(...others.map((other) => other.rank))) return true;
  const { depth, depthTolerance = DEPTH_TOLERANCE } = extent;
  const deepest = Math.max(...others.map((other) => other.extent.depth ?? Infinity));
  if (depth === undefined || depth <= deepest + depthTolerance) return false;
  return !others.some((other) => isPartOf(extent, other.extent));
}

/** Places are asked for last: that takes long. */
function isPartOf(now: Extent, before: Extent): boolean {
  if (!now.isWhole || !before.isWhole) return false;
  const [own, old] = [now.place, before.place];
  return own.kind === 'area' && old.kind === 'area' && isCutOff(own.region, old.region);
}

/** By boxes, where both are known. */
function mayTouch({ box: a }: Extent, { box: b }: Extent): boolean {
  return !a || !b || boxesTouch(growBox(a, NEAR), b);
}

/** Of loose pieces, whether they have anything in common: a piece does not move. */
function isNear({ place: a, mayReach }: Extent, { place: b }: Extent): boolean {
  if (a.kind === 'course') return b.kind === 'course' && isCourseNear(a.segments, b.segments, NEAR);
  if (b.kind === 'course') return false;
  const reach = mayReach === 'loose' ? 0 : NEAR;
  if (!haveTouchingBoxes(a.region, b.region, reach)) return false;
  // Most that are near have something in common as they are: moving outlines takes long.
  return intersection(a.region, b.region).length > 0 || (reach > 0 && isWithin(a.region, b.region, reach));
}

/** @param reach mm */
function haveTouchingBoxes(a: Region, b: Region, reach: number): boolean {
  return a.some((one) => b.some((other) => boxesTouch(growBox(boxOfPolygon(one), reach), boxOfPolygon(other))));
}

/** Of two regions with nothing in common. Only what of them lies near to the other is moved. */
function isWithin(a: Region, b: Region, reach: number): boolean {
  const nearB = clipToBox(b, growBox(boxOf(a), reach));
  if (nearB.length === 0) return false;
  const nearA = clipToBox(a, growBox(boxOf(nearB), reach));
  return nearA.length > 0 && intersection(nearA, offset(nearB, reach)).length > 0;
}

function boxOf(region: Region): Box {
  return joinBoxes(region.map(boxOfPolygon));
}

/** Whether it takes up what no old fault near it did. */
function reachesBeyond<F extends Fault>(fault: F, near: readonly F[], sound: Earlier<F>['sound']): boolean {
  const { place, mayReach } = fault.extent;
  if (mayReach === 'anywhere') return false;
  if (place.kind === 'course') {
    const old = near.flatMap(({ extent }) => (extent.place.kind === 'course' ? extent.place.segments : []));
    return lengthBeyond(place.segments, old, NEAR) > LENGTH_TOLERANCE;
  }
  const allowed = AREA_PER_LENGTH * perimeterOf(place.region);
  if (mayReach === 'loose') return areaOf(intersection(place.region, sound(fault))) > allowed;
  const old = near.flatMap(({ extent }) => (extent.place.kind === 'area' ? extent.place.region : []));
  return isMoreBeyond(place.region, old, mayReach === 'root' ? ROOT_SHARE * areaOf(place.region) : allowed);
}

/**
 * Whether more than an area (mm²) of a region lies farther than `NEAR` from the old ones. What it has in common with them is
 * left out first; of the rest, the largest piece often tells, and round each only the old that is near is moved.
 */
function isMoreBeyond(region: Region, old: Region, allowed: number): boolean {
  const rest = difference(region, old).map((polygon) => ({ polygon, area: areaOf(polygon) }));
  let left = rest.reduce((sum, { area }) => sum + area, 0);
  let beyond = 0;
  for (const { polygon, area } of rest.sort((a, b) => b.area - a.area)) {
    if (beyond > allowed || beyond + left <= allowed) break;
    left -= area;
    const near = clipToBox(old, growBox(boxOfPolygon(polygon), NEAR));
    beyond += near.length > 0 ? areaOf(difference([polygon], offset(near, NEAR))) : area;
  }
  return beyond > allowed;
}

/** Whether all faults of a group together have become more than they were. */
function isMoreInSum(old: readonly Fault[], now: readonly Fault[]): boolean {
  const more = sumOf(now) - sumOf(old);
  return more > 0 && more > toleranceOf(now);
}

function sumOf(faults: readonly Fault[]): number {
  return faults.reduce((sum, { extent }) => sum + (extent.amount ?? 0), 0);
}

function toleranceOf(faults: readonly Fault[]): number {
  return faults.reduce((sum, { extent: { place } }) => {
    return sum + (place.kind === 'course' ? LENGTH_TOLERANCE : THIN_AREA_PER_LENGTH * perimeterOf(place.region));
  }, 0);
}

/** The one to be told of. */
function worstOf<F extends Fault>(faults: readonly F[]): F {
  const amount = ({ extent }: F) => extent.amount ?? 0;
  return faults.reduce((most, each) => (amount(each) > amount(most) ? each : most), defined(faults[0]));
}
