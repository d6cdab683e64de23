/** How long a sheet takes on the machine. Seconds. */
import { defined } from '../base/defined';
import type { Config } from '../config/types';
import type { Point } from '../geometry/base/curve-types';
import { FLATTENING } from '../geometry/base/tolerances';
import { distance } from '../geometry/base/vector';
import { flattenCurve } from '../geometry/curve/flatten';
import type { Chain } from './chains';
import { durationAlong, type Motion, straightTime } from './motion';
import type { CutSheet } from './types';

/** mm/s round a right angle where nothing is stated: what light machines do without a shake. Common practice, no source. */
const USUAL_CORNER = 5;

/** What the configuration says of the machine; undefined unless speed and acceleration are stated. */
export function motionOf({ speed, acceleration, corner, jerk }: Config): Motion | undefined {
  if (speed === undefined || acceleration === undefined) return undefined;
  return { speed, acceleration, corner: Math.min(speed, corner ?? USUAL_CORNER), ...(jerk !== undefined && { jerk }) };
}

/** The cuts of a sheet, each from rest to rest, and the ways between them. Second passes are not in it. */
export function sheetTime({ contours }: Pick<CutSheet, 'contours'>, motion: Motion): number {
  let [at, time]: [Point, number] = [{ x: 0, y: 0 }, 0];
  for (const { curves } of contours) {
    const points = pointsAlong(curves);
    time += straightTime(distance(at, defined(points[0])), motion) + durationAlong(points, motion);
    at = defined(points.at(-1));
  }
  return time + straightTime(distance(at, { x: 0, y: 0 }), motion);
}

function pointsAlong(chain: Chain): Point[] {
  const ends: number[] = [];
  for (const curve of chain) flattenCurve(curve, FLATTENING, ends);
  const first = defined(chain[0]).start;
  return [
    first,
    ...Array.from({ length: ends.length / 2 }, (_, i) => ({ x: defined(ends[2 * i]), y: defined(ends[2 * i + 1]) })),
  ];
}
