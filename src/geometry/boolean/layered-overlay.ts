/**
 * The plane as several layers of rings divide it: which layers cover each face. The same exact cutting on the integer
 * grid as in `overlay.ts`, with a winding number for every layer.
 */
import type { Ring } from '../base/polygon-types';
import { noEdges, pushRing, type Edges } from './edge-set';
import { nodeEdges, type NodedEdges } from './snap-rounding';
import { traceBorders } from './overlay';
import { buildPlanarGraph, type PlanarGraph } from './half-edges';
import { windingsOf } from './winding-numbers';

export interface LayerMap {
  readonly noded: NodedEdges;
  readonly graph: PlanarGraph;
  /** The layers that cover the face on the left (y up) of each half-edge: layer i is bit i. */
  readonly cover: Int32Array;
}

/**
 * A winding number takes two bits of a sum, so that −1 to 2 are told apart: rounding may double or turn a sliver of less
 * than a grid unit. Two sums of 32 bits hold thirty.
 */
const PER_SUM = 15;

export const MOST_LAYERS = 2 * PER_SUM;

/** In a sum of winding numbers each raised by one. */
const RAISED = (4 ** PER_SUM - 1) / 3;

/**
 * @param layers rings on the integer grid, of positive area round what is covered; at most `MOST_LAYERS` are looked at
 * @returns undefined when rounding does not come to rest, which no known input brings about
 */
export function mapLayers(layers: readonly (readonly Ring[])[]): LayerMap | undefined {
  const edges = noEdges();
  layers.slice(0, MOST_LAYERS).forEach((rings, layer) => pushLayer(edges, rings, layer));
  return mapOf(edges);
}

/** The map with one layer more, under a number that it does not have yet. What is known is not cut again. */
export function addLayer({ noded }: LayerMap, rings: readonly Ring[], layer: number): LayerMap | undefined {
  const { ax, ay, bx, by, first, second } = noded.edges;
  const edges: Edges = {
    ax: [...ax],
    ay: [...ay],
    bx: [...bx],
    by: [...by],
    first: [...first],
    second: [...second],
    fresh: ax.map(() => 0),
  };
  pushLayer(edges, rings, layer);
  return mapOf(edges);
}

function pushLayer(edges: Edges, rings: readonly Ring[], layer: number): void {
  const [first, second] = layer < PER_SUM ? [4 ** layer, 0] : [0, 4 ** (layer - PER_SUM)];
  for (const ring of rings) pushRing(edges, ring, first, second);
}

function mapOf(edges: Edges): LayerMap | undefined {
  const noded = nodeEdges(edges);
  if (!noded) return undefined;
  const graph = buildPlanarGraph(noded.edges);
  const { first, second } = windingsOf(noded, graph);
  const cover = first.map((sum, face) => covering(sum) | (covering(second[face] ?? 0) << PER_SUM));
  return { noded, graph, cover };
}

function covering(sum: number): number {
  let bits = 0;
  for (let rest = sum + RAISED, layer = 0; layer < PER_SUM; layer += 1, rest >>= 2) {
    if ((rest & 3) > 1) bits |= 1 << layer;
  }
  return bits;
}

/** Rings of positive area round the faces whose cover is accepted, of negative area round holes. On the integer grid. */
export function ringsWhere({ graph, cover }: LayerMap, accept: (cover: number) => boolean): Ring[] {
  return traceBorders(graph, (face) => accept(cover[face] ?? 0));
}
