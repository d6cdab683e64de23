/** Which of some rings have edges near a place. */

import type Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Box, Ring } from '../base/polygon-types';
import { boxOfRing, growBox } from '../base/ring';
import { indexBoxes } from './clusters';

const INTERVAL_EDGES = 8;

/** An index over the rings' boxes; their edges are looked at where a box comes near. */
export class RingIndex {
  private readonly index: Flatbush | undefined;

  private readonly rings: readonly Ring[];

  constructor(rings: readonly Ring[]) {
    this.rings = rings;

    this.index = rings.length > 0 ? indexBoxes(rings.map(boxOfRing)) : undefined;
  }

  /** The rings of which an edge's box comes within `margin` mm of the box. */
  near(box: Box, margin: number): Ring[] {
    const wide = growBox(box, margin);
    return this.candidates(wide).filter((ring) => hasEdgeIn(ring, wide));
  }

  comeNear(box: Box, margin: number): boolean {
    const wide = growBox(box, margin);
    return this.candidates(wide).some((ring) => hasEdgeIn(ring, wide));
  }

  /** Boxes that hold all edges, each of a few that follow each other. */
  intervals(): Box[] {
    return this.rings.flatMap((ring) => {
      const edges = ring.length / 2;
      const starts = Array.from({ length: Math.ceil(edges / INTERVAL_EDGES) }, (_, i) => i * INTERVAL_EDGES);
      return starts.map((start) => boxOfInterval(ring, start, Math.min(edges, start + INTERVAL_EDGES)));
    });
  }

  private candidates({ minX, minY, maxX, maxY }: Box): Ring[] {
    return (this.index?.search(minX, minY, maxX, maxY) ?? []).map((number) => defined(this.rings[number]));
  }
}

/** Round the edges that start at points `from` up to, not including, `to`. */
function boxOfInterval(ring: Ring, from: number, to: number): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = from; i <= to; i += 1) {
    const at = 2 * i < ring.length ? 2 * i : 0;
    box.minX = Math.min(box.minX, defined(ring[at]));
    box.minY = Math.min(box.minY, defined(ring[at + 1]));
    box.maxX = Math.max(box.maxX, defined(ring[at]));
    box.maxY = Math.max(box.maxY, defined(ring[at + 1]));
  }
  return box;
}

function hasEdgeIn(ring: Ring, { minX, minY, maxX, maxY }: Box): boolean {
  checkpoint(ring.length / 8);
  let [x0, y0] = [defined(ring[ring.length - 2]), defined(ring[ring.length - 1])];
  for (let at = 0; at + 1 < ring.length; at += 2) {
    const [x1, y1] = [defined(ring[at]), defined(ring[at + 1])];
    const across = (x0 >= minX || x1 >= minX) && (x0 <= maxX || x1 <= maxX);
    if (across && (y0 >= minY || y1 >= minY) && (y0 <= maxY || y1 <= maxY)) return true;
    x0 = x1;
    y0 = y1;
  }
  return false;
}
