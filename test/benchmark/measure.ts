/** What the rows of the benchmark have in common. */
import type { Report } from '../../src/engine/index';
import type { Region } from '../../src/geometry/base/polygon-types';
import { ringsOf } from '../../src/geometry/base/ring';

/** The median of the runs of a second and a half, in ms, after half a second to get warm. */
export function time(run: () => unknown): number {
  const laps: number[] = [];
  const cold = performance.now();
  while (performance.now() - cold < 500) run();
  const begin = performance.now();
  while (laps.length < 3 || performance.now() - begin < 1500) {
    const start = performance.now();
    run();
    laps.push(performance.now() - start);
  }
  return laps.sort((a, b) => a - b)[laps.length >> 1] as number;
}

/** Milliseconds of processor time of one run, whatever else the machine does. */
export function processorTime(run: () => unknown): number {
  const before = process.cpuUsage().user;
  run();
  return (process.cpuUsage().user - before) / 1e3;
}

/** The edges of all openings. */
export function segmentsIn({ sheets }: Report): number {
  return segmentsOf(sheets.flatMap(({ openings }) => openings));
}

function segmentsOf(region: Region): number {
  return region.flatMap(ringsOf).reduce((sum, ring) => sum + ring.length / 2, 0);
}

/** By which power of the size the time grows. */
export function growth(from: { size: number; time: number }, to: { size: number; time: number }): number {
  return Math.log(to.time / from.time) / Math.log(to.size / from.size);
}
