/** Bridges of one sheet that keep away from those of another, so that each sheet paints the other's. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { boxesTouch, growBox } from '../../geometry/base/ring';
import { nearestApproach } from '../../geometry/spatial/segment-distance';
import type { SegmentIndex } from '../../geometry/spatial/segment-index';
import type { Sheet } from '../../sheet/types';
import { boxOfCorners } from '../strip/strip';
import type { BridgeCandidate } from './candidates';
import { groundUnder } from './lanes';
import type { Bridge } from './types';

/** Ground that bridges keep away from. */
export interface TakenGround {
  readonly places: readonly { readonly corners: readonly Point[]; readonly box: Box }[];
  /** mm: how far at least. */
  readonly distance: number;
}

/** The ground under bridges of the sheet. @param distance mm */
export function groundOf(
  sheet: Sheet,
  bridges: readonly Bridge[],
  distance: number,
  pieces: SegmentIndex,
): TakenGround {
  const places = bridges.map(({ island, target, from, to, width, length }) => {
    const way = { from, to, length: length + sheet.kerf, target: sheet.pieces.indexOf(target) };
    const corners = groundUnder(way, sheet.pieces.indexOf(island), width, pieces);
    return { corners, box: boxOfCorners(corners) };
  });
  return { places, distance };
}

/** Whether a bridge keeps away from all that is taken. @param width mm as drawn */
export function keepsApart(
  way: BridgeCandidate,
  island: number,
  width: number,
  pieces: SegmentIndex,
  { places, distance }: TakenGround,
): boolean {
  const around = growBox(boxOfCorners([way.from, way.to]), 2 * width + distance);
  const near = places.filter(({ box }) => boxesTouch(box, around));
  if (near.length === 0) return true;
  const own = groundUnder(way, island, width, pieces);
  return near.every(({ corners }) => distanceBetween(own, corners) >= distance);
}

/** mm between two closed outlines, 0 where they cross. */
function distanceBetween(a: readonly Point[], b: readonly Point[]): number {
  checkpoint(a.length * b.length);
  const [own, others] = [edgesOf(a), edgesOf(b)];
  return Math.min(
    ...own.flatMap((edge) => others.map((other) => nearestApproach(edge, { from: 0, to: 1 }, other).distance)),
  );
}

function edgesOf(corners: readonly Point[]) {
  return corners.map(({ x, y }, i) => {
    const next = defined(corners[(i + 1) % corners.length]);
    return { ax: x, ay: y, bx: next.x, by: next.y };
  });
}
