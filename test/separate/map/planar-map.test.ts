import { describe, expect, it } from 'vitest';
import type { Curve } from '../../../src/geometry/base/curve-types';
import { signedArea } from '../../../src/geometry/base/ring';
import { flattenSubpath } from '../../../src/geometry/curve/flatten';
import { fitArc } from '../../../src/separate/curve/fit-arc';
import { OUTSIDE } from '../../../src/separate/map/crossings';
import { planarMap } from '../../../src/separate/map/planar-map';
import { ringsAround } from '../../../src/separate/map/rings';
import { drawLayers } from '../../../src/separate/outlines';
import { hardLabels, type LabelMap } from '../../../src/separate/raster';
import { blots, seeded } from '../pictures';

const speckled = (seed: number): LabelMap => {
  const random = seeded(seed);
  return { width: 40, height: 30, labels: Uint8Array.from({ length: 1200 }, () => Math.floor(3 * random())) };
};

const maps: [string, LabelMap][] = [
  ['blots', blots(60, 50, 4, 20, 1)],
  ['more blots', blots(80, 70, 5, 60, 2)],
  ['specks', speckled(1)],
];

describe('the map of borders', () => {
  it.each(maps)('of %s has each crossing in one arc, with its own labels beside it', (_, map) => {
    const { arcs, grid } = planarMap(hardLabels(map));
    const crossed = new Set<number>();
    for (const { edges, left, right } of arcs) {
      expect(left).not.toBe(right);
      for (const edge of edges) {
        expect(crossed.has(edge)).toBe(false);
        crossed.add(edge);
        const at = edge >> 1;
        const beside = [grid.regions[at], grid.regions[edge & 1 ? at + grid.across : at + 1]];
        expect([...beside].sort()).toEqual([left, right].sort());
      }
    }
    let all = 0;
    for (let edge = 0; edge < 2 * (grid.regions.length - grid.across); edge += 1) if (grid.isCrossed(edge)) all += 1;
    expect(crossed.size).toBe(all);
  });

  /** S. B. Gray, "Local properties of binary images in two dimensions", IEEE Trans. Computers C-20, 1971: bit quads. */
  it.each(maps)('of %s has as many outlines less holes as the bit quads of each label say', (_, map) => {
    const soft = hardLabels(map);
    const traced = planarMap(soft);
    for (const label of new Set(map.labels)) {
      const rings = ringsAround(traced, (each) => each === label);
      const areas = rings.map((ring) =>
        signedArea(
          Float64Array.from(
            ring.flatMap(({ arc, reversed }) => pairsOf(traced.arcs[arc]!.points, reversed).slice(0, -1).flat()),
          ),
        ),
      );
      const outlines = areas.filter((area) => area < 0).length;
      const holes = areas.filter((area) => area > 0).length;
      const [least, most] = eulerNumbers(map, label);
      // Where two pixels only meet in a corner, it depends on the other labels whether they are joined.
      expect(outlines - holes).toBeGreaterThanOrEqual(least);
      expect(outlines - holes).toBeLessThanOrEqual(most);
    }
  });

  it.each(maps.slice(0, 2))(
    'of %s: inner borders are in exactly two layers, reversed, and areas fill the frame',
    (_, map) => {
      const labels = [...new Set(map.labels)];
      const rule = { pitch: 1, tolerance: 0.5, slip: 0, bridge: 0, opening: 0, isDrawing: true };
      const uses = new Map<string, number>();
      let area = 0;
      for (const label of labels) {
        // Alone, so that nothing is painted over.
        const { layers } = drawLayers(hardLabels(map), [label], rule);
        for (const ring of layers.flatMap(({ shapes }) => shapes.flat())) {
          area -= signedArea(flattenSubpath(ring, 1e-3));
          for (const curve of ring) uses.set(keyOf(curve), (uses.get(keyOf(curve)) ?? 0) + 1);
        }
      }
      expect(area).toBeCloseTo(map.width * map.height, 6);
      const reversedKey = (key: string): string => key.split(' ').toReversed().join(' ');
      for (const [key, count] of uses) {
        expect(count).toBe(1);
        const onFrame = key.split(' ').every((point) => isOnFrame(point, map));
        if (!onFrame) expect(uses.get(reversedKey(key))).toBe(1);
      }
    },
  );

  it('puts junctions on the frame where a border meets it', () => {
    const { junctions, arcs } = planarMap(hardLabels(blots(50, 40, 3, 9, 4)));
    for (const { left, right, points } of arcs) {
      if (left !== OUTSIDE && right !== OUTSIDE) continue;
      for (let i = 0; i < points.length; i += 2) {
        const [x, y] = [points[i]!, points[i + 1]!];
        expect(x === 0 || x === 50 || y === 0 || y === 40).toBe(true);
      }
    }
    expect(junctions.size).toBeGreaterThan(4);
  });
});

