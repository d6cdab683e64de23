import { describe, expect, it, test } from 'vitest';
import { planTravel, type TravelTask } from '../../../src/cut/order/plan-travel';
import type { Point } from '../../../src/geometry/base/curve-types';
import { clustersOf, drawnContours, placesOf, rounded } from './instances';

const HOME: Point[] = [{ x: 0, y: 0 }];
const between = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** The tour's length from its own order and entries, and that each contour is in it once. */
function lengthOf({ contours, distance }: TravelTask, plan: ReturnType<typeof planTravel>): number {
  expect([...plan.order].sort((a, b) => a - b)).toEqual(contours.slice(0, -1).map((_, i) => i));
  const stops = [contours.length - 1, ...plan.order].map((contour) => contours[contour]![plan.entries[contour]!]!);
  const way = (a: Point, b: Point) => (distance ? distance(a.x - b.x, a.y - b.y) : between(a, b));
  return stops.reduce((sum, stop, i) => sum + way(stop, stops[(i + 1) % stops.length]!), 0);
}

/** Every order, and for each the best entries, by looking at all of them one contour after the other. */
function bruteForce(contours: readonly Point[][], allowed: (order: readonly number[]) => boolean): number {
  let best = Infinity;
  const visit = (order: number[], rest: number[]): void => {
    if (rest.length === 0 && allowed(order)) {
      let costs = new Map<Point, number>([[HOME[0]!, 0]]);
      for (const contour of [...order.map((i) => contours[i]!), HOME]) {
        const next = new Map<Point, number>();
        for (const to of contour) {
          next.set(to, Math.min(...[...costs].map(([from, cost]) => cost + between(from, to))));
        }
        costs = next;
      }
      best = Math.min(best, ...costs.values());
    }
    for (const next of rest)
      visit(
        [...order, next],
        rest.filter((other) => other !== next),
      );
  };
  visit(
    [],
    contours.map((_, i) => i),
  );
  return best;
}

/** From first point to first point, in the order given. */
function asDrawn(contours: readonly Point[][]): number {
  const stops = [HOME[0]!, ...contours.map(([first]) => first!)];
  return stops.reduce((sum, stop, i) => sum + between(stop, stops[(i + 1) % stops.length]!), 0);
}

describe('tours whose best length is known', () => {
  // TSPLIB's optima, as its site at Heidelberg lists them.
  it.each([
    ['berlin52', 7542],
    ['eil51', 426],
  ] as const)('%s: %d is reached', (name, best) => {
    const task = { contours: placesOf(name).map((place) => [place]), distance: rounded };
    const plan = planTravel(task);
    expect(plan.length).toBe(best);
    expect(lengthOf(task, plan)).toBe(best);
  });

  it('eil101 comes within 2 % of 629', () => {
    const plan = planTravel({ contours: placesOf('eil101').map((place) => [place]), distance: rounded });
    expect(plan.length).toBeGreaterThanOrEqual(629);
    expect(plan.length).toBeLessThan(629 * 1.02);
  });

  // Fischetti, Salazar and Toth 1997, recited from memory. Clusters made by their rule give exactly these.
  it.each([
    ['berlin52', 4040],
    ['eil51', 174],
    ['eil101', 249],
  ] as const)('%s in clusters, of each one place: %d is reached', (name, best) => {
    const task = { contours: clustersOf(placesOf(name)), distance: rounded };
    const plan = planTravel(task);
    expect(plan.length).toBe(best);
    expect(lengthOf(task, plan)).toBe(best);
  });
});

describe('few contours', () => {
  it.each([1, 2, 3, 5])('%d of them: as short as by trying everything', (count) => {
    for (const seed of [1, 2, 3]) {
      const contours = drawnContours(count, seed, 60, 40);
      const best = bruteForce(contours, () => true);
      expect(planTravel({ contours: [...contours, HOME] }).length).toBeCloseTo(best, 9);
    }
  });

  it('six to eight of them, searched: as short as by trying everything', () => {
    for (const count of [6, 7, 8]) {
      const contours = drawnContours(count, count, 60, 40).map((points) => points.filter((_, i) => i % 4 === 0));
      const best = bruteForce(contours, () => true);
      expect(planTravel({ contours: [...contours, HOME] }).length).toBeCloseTo(best, 9);
    }
  });

  it('keeps what lies inside before what it lies in, and is as short as that allows', () => {
    const contours = drawnContours(7, 4, 60, 40).map((points) => points.slice(0, 3));
    const parents = [2, 2, undefined, undefined, 3, undefined, undefined];
    const isAllowed = (order: readonly number[]) =>
      order.at(-1) === 6 &&
      parents.every((parent, i) => parent === undefined || order.indexOf(parent) > order.indexOf(i));
    const plan = planTravel({ contours: [...contours, HOME], parents, last: 6 });
    expect(isAllowed(plan.order)).toBe(true);
    expect(plan.length).toBeCloseTo(bruteForce(contours, isAllowed), 9);
  });
});

describe('many contours', () => {
  const contours = drawnContours(300, 11);
  const task: TravelTask = { contours: [...contours, HOME], kicks: 1000 };

  it('is never longer than as drawn, and much shorter here', () => {
    const plan = planTravel(task);
    expect(lengthOf(task, plan)).toBeCloseTo(plan.length, 6);
    expect(plan.length).toBeLessThan(0.1 * asDrawn(contours));
    // Already in the best order there is: nothing is lost.
    const sorted = plan.order.map((contour) => [contours[contour]![plan.entries[contour]!]!]);
    expect(planTravel({ contours: [...sorted, HOME], kicks: 0 }).length).toBeLessThan(plan.length + 1e-9);
  });

  it('comes out the same each time', () => {
    expect(planTravel(task)).toEqual(planTravel(task));
  });

  it('heeds nests and the last contour as strictly as with a few', () => {
    const parents = contours.map((_, i) => (i % 10 === 0 ? undefined : i - (i % 10)));
    const nested = { ...task, parents, last: 290 };
    const plan = planTravel(nested);
    const place = new Map(plan.order.map((contour, i) => [contour, i]));
    expect(plan.order.at(-1)).toBe(290);
    for (const [i, parent] of parents.entries()) {
      if (parent !== undefined) expect(place.get(parent)).toBeGreaterThan(place.get(i)!);
    }
    expect(lengthOf(nested, plan)).toBeCloseTo(plan.length, 6);
  });
});

test('nothing to cut is no way at all', () => {
  expect(planTravel({ contours: [HOME] })).toEqual({ order: [], entries: [0], length: 0 });
});
