/** A second way to the filled area of rings: slabs between all heights at which something happens. Slow, simple. */
import type { Ring } from '../../src/geometry/base/polygon-types';

interface Segment {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export function slabArea(rings: readonly Ring[], fillRule: 'nonzero' | 'evenodd'): number {
  const segments = rings.flatMap(segmentsOf);
  const heights = [...new Set([...segments.map((segment) => segment.y0), ...crossingHeights(segments)])];
  heights.sort((a, b) => a - b);
  return heights
    .slice(1)
    .reduce((area, top, index) => area + filledBetween(segments, heights[index] ?? top, top, fillRule), 0);
}

function segmentsOf(ring: Ring): Segment[] {
  const points = Array.from(
    { length: ring.length / 2 },
    (_, index) => [ring[2 * index] ?? 0, ring[2 * index + 1] ?? 0] as const,
  );
  return points.map(([x0, y0], index) => {
    const [x1, y1] = points[(index + 1) % points.length] ?? [x0, y0];
    return { x0, y0, x1, y1 };
  });
}

function crossingHeights(segments: readonly Segment[]): number[] {
  return segments.flatMap((first, index) =>
    segments.slice(index + 1).flatMap((second) => {
      const [ax, ay, bx, by] = [first.x1 - first.x0, first.y1 - first.y0, second.x1 - second.x0, second.y1 - second.y0];
      const turn = ax * by - ay * bx;
      if (turn === 0) return [];
      const [dx, dy] = [second.x0 - first.x0, second.y0 - first.y0];
      const [t, u] = [(dx * by - dy * bx) / turn, (dx * ay - dy * ax) / turn];
      return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? [first.y0 + t * ay] : [];
    }),
  );
}

function filledBetween(segments: readonly Segment[], low: number, high: number, fillRule: string): number {
  const middle = (low + high) / 2;
  const crossings = segments
    .filter(({ y0, y1 }) => y0 > middle !== y1 > middle)
    .map(({ x0, y0, x1, y1 }) => ({ x: x0 + ((middle - y0) / (y1 - y0)) * (x1 - x0), turn: y1 > y0 ? 1 : -1 }))
    .sort((a, b) => a.x - b.x);
  let [turns, width] = [0, 0];
  crossings.forEach(({ x, turn }, index) => {
    turns += turn;
    const filled = fillRule === 'nonzero' ? turns !== 0 : turns % 2 !== 0;
    if (filled) width += (crossings[index + 1]?.x ?? x) - x;
  });
  return width * (high - low);
}