describe('a disc drawn with soft edges', () => {
  it.each([40, 90, 130])('of %d pixels has its area within a thousandth, in 4 to 8 cubics', (radius) => {
    const side = Math.ceil(2 * radius + 12);
    const centre = side / 2 + 0.27;
    const share = new Float32Array(side * side);
    const labels = new Uint8Array(side * side);
    const other = new Uint8Array(side * side);
    for (let at = 0; at < share.length; at += 1) {
      const inside = coverage((at % side) - centre, Math.floor(at / side) - centre, radius);
      labels[at] = inside >= 0.5 ? 1 : 0;
      other[at] = 1 - labels[at]!;
      share[at] = Math.max(inside, 1 - inside);
    }
    const { arcs } = planarMap({ width: side, height: side, labels, other, share });
    const disc = arcs.find(({ from }) => from < 0)!;
    const corners = { reach: 4.5, skip: 0.8, angle: 35, residual: 0.22, farthest: 4 };
    const curves = fitArc(disc.points, true, 0.2, corners).map(({ curve }) => curve);
    const area = Math.abs(signedArea(flattenSubpath(curves, 1e-4)));
    expect(Math.abs(area / (Math.PI * radius ** 2) - 1)).toBeLessThan(1e-3);
    expect(curves.length).toBeGreaterThanOrEqual(4);
    expect(curves.length).toBeLessThanOrEqual(8);
  });
});

/** The share of a pixel that lies in a disc, by 16 × 16 samples. */
function coverage(x: number, y: number, radius: number): number {
  let inside = 0;
  for (let i = 0; i < 256; i += 1) {
    if (Math.hypot(x + ((i % 16) + 0.5) / 16, y + (Math.floor(i / 16) + 0.5) / 16) < radius) inside += 1;
  }
  return inside / 256;
}

function pairsOf(points: Float64Array, reversed: boolean): number[][] {
  const pairs = Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!]);
  return reversed ? pairs.reverse() : pairs;
}

function keyOf(curve: Curve): string {
  const points =
    curve.kind === 'cubic' ? [curve.start, curve.control1, curve.control2, curve.end] : [curve.start, curve.end];
  return points.map(({ x, y }) => `${x.toFixed(9)},${y.toFixed(9)}`).join(' ');
}

function isOnFrame(point: string, { width, height }: LabelMap): boolean {
  const [x, y] = point.split(',').map(Number);
  return x === 0 || y === 0 || x === width || y === height;
}

/** Components less holes, of which pixels that meet in corners are joined, and of which they are not. */
function eulerNumbers({ width, height, labels }: LabelMap, label: number): [number, number] {
  const at = (x: number, y: number): number =>
    Number(x >= 0 && y >= 0 && x < width && y < height && labels[y * width + x] === label);
  let [one, three, diagonal] = [0, 0, 0];
  for (let y = -1; y < height; y += 1) {
    for (let x = -1; x < width; x += 1) {
      const [a, b, c, d] = [at(x, y), at(x + 1, y), at(x + 1, y + 1), at(x, y + 1)] as [number, number, number, number];
      const sum = a + b + c + d;
      if (sum === 1) one += 1;
      else if (sum === 3) three += 1;
      else if (sum === 2 && a === c) diagonal += 1;
    }
  }
  return [(one - three - 2 * diagonal) / 4, (one - three + 2 * diagonal) / 4];
}
