/** How long it takes to cut a sheet, as far as speed and acceleration tell. */

import { defined } from '../base/defined';
import type { Config } from '../config/types';
import type { Ring } from '../geometry/base/polygon-types';
import { perimeter, ringsOf } from '../geometry/base/ring';
import type { Sheet } from './types';

/** Degrees: at a sharper turn a cutter stops, round a gentler one it goes on. Common practice, no source. */
const SHARP_TURN = 30;

/**
 * Seconds for all cut lines of a sheet; undefined unless the configuration states speed and acceleration. Ways between
 * the lines, second passes and slowing in tight bends are not in it.
 */
export function cuttingTimeOf(
  { openings }: Pick<Sheet, 'openings'>,
  { speed, acceleration }: Config,
): number | undefined {
  if (speed === undefined || acceleration === undefined) return undefined;
  const runs = openings.flatMap(ringsOf).flatMap(runsOf);
  return runs.reduce((sum, run) => sum + travelTime(run, speed, acceleration), 0);
}

/**
 * From rest to rest over a distance in mm, with the trapezoidal profile of textbooks on motion control (from memory):
 * d/v + v/a where the full speed is reached, which takes d ≥ v²/a, else 2·√(d/a).
 */
export function travelTime(distance: number, speed: number, acceleration: number): number {
  return distance >= speed ** 2 / acceleration
    ? distance / speed + speed / acceleration
    : 2 * Math.sqrt(distance / acceleration);
}

/** The lengths between the sharp corners of a ring; its whole length where it has none. */
function runsOf(ring: Ring): number[] {
  const count = ring.length / 2;
  const edge = (i: number): [number, number] => {
    const [from, to] = [2 * (i % count), 2 * ((i + 1) % count)];
    return [defined(ring[to]) - defined(ring[from]), defined(ring[to + 1]) - defined(ring[from + 1])];
  };
  const isSharp = (i: number): boolean => {
    const [[ax, ay], [bx, by]] = [edge(i + count - 1), edge(i)];
    return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) > (SHARP_TURN * Math.PI) / 180;
  };
  const first = Array.from({ length: count }, (_, i) => i).find(isSharp);
  if (first === undefined) return [perimeter(ring)];
  const runs: number[] = [];
  for (let i = first; i < first + count; i += 1) {
    const length = Math.hypot(...edge(i));
    if (isSharp(i)) runs.push(length);
    else runs[runs.length - 1] = defined(runs.at(-1)) + length;
  }
  return runs;
}

/** `48 s`, `3 min 05 s`, `1 h 02 min`: as exact as an estimate deserves. */
export function formatDuration(seconds: number): string {
  const whole = Math.max(1, Math.round(seconds));
  const two = (value: number) => String(value).padStart(2, '0');
  if (whole < 60) return `${whole} s`;
  if (whole < 3600) return `${Math.floor(whole / 60)} min ${two(whole % 60)} s`;
  return `${Math.floor(whole / 3600)} h ${two(Math.floor((whole % 3600) / 60))} min`;
}
