/** Closed outlines of a set of labels, as arcs of the map put end to end. */
import { defined } from '../../base/defined';
import type { Arc, PlanarMap } from './planar-map';

/** An arc in an outline. */
export interface ArcUse {
  /** Its number in the map. */
  readonly arc: number;
  /** Whether it is run through from its end to its beginning. */
  readonly reversed: boolean;
}

export type ArcRing = readonly ArcUse[];

/**
 * Outlines with the labels on their left. Where a region meets itself in one point it is parted there: no sheet holds in a point.
 */
export function ringsAround(map: PlanarMap, isInside: (label: number) => boolean): ArcRing[] {
  const uses: ArcUse[] = [];
  const leaving = new Map<number, ArcUse>();
  map.arcs.forEach((arc, number) => {
    const [left, right] = [isInside(arc.left), isInside(arc.right)];
    if (left === right) return;
    const use = { arc: number, reversed: right };
    uses.push(use);
    const start = endOf(arc, !use.reversed);
    if (start) leaving.set(4 * start.cell + start.side, use);
  });
  const used = new Set<ArcUse>();
  const rings: ArcRing[] = [];
  for (const first of uses) {
    const ring: ArcUse[] = [];
    for (let use: ArcUse | undefined = first; use && !used.has(use); ) {
      used.add(use);
      ring.push(use);
      const end = endOf(defined(map.arcs[use.arc]), use.reversed);
      use = end && leaving.get(4 * end.cell + sideAfter(map, end, isInside));
    }
    if (ring.length > 0) rings.push(ring);
  }
  return rings;
}

/** Where an arc begins or ends; undefined where it closes. */
function endOf(arc: Arc, atStart: boolean): { readonly cell: number; readonly side: number } | undefined {
  if (arc.from < 0) return undefined;
  return atStart ? { cell: arc.from, side: arc.fromSide } : { cell: arc.to, side: arc.toSide };
}

/** The next side on the way round the pixels within that lie on the left of who comes in through a side. */
function sideAfter(
  { grid }: PlanarMap,
  { cell, side }: { readonly cell: number; readonly side: number },
  isInside: (label: number) => boolean,
): number {
  let corner = (side + 1) % 4;
  while (isInside(grid.regionAt(cell, (corner + 1) % 4))) corner = (corner + 1) % 4;
  return corner;
}
