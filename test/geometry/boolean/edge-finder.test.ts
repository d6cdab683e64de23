import fc from 'fast-check';
import { expect, it as test } from 'vitest';
import { EdgeFinder } from '../../../src/geometry/boolean/edge-finder';
import { EdgeList, type Edges } from '../../../src/geometry/boolean/edge-set';

const SIDE = 1000;

function touching(edges: Edges, edge: number): number[] {
  const boxOf = (i: number) => ({
    minX: edges.ax[i]!,
    maxX: edges.bx[i]!,
    minY: Math.min(edges.ay[i]!, edges.by[i]!),
    maxY: Math.max(edges.ay[i]!, edges.by[i]!),
  });
  const own = boxOf(edge);
  return [...edges.ax.keys()].filter((i) => {
    const other = boxOf(i);
    return other.minX <= own.maxX && own.minX <= other.maxX && other.minY <= own.maxY && own.minY <= other.maxY;
  });
}

const edge = fc.array(fc.integer({ min: 0, max: SIDE }), { minLength: 4, maxLength: 4 });

/** Each edge but a few, of which some are gone and some cut in their middle. */
function withFewCut(whole: Edges): { pieces: Edges; cuts: number } {
  const list = new EdgeList(2 * whole.ax.length);
  let cuts = 0;
  whole.ax.forEach((ax, i) => {
    const [ay, bx, by] = [whole.ay[i]!, whole.bx[i]!, whole.by[i]!];
    const [x, y] = [Math.round((ax + bx) / 2), Math.round((ay + by) / 2)];
    if (i % 40 === 7 || i === whole.ax.length - 1) return;
    if (i % 40 !== 20) return list.push(ax, ay, bx, by, 1, 0, 0, i);
    cuts += 1;
    list.push(ax, ay, x, y, 1, 0, 1, i);
    list.push(x, y, bx, by, 1, 0, 1, i);
  });
  return { pieces: list.merge(), cuts };
}

test('finds the pieces of edges of which a few were cut, and those of none that is gone', () => {
  fc.assert(
    fc.property(fc.array(edge, { minLength: 100, maxLength: 200 }), (places) => {
      const list = new EdgeList(places.length);
      for (const [ax, ay, bx, by] of places) list.push(ax!, ay!, bx!, by!, 1, 0, 1);
      const whole = list.merge();
      const finder = EdgeFinder.of(whole);
      const { pieces, cuts } = withFewCut(whole);
      const after = finder.after(pieces, cuts)!;
      const found: number[] = [];
      for (let i = 0; i < pieces.ax.length; i += 1) {
        const count = after.near(i, found);
        expect(found.slice(0, count)).toEqual(touching(pieces, i));
        const met: number[] = [];
        const [ay, by] = [pieces.ay[i]!, pieces.by[i]!];
        after.search(pieces.ax[i]!, Math.min(ay, by), pieces.bx[i]!, Math.max(ay, by), (each) => met.push(each) === 0);
        expect(met.sort((a, b) => a - b)).toEqual(touching(pieces, i));
      }
    }),
    { numRuns: 4 },
  );
});
