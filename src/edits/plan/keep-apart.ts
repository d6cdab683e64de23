/** Bridges of one sheet that keep away from those of another, so that each sheet paints the other's. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { boxesTouch, growBox } from '../../geometry/base/ring';
import { nearestApproach, type Segment } from '../../geometry/spatial/segment-distance';
import type { SegmentIndex } from '../../geometry/spatial/segment-index';
import type { Sheet } from '../../sheet/types';
import { boxOfCorners } from '../strip/strip';
import type { BridgeCandidate } from './candidates';
import { groundUnder } from './lanes';
import type { Bridge } from './types';

/** Ground that bridges keep away from. */
export interface TakenGround {
  readonly places: readonly TakenPlace[];
  /** mm: how far at least. */
  readonly distance: number;
}

interface TakenPlace {
  readonly edges: readonly Segment[];
  readonly box: Box;
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
    return placeOf(groundUnder(way, sheet.pieces.indexOf(island), width, pieces));
  });
  return { places, distance };
}

function placeOf(corners: readonly Point[]): TakenPlace {
  return { edges: edgesOf(corners), box: boxOfCorners(corners) };
}

/** Whether already the middle line of a bridge comes too near to what is taken: soon told, before any ray is sent. */
export function crossesTaken({ from, to }: BridgeCandidate, { places, distance }: TakenGround): boolean {
  const line = { edges: [{ ax: from.x, ay: from.y, bx: to.x, by: to.y }], box: boxOfCorners([from, to]) };
  return places.some((place) => isNearer(line, place, distance));
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
  const own = placeOf(groundUnder(way, island, width, pieces));
  return near.every((place) => !isNearer(own, place, distance));
}

/** Whether outlines cross or come nearer to each other than `distance` mm. */
function isNearer(one: TakenPlace, other: TakenPlace, distance: number): boolean {
  checkpoint();
  if (gapOf(one.box, other.box) >= distance) return false;
  for (const edge of one.edges) {
    checkpoint(other.edges.length);
    for (const each of other.edges) {
      if (areBoxesApart(edge, each, distance)) continue;
      if (nearestApproach(edge, WHOLE, each).distance < distance) return true;
    }
  }
  return false;
}

const WHOLE = { from: 0, to: 1 };

/** mm along the axis in which the boxes are farther apart. */
function gapOf(a: Box, b: Box): number {
  return Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
}

/** Whether the boxes of two edges are so far apart: then the edges are. */
function areBoxesApart(a: Segment, b: Segment, distance: number): boolean {
  return (
    Math.min(a.ax, a.bx) - Math.max(b.ax, b.bx) >= distance ||
    Math.min(b.ax, b.bx) - Math.max(a.ax, a.bx) >= distance ||
    Math.min(a.ay, a.by) - Math.max(b.ay, b.by) >= distance ||
    Math.min(b.ay, b.by) - Math.max(a.ay, a.by) >= distance
  );
}

function edgesOf(corners: readonly Point[]): Segment[] {
  return corners.map(({ x, y }, i) => {
    const next = defined(corners[(i + 1) % corners.length]);
    return { ax: x, ay: y, bx: next.x, by: next.y };
  });
}
