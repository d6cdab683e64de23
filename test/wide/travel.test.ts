/** The way of the tool over sheets of a thousand contours, beside what half a minute of the same search finds. */
import { expect, test } from 'vitest';
import { planTravel } from '../../src/cut/order/plan-travel';
import { drawnContours } from '../cut/order/instances';

const HOME = [{ x: 0, y: 0 }];
/** So many take about thirty seconds. */
const LONG = 450_000;

test('a thousand contours: within 3 % of the long search, and far below as drawn', () => {
  const contours = drawnContours(1000, 11);
  const task = { contours: [...contours, HOME] };
  const start = process.cpuUsage();
  const { length } = planTravel(task);
  const taken = process.cpuUsage(start).user / 1e6;
  const long = planTravel({ ...task, kicks: LONG }).length;
  const stops = [...HOME, ...contours.map(([first]) => first!), ...HOME];
  const asDrawn = stops.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - stops[i]!.x, y - stops[i]!.y), 0);
  console.log(
    `1000 contours: ${length.toFixed(0)} mm in ${taken.toFixed(2)} s, ${long.toFixed(0)} mm by the long search, ${asDrawn.toFixed(0)} mm as drawn`,
  );
  expect(long).toBeLessThanOrEqual(length);
  expect(length).toBeLessThan(1.03 * long);
  expect(length).toBeLessThan(0.1 * asDrawn);
});

test('a hundred sheets: never longer than as drawn, in whatever order that is', () => {
  for (let seed = 1; seed <= 100; seed += 1) {
    const contours = drawnContours(2 + (seed % 40), seed);
    const { order, entries } = planTravel({ contours: [...contours, HOME], kicks: 200 });
    // As it came out, drawn again: the best order there is may not be lost either.
    const drawn = order.map((contour) => [contours[contour]![entries[contour]!]!]);
    const stops = [...HOME, ...drawn.map(([first]) => first!), ...HOME];
    const before = stops.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - stops[i]!.x, y - stops[i]!.y), 0);
    expect(planTravel({ contours: [...drawn, HOME], kicks: 200 }).length).toBeLessThanOrEqual(before + 1e-9);
  }
});
