import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box, Ring } from '../../../src/geometry/base/polygon-types';
import { ringOfPoints } from '../../../src/geometry/base/ring';
import { EdgeIndex } from '../../../src/geometry/spatial/edge-index';
import { point } from '../arbitraries';

/** The rings' vertices one after the other, and where each ring starts. */
function joined(rings: readonly Ring[]) {
  const ringStart = [0];
  for (const ring of rings) ringStart.push((ringStart.at(-1) ?? 0) + ring.length / 2);
  const all = rings.flatMap((ring) => [...ring]);
  const along = (axis: number) => Float64Array.from(all.filter((_, i) => i % 2 === axis));
  return { x: along(0), y: along(1), ringStart: Int32Array.from(ringStart) };
}

/** Every edge is looked at. */
function touching(rings: readonly Ring[], box: Box): number[] {
  const found: number[] = [];
  let start = 0;
  for (const ring of rings) {
    const size = ring.length / 2;
    for (let i = 0; i < size; i += 1) {
      const [a, b] = [2 * i, 2 * ((i + 1) % size)];
      const [ax, ay, bx, by] = [ring[a] ?? 0, ring[a + 1] ?? 0, ring[b] ?? 0, ring[b + 1] ?? 0];
      const apart =
        Math.max(ax, bx) < box.minX ||
        Math.min(ax, bx) > box.maxX ||
        Math.max(ay, by) < box.minY ||
        Math.min(ay, by) > box.maxY;
      if (!apart) found.push(start + i);
    }
    start += size;
  }
  return found;
}

function search(blocks: EdgeIndex, { minX, minY, maxX, maxY }: Box, visit = (_: number) => false): number[] {
  const found: number[] = [];
  blocks.search(minX, minY, maxX, maxY, (edge) => {
    found.push(edge);
    return visit(edge);
  });
  return found.sort((a, b) => a - b);
}

const ring = fc.array(point, { minLength: 3, maxLength: 40 }).map(ringOfPoints);
const rings = fc.array(ring, { minLength: 1, maxLength: 6 });
const box = fc.tuple(point, point).map(
  ([a, b]): Box => ({
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  }),
);

describe('EdgeIndex', () => {
  it('finds the edges whose boxes touch the box, each once', () => {
    fc.assert(
      fc.property(rings, box, (some, around) => {
        const { x, y, ringStart } = joined(some);
        expect(search(new EdgeIndex(x, y, ringStart), around)).toEqual(touching(some, around));
      }),
    );
  });

  it('stops when told to', () => {
    fc.assert(
      fc.property(rings, box, (some, around) => {
        const { x, y, ringStart } = joined(some);
        const found = search(new EdgeIndex(x, y, ringStart), around, () => true);
        expect(found).toHaveLength(Math.min(1, touching(some, around).length));
      }),
    );
  });

  it('can be searched while it is searched', () => {
    fc.assert(
      fc.property(rings, box, box, (some, around, within) => {
        const { x, y, ringStart } = joined(some);
        const blocks = new EdgeIndex(x, y, ringStart);
        const found = search(blocks, around, () => {
          expect(search(blocks, within)).toEqual(touching(some, within));
          return false;
        });
        expect(found).toEqual(touching(some, around));
      }),
    );
  });
});
