/** Puts together again what was worked out cell by cell. Integer grid. */

import type { Ring } from '../base/polygon-types';
import { forEachEdge } from '../base/ring';
import { noEdges, pushEdge } from './edge-set';
import { buildPlanarGraph } from './half-edges';
import { traceBorders } from './overlay';
import { snapRound } from './snap-rounding';
import type { Tiles } from './tiles';
import { computeEdgeWindings } from './winding-numbers';

/**
 * The union of rings each of which lies in one cell, and meets others of its cell in points only. Nothing is cut but
 * edges that end on the border of a cell, where rounding may have set neighbours apart by a unit.
 * @returns undefined when rounding does not come to rest, which no known input brings about
 */
export function joinTiles(rings: readonly Ring[], { x, y, size }: Tiles): Ring[] | undefined {
  const edges = noEdges();
  const onBorder = (px: number, py: number): boolean => (px - x) % size === 0 || (py - y) % size === 0;
  for (const ring of rings) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      pushEdge(edges, x0, y0, x1, y1, 1, 0, onBorder(x0, y0) || onBorder(x1, y1) ? 1 : 0);
    });
  }
  const noded = snapRound(edges);
  if (!noded) return undefined;
  const graph = buildPlanarGraph(noded.edges);
  const { first } = computeEdgeWindings(noded, graph);
  return traceBorders(graph, (face) => first[face] !== 0);
}
