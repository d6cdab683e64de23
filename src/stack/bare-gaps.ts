/** Bare ground between neighbouring colours that is narrower than a slip. Millimetres. */

import { defined } from '../base/defined';
import type { Point } from '../geometry/base/curve-types';
import type { Region } from '../geometry/base/polygon-types';
import { WRITTEN_STEP } from '../geometry/base/tolerances';
import { interpolate } from '../geometry/base/vector';
import { buildSegmentIndex, nearestSegment, type SegmentIndex } from '../geometry/spatial/segment-index';
import { findThinPartsIncrementally } from '../geometry/thickness/incremental';
import { findThinParts } from '../geometry/thickness/index';
import type { ThinPart } from '../geometry/thickness/types';
import type { BareGap } from './seam-types';
import { CRACK } from './tile-seams';

/** What is kept of a run. */
export interface ThinGround {
  readonly slip: number;
  readonly region: Region;
  readonly parts: readonly ThinPart[];
}

/** mm: a facing point lies on the edge of a layer that is no farther. */
const ON_EDGE = 2 * WRITTEN_STEP;

/**
 * In slips: ground that runs out between two outlines over a longer way is no point of theirs, but a gap that one end
 * closes (common practice, no source). A point of 3° is as long; where circles of 100 mm touch, it is 14 slips.
 */
const LONG_POINT = 20;

/** @param earlier of the same slip */
export function measureThinGround(region: Region, slip: number, earlier?: ThinGround): ThinGround {
  const parts =
    earlier?.slip === slip ? findThinPartsIncrementally(region, slip, earlier) : findThinParts(region, slip);
  return { slip, region, parts };
}

/**
 * Thin bare ground between two layers, in the order of the layers and then of the places, whatever the order in which
 * it was found. Short points in which two outlines run together are left out: they are no gap that closes or opens, but
 * the end of ground that is bare on purpose.
 * @param layers what is cut, in painting order
 */
export function bareGapsOf({ parts, slip }: ThinGround, layers: readonly Region[]): BareGap[] {
  const candidates = parts.filter(
    ({ kind, width, reach }) => width > 2 * CRACK && (kind !== 'tip' || reach > LONG_POINT * slip),
  );
  if (candidates.length === 0) return [];
  const indices = layers.map(buildSegmentIndex);
  return candidates
    .flatMap((part) => {
      const sides = part.kind === 'whole' ? sidesOfWhole(part, indices, slip) : sidesOfNeck(part, indices);
      if (!sides) return [];
      const [a, b] = sides;
      const [first, second] = a.layer < b.layer ? [a, b] : [b, a];
      return [
        {
          earlier: first.layer,
          later: second.layer,
          width: part.width,
          length: part.length,
          extent: part.extent,
          closed: part.kind === 'whole',
          onEarlier: first.point,
          onLater: second.point,
        },
      ];
    })
    .sort(compareByPlace);
}

function compareByPlace(a: BareGap, b: BareGap): number {
  return a.earlier - b.earlier || a.later - b.later || a.onEarlier.x - b.onEarlier.x || a.onEarlier.y - b.onEarlier.y;
}

interface Side {
  readonly layer: number;
  readonly point: Point;
}

/** Undefined where one layer may face itself. */
function sidesOfNeck({ from, to }: ThinPart, indices: readonly SegmentIndex[]): [Side, Side] | undefined {
  const [near, far] = [layersAt(from, indices), layersAt(to, indices)];
  const [layer, other] = [near.at(-1), far.at(-1)];
  if (layer === undefined || other === undefined || near.some((each) => far.includes(each))) return undefined;
  return [
    { layer, point: from },
    { layer: other, point: to },
  ];
}

function layersAt(point: Point, indices: readonly SegmentIndex[]): number[] {
  return [...indices.keys()].filter((layer) => nearestSegment(defined(indices[layer]), point, ON_EDGE));
}

/** The two layers nearest to the widest place. */
function sidesOfWhole(
  { from, to, width }: ThinPart,
  indices: readonly SegmentIndex[],
  slip: number,
): [Side, Side] | undefined {
  const centre = interpolate(from, to, 0.5);
  const places = indices.flatMap((index, layer) => {
    const nearest = nearestSegment(index, centre, width / 2 + slip);
    return nearest ? [{ layer, point: nearest.point, away: nearest.distance }] : [];
  });
  const [first, second] = places.sort((a, b) => a.away - b.away);
  return first && second && first.away <= width / 2 + ON_EDGE ? [first, second] : undefined;
}
