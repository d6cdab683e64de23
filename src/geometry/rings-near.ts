/** Which of some rings have edges near a place. */
import type Flatbush from 'flatbush';
import { indexBoxes } from './clusters';
import type { Box, Ring } from './region';
import { boxOfRing, forEachEdge, growBox, joinBoxes } from './rings';

const STRETCH = 8;

/** An index over the rings' boxes; their edges are looked at where a box comes near. */
export class RingsNear {
  private readonly index: Flatbush | undefined;

  constructor(private readonly rings: readonly Ring[]) {
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
  stretches(): Box[] {
    return this.rings.flatMap((ring) => {
      const boxes = boxesOfEdges(ring);
      const starts = Array.from({ length: Math.ceil(boxes.length / STRETCH) }, (_, i) => i * STRETCH);
      return starts.map((start) => joinBoxes(boxes.slice(start, start + STRETCH)));
    });
  }

  private candidates({ minX, minY, maxX, maxY }: Box): Ring[] {
    return (this.index?.search(minX, minY, maxX, maxY) ?? []).map((number) => this.rings[number] as Ring);
  }
}

export function boxesOfEdges(ring: Ring): Box[] {
  const boxes: Box[] = [];
  forEachEdge(ring, (x0, y0, x1, y1) => {
    boxes.push({ minX: Math.min(x0, x1), minY: Math.min(y0, y1), maxX: Math.max(x0, x1), maxY: Math.max(y0, y1) });
  });
  return boxes;
}

function hasEdgeIn(ring: Ring, { minX, minY, maxX, maxY }: Box): boolean {
  let [x0, y0] = [ring[ring.length - 2] ?? 0, ring[ring.length - 1] ?? 0];
  for (let at = 0; at + 1 < ring.length; at += 2) {
    const [x1, y1] = [ring[at] ?? 0, ring[at + 1] ?? 0];
    const across = (x0 >= minX || x1 >= minX) && (x0 <= maxX || x1 <= maxX);
    if (across && (y0 >= minY || y1 >= minY) && (y0 <= maxY || y1 <= maxY)) return true;
    x0 = x1;
    y0 = y1;
  }
  return false;
}
