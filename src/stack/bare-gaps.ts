/** Bare ground between neighbouring colours that is narrower than a slip. Millimetres. */

import type { Point } from '../geometry/base/curve-types';
import type { Region } from '../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../geometry/base/ring';
import { WRITTEN_STEP } from '../geometry/base/tolerances';
import { interpolate } from '../geometry/base/vector';
import { clipToBox, offset } from '../geometry/boolean/index';
import { findThinPartsIncrementally } from '../geometry/thickness/incremental';
import { findThinParts } from '../geometry/thickness/index';
import type { ThinPart } from '../geometry/thickness/types';
import { LayerEdges } from './layer-edges';
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
 * Ground that runs out between two outlines is no point of theirs, but a gap that one end closes (common practice, no
 * source), where it is longer than this, in slips: a point of 3° is as long; where circles of 100 mm touch, it is 14.
 */
const LONG_POINT = 20;

/**
 * Or where it is so many times as long as it is wide in the half before its end: as where circles touch whose point is
 * just that long, or edges that come together at less than 1.4°.
 */
const SLIM = 4 * LONG_POINT;

/** Or where a third colour closes it, which it does not run out into, over a longer way than this, in slips. */
const CLOSED_OFF = 2;

/** @param earlier of the same slip */
export function measureThinGround(region: Region, slip: number, earlier?: ThinGround): ThinGround {
  const parts =
    earlier?.slip === slip ? findThinPartsIncrementally(region, slip, earlier) : findThinParts(region, slip);
  return { slip, region, parts };
}

/**
 * Thin bare ground between two layers, in the order of the layers and then of the places, whatever the order in which
 * it was found. Short points in which two outlines run together are left out: they are no gap that closes or opens, but
 * the end of ground that is bare on purpose; a crack that one end closes is none.
 * @param layers what is cut, in painting order
 */
export function bareGapsOf({ region, parts, slip }: ThinGround, layers: readonly Region[]): BareGap[] {
  const candidates = parts
    .flatMap((part) => (isTouch(part, slip) ? besideTouch(region, part, slip) : [part]))
    .filter(({ kind, width, reach }) => width > 2 * CRACK && (kind !== 'tip' || reach > CLOSED_OFF * slip));
  if (candidates.length === 0) return [];
  const edges = new LayerEdges(layers);
  return candidates
    .filter((part) => part.kind !== 'tip' || isGap(part, slip, edges))
    .flatMap((part) => {
      const sides = part.kind === 'whole' ? sidesOfWhole(part, edges, slip) : sidesOfNeck(part, edges);
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

/** Whether two colours come together somewhere along a gap, as in a point: there it has no width, but beside it may. */
function isTouch({ kind, width, length }: ThinPart, slip: number): boolean {
  return kind === 'neck' && width <= 2 * CRACK && length > CLOSED_OFF * slip;
}

/** The thin ground that is left of a part of it, on either side of its cracks. */
function besideTouch(region: Region, { extent }: ThinPart, slip: number): ThinPart[] {
  const around = clipToBox(region, growBox(extent, 3 * slip));
  const open = offset(offset(around, -CRACK), CRACK);
  const within = growBox(extent, CRACK);
  return findThinParts(open, slip).filter((part) => boxContainsBox(within, part.extent));
}

/** Whether a tip of bare ground is a gap. */
function isGap(tip: ThinPart, slip: number, edges: LayerEdges): boolean {
  const { reach, width, from, to, end } = tip;
  if (reach > LONG_POINT * slip || reach > SLIM * width) return true;
  const flanks = [from, to].flatMap((side) => edges.layersNear(side, ON_EDGE));
  return end !== undefined && edges.layersNear(end, ON_EDGE).some((layer) => !flanks.includes(layer));
}

interface Side {
  readonly layer: number;
  readonly point: Point;
}

/** Undefined where one layer may face itself. */
function sidesOfNeck({ from, to }: ThinPart, edges: LayerEdges): [Side, Side] | undefined {
  const [near, far] = [edges.layersNear(from, ON_EDGE), edges.layersNear(to, ON_EDGE)];
  const [layer, other] = [near.at(-1), far.at(-1)];
  if (layer === undefined || other === undefined || near.some((each) => far.includes(each))) return undefined;
  return [
    { layer, point: from },
    { layer: other, point: to },
  ];
}

/** The two layers nearest to the widest place. */
function sidesOfWhole({ from, to, width }: ThinPart, edges: LayerEdges, slip: number): [Side, Side] | undefined {
  const [first, second] = edges.nearest(interpolate(from, to, 0.5), width / 2 + slip);
  return first && second && first.away <= width / 2 + ON_EDGE ? [first, second] : undefined;
}
