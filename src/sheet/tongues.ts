/** Loose tongues: parts of the sheet that hang on a short root and lift too far. Sheet mm. */

import type { Point } from '../geometry/base/curve-types';
import type { Region, Ring } from '../geometry/base/polygon-types';
import {
  boxContainsBox,
  boxesTouch,
  boxOfRing,
  pointsOf,
  reverseRing,
  ringContains,
  signedArea,
} from '../geometry/base/ring';
import { TOUCHING } from '../geometry/base/tolerances';
import { interpolate } from '../geometry/base/vector';
import { intersection } from '../geometry/boolean/index';
import { nearnessTo } from '../geometry/boolean/near-rings';
import { findProtrusions, type Protrusion } from '../geometry/protrusion/find';
import { DEFLECTION_LIMIT, stripLift, stripReach } from './deflection';
import { type Bending, type Lift, liftOf } from './lift/index';
import type { ThinPlace } from './thin-places';

export interface Tongue extends Protrusion {
  /** mm, of what lifts farthest. More than about a tenth of the reach says no more than "far". */
  readonly lift: number;
  /** Where that is. */
  readonly end: Point;
  /** mm: as far reaches a plain strip that lifts as much. */
  readonly strip: number;
}

/**
 * Of what a plain strip may reach. Heads on stalks lift more than strips; one that reaches no farther than this would need a
 * stalk too narrow to hold anyway.
 */
const LEAST_SHARE = 0.5;

/** @param material of the sheet, as drawn. Tongues of islands are of no interest: those fall out whole. */
export function findTongues(material: Region, bending: Bending): Tongue[] {
  const frame = material[framePolygon(material)];
  if (!frame) return [];
  return findProtrusions([frame], leastReach(bending)).flatMap((lobe) => {
    const holes = holesWithin(
      lobe.outline,
      frame.holes.filter((hole) => hole !== lobe.ring),
    );
    const { lift, at: end } = liftOf({ outline: lobe.outline, holes }, bending) ?? asStrip(lobe, bending);
    return lift > DEFLECTION_LIMIT ? [{ ...lobe, lift, end, strip: stripReach(lift, bending) }] : [];
  });
}

/** What touches itself, by rounding, is taken as a plain strip. */
function asStrip({ reach, tip }: Protrusion, bending: Bending): Lift {
  return { lift: stripLift(reach, bending), at: tip };
}

interface MeasuredMaterial {
  readonly material: Region;
  readonly thinMaterial: readonly ThinPlace[];
  readonly tongues: readonly Tongue[];
}

/**
 * Slivers that end in the open: narrower than a bridge may be, and as long as half a strip that would lift by itself. Not
 * those of islands, nor those that are told of as tongues.
 */
export function findWhiskers({ material, thinMaterial, tongues }: MeasuredMaterial, bending: Bending): ThinPlace[] {
  const frame = framePolygon(material);
  return thinMaterial.filter(
    ({ kind, polygon, cutWidth, reach, from, to }) =>
      kind === 'tip' &&
      polygon === frame &&
      cutWidth > 0 &&
      reach >= leastReach(bending) &&
      tongues.every(({ outline }) => !ringContains(outline, interpolate(from, to, 0.5))),
  );
}

/** mm */
function leastReach(bending: Bending): number {
  return LEAST_SHARE * stripReach(DEFLECTION_LIMIT, bending);
}

/** The number of the polygon that holds the sheet together: the largest one. */
function framePolygon(material: Region): number {
  const sizes = material.map(({ outer }) => signedArea(outer));
  return sizes.indexOf(sizes.reduce((most, size) => Math.max(most, size), -Infinity));
}

/** The holes of a lobe; of those that its root crosses what lies beyond it. */
function holesWithin(outline: Ring, all: readonly Ring[]): Ring[] {
  const box = boxOfRing(outline);
  const near = all.filter((hole) => boxesTouch(boxOfRing(hole), box));
  const isNear = nearnessTo([outline], TOUCHING);
  const isWithin = (hole: Ring): boolean => {
    if (!boxContainsBox(box, boxOfRing(hole))) return false;
    // What keeps clear of the outline is within it with all of its points, or with none.
    const points = isNear(hole) ? pointsOf(hole) : pointsOf(hole).slice(0, 1);
    return points.every((point) => ringContains(outline, point));
  };
  const whole = new Set(near.filter(isWithin));
  const others = near.filter((hole) => !whole.has(hole)).map((hole) => ({ outer: reverseRing(hole), holes: [] }));
  const cut = others.length > 0 ? intersection([{ outer: outline, holes: [] }], others) : [];
  return [...whole, ...cut.map(({ outer }) => outer)];
}
