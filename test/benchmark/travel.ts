/**
 * The way of the tool between cuts: a thousand contours in some 20,000 points, beside their order as drawn and beside what
 * thirty seconds of the same search find. Processor time, for that is what one waits for on an idle machine.
 */
import { planTravel } from '../../src/cut/order/plan-travel';
import { drawnContours } from '../cut/order/instances';

const HOME = [{ x: 0, y: 0 }];
const LONG_SECONDS = 30;

function planned(count: number, kicks?: number) {
  const task = { contours: [...drawnContours(count, 11), HOME], ...(kicks !== undefined && { kicks }) };
  const start = process.cpuUsage();
  const { length } = planTravel(task);
  const { user, system } = process.cpuUsage(start);
  return { length, milliseconds: (user + system) / 1000 };
}

function asDrawn(count: number): number {
  const stops = [...HOME, ...drawnContours(count, 11).map(([first]) => first!)];
  return stops.reduce((sum, { x, y }, i) => {
    const next = stops[(i + 1) % stops.length]!;
    return sum + Math.hypot(next.x - x, next.y - y);
  }, 0);
}

planned(1000);
for (const count of [100, 1000, 5000]) {
  const { length, milliseconds } = planned(count);
  console.log(
    `travel between ${count} contours: ${length.toFixed(0)} mm in ${milliseconds.toFixed(0)} ms; as drawn ${asDrawn(count).toFixed(0)} mm`,
  );
}
const short = planned(1000);
// As many kicks as take about so long.
const perKick = (planned(1000, 20_000).milliseconds - short.milliseconds) / 15_000;
const long = planned(1000, Math.round((LONG_SECONDS * 1000) / perKick));
console.log(
  `  of 1000: ${(100 * (short.length / long.length - 1)).toFixed(1)} % longer than what ${(long.milliseconds / 1000).toFixed(0)} s find (${long.length.toFixed(0)} mm)`,
);
