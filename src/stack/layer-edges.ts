/** Which layers have an edge near a place: asked of all layers at once, as a stack may have thousands. */
import { defined } from '../base/defined';
import type { Point } from '../geometry/base/curve-types';
import type { Region } from '../geometry/base/polygon-types';
import { buildSegmentIndex, nearestSegment, type SegmentIndex, segmentsNear } from '../geometry/spatial/segment-index';

export interface PlaceOnLayer {
  readonly layer: number;
  readonly point: Point;
  /** mm */
  readonly away: number;
}

export class LayerEdges {
  private readonly layers: readonly Region[];
  private readonly all: SegmentIndex;
  /** The layer of each polygon of them all. */
  private readonly layerOf: readonly number[];
  private readonly single = new Map<number, SegmentIndex>();

  /** @param layers in painting order */
  constructor(layers: readonly Region[]) {
    this.layers = layers;
    this.all = buildSegmentIndex(layers.flat());
    this.layerOf = layers.flatMap((region, layer) => region.map(() => layer));
  }

  /** The layers that have an edge within `distance` mm, in their order. */
  layersNear(point: Point, distance: number): number[] {
    const near = segmentsNear(this.all, point, distance);
    const layers = new Set(near.map(({ edge }) => defined(this.layerOf[defined(this.all.polygon[edge])])));
    return [...layers].sort((a, b) => a - b);
  }

  /** The nearest place of each layer that is not farther than `distance` mm, the nearest layer first. */
  nearest(point: Point, distance: number): PlaceOnLayer[] {
    return this.layersNear(point, distance)
      .flatMap((layer) => {
        const nearest = nearestSegment(this.indexOf(layer), point, distance);
        return nearest ? [{ layer, point: nearest.point, away: nearest.distance }] : [];
      })
      .sort((a, b) => a.away - b.away);
  }

  private indexOf(layer: number): SegmentIndex {
    const known = this.single.get(layer);
    if (known) return known;
    const index = buildSegmentIndex(defined(this.layers[layer]));
    this.single.set(layer, index);
    return index;
  }
}
