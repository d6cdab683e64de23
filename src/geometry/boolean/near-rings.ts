/** Whether rings come near to others. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Ring } from '../base/polygon-types';
import { boxOfRing } from '../base/ring';
import { EdgeIndex } from '../spatial/edge-index';

/**
 * Whether the box round an edge of a ring comes within `margin` mm of the box round one of the others' edges: true
 * wherever the edges themselves come so near.
 */
export function nearnessTo(others: readonly Ring[], margin: number): (ring: Ring) => boolean {
  const edges = others.length > 0 ? indexEdges(others) : undefined;
  if (!edges) return () => false;
  const meets = (minX: number, minY: number, maxX: number, maxY: number): boolean => {
    let found = false;
    edges.search(minX - margin, minY - margin, maxX + margin, maxY + margin, () => (found = true));
    return found;
  };
  return (ring) => {
    const { minX, minY, maxX, maxY } = boxOfRing(ring);
    if (!meets(minX, minY, maxX, maxY)) return false;
    checkpoint(2 * ring.length);
    let [x0, y0] = [defined(ring.at(-2)), defined(ring.at(-1))];
    for (let i = 0; i < ring.length; i += 2) {
      const [x1, y1] = [defined(ring[i]), defined(ring[i + 1])];
      if (meets(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1))) return true;
      [x0, y0] = [x1, y1];
    }
    return false;
  };
}

/** Undefined where there are no edges. */
function indexEdges(rings: readonly Ring[]): EdgeIndex | undefined {
  const starts = [0];
  for (const ring of rings) starts.push(defined(starts.at(-1)) + (ring.length >> 1));
  const count = defined(starts.at(-1));
  if (count === 0) return undefined;
  const [x, y] = [new Float64Array(count), new Float64Array(count)];
  rings.forEach((ring, number) => {
    checkpoint(ring.length);
    for (let i = 0, at = defined(starts[number]); i + 1 < ring.length; i += 2, at += 1) {
      x[at] = defined(ring[i]);
      y[at] = defined(ring[i + 1]);
    }
  });
  return new EdgeIndex(x, y, Int32Array.from(starts));
}
