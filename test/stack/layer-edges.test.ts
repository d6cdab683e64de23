import { describe, expect, it } from 'vitest';
import type { Polygon } from '../../src/geometry/base/polygon-types';
import { LayerEdges } from '../../src/stack/layer-edges';

function square(x: number, y: number, side: number): Polygon {
  return { outer: Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side), holes: [] };
}

describe('LayerEdges', () => {
  const edges = new LayerEdges([[square(0, 0, 10)], [], [square(20, 0, 10), square(10.5, 0, 5)], [square(0, 10, 5)]]);

  it('names the layers with an edge near a place, each once, in their order', () => {
    expect(edges.layersNear({ x: 10.2, y: 5 }, 0.4)).toEqual([0, 2]);
    expect(edges.layersNear({ x: 0, y: 10 }, 0.1)).toEqual([0, 3]);
    expect(edges.layersNear({ x: 5, y: 5 }, 1)).toEqual([]);
  });

  it('gives the nearest place of each, the nearest layer first', () => {
    const places = edges.nearest({ x: 10.3, y: 1 }, 10);
    expect(places.map(({ layer }) => layer)).toEqual([2, 0]);
    expect(places.map(({ point }) => point)).toEqual([
      { x: 10.5, y: 1 },
      { x: 10, y: 1 },
    ]);
    expect(places.map(({ away }) => away)).toEqual([expect.closeTo(0.2, 9), expect.closeTo(0.3, 9)]);
  });
});
