/**
 * The plane as several layers of rings divide it: which layers cover each face. The same exact cutting on the integer
 * grid as in `overlay.ts`, with a winding number for every layer.
 */

import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Ring } from '../base/polygon-types';
import { edgesIn } from '../base/ring';
import { EdgeList } from './edge-set';
import { buildPlanarGraph, type PlanarGraph } from './half-edges';
import { traceBorders } from './overlay';
import { type SnappedEdges, snapRound } from './snap-rounding';
import { computeEdgeWindings } from './winding-numbers';

export interface LayeredOverlay {
  readonly noded: SnappedEdges;
  readonly graph: PlanarGraph;
  /** The layers that cover the face on the left (y up) of each half-edge: layer i is bit i. */
  readonly coverage: Int32Array;
}

/**
 * A winding number takes two bits of a sum, so that −1 to 2 are told apart: rounding may double or turn a sliver of
 * less than a grid unit. Two sums of 32 bits hold thirty.
 */
const PER_SUM = 15;

export const MAX_LAYERS = 2 * PER_SUM;

/** In a sum of winding numbers each raised by one. */
const RAISED = (4 ** PER_SUM - 1) / 3;

/**
 * @param layers rings on the integer grid, of positive area round what is covered; at most `MAX_LAYERS` are looked at
 * @returns undefined when rounding does not come to rest, which no known input brings about
 */
export function overlayLayers(layers: readonly (readonly Ring[])[]): LayeredOverlay | undefined {
  const known = layers.slice(0, MAX_LAYERS);
  const edges = new EdgeList(known.reduce((sum, rings) => sum + edgesIn(rings), 0));
  known.forEach((rings, layer) => pushLayer(edges, rings, layer));
  return overlayOf(edges);
}

/** The map with one layer more, under a number that it does not have yet. What is known is not cut again. */
export function addLayer({ noded }: LayeredOverlay, rings: readonly Ring[], layer: number): LayeredOverlay | undefined {
  const { ax, ay, bx, by, first, second } = noded.edges;
  const edges = new EdgeList(ax.length + edgesIn(rings));
  checkpoint(ax.length);
  for (let i = 0; i < ax.length; i += 1) {
    edges.push(
      defined(ax[i]),
      defined(ay[i]),
      defined(bx[i]),
      defined(by[i]),
      defined(first[i]),
      defined(second[i]),
      0,
    );
  }
  pushLayer(edges, rings, layer);
  return overlayOf(edges);
}

function pushLayer(edges: EdgeList, rings: readonly Ring[], layer: number): void {
  const [first, second] = layer < PER_SUM ? [4 ** layer, 0] : [0, 4 ** (layer - PER_SUM)];
  for (const ring of rings) edges.pushRing(ring, first, second);
}

function overlayOf(edges: EdgeList): LayeredOverlay | undefined {
  const noded = snapRound(edges);
  if (!noded) return undefined;
  const graph = buildPlanarGraph(noded.edges);
  const { first, second } = computeEdgeWindings(noded, graph);
  const cover = first.map((sum, face) => coverageOf(sum) | (coverageOf(defined(second[face])) << PER_SUM));
  return { noded, graph, coverage: cover };
}

function coverageOf(sum: number): number {
  let bits = 0;
  for (let rest = sum + RAISED, layer = 0; layer < PER_SUM; layer += 1, rest >>= 2) {
    if ((rest & 3) > 1) bits |= 1 << layer;
  }
  return bits;
}

/**
 * Rings of positive area round the faces whose cover is accepted, of negative area round holes. On the integer grid.
 */
export function ringsOfCoverage(
  { graph, coverage: cover }: LayeredOverlay,
  accept: (cover: number) => boolean,
): Ring[] {
  return traceBorders(graph, (face) => accept(defined(cover[face])));
}
