/** How long a tool takes along a path, from rest to rest, with what speed and acceleration allow. mm and seconds. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Point } from '../geometry/base/curve-types';
import { travelTime } from '../sheet/cutting-time';

export interface Motion {
  /** mm/s, at most. */
  readonly speed: number;
  /** mm/s² */
  readonly acceleration: number;
  /** mm/s that are kept round a right angle; 0 stops there. */
  readonly corner: number;
  /** mm/s³: how fast the acceleration changes. Without it, at once. */
  readonly jerk?: number;
}

/**
 * The time through points, with trapezoids of speed that look ahead. At a turn of θ between the legs the speed is bound by
 * "approximated centripetal acceleration": v² = a·δ·s/(1 − s) with s = sin(θ/2), where δ = v₉₀²·(√2 − 1)/a for the speed
 * v₉₀ round a right angle; and by the arc that is tangent to the middles of both legs, v² ≤ a·l·tan(θ/2)/2, so that finer
 * chords of a curve take no longer. From the kinematics document of an open 3D printer firmware; the form of the formulas
 * from memory.
 */
export function durationAlong(points: readonly Point[], { speed, acceleration, corner }: Motion): number {
  const legs = legsOf(points);
  if (legs.length === 0) return 0;
  const squares = [0, ...legs.slice(1).map((leg, i) => squareAtTurn(defined(legs[i]), leg, acceleration, corner)), 0];
  const most = speed * speed;
  // The squares of speeds: along a leg they change by 2·a·l at most, from behind and from ahead.
  for (let i = 0; i < squares.length; i += 1) squares[i] = Math.min(defined(squares[i]), most);
  for (let i = legs.length - 1; i >= 0; i -= 1) {
    squares[i] = Math.min(defined(squares[i]), defined(squares[i + 1]) + 2 * acceleration * defined(legs[i]).length);
  }
  let time = 0;
  for (const [i, { length }] of legs.entries()) {
    const from = defined(squares[i]);
    const to = Math.min(defined(squares[i + 1]), from + 2 * acceleration * length);
    squares[i + 1] = to;
    time += legTime(length, from, to, speed, acceleration);
  }
  return time;
}

interface Leg {
  readonly length: number;
  readonly x: number;
  readonly y: number;
}

function legsOf(points: readonly Point[]): Leg[] {
  checkpoint(points.length);
  return points.slice(1).flatMap(({ x, y }, i) => {
    const before = defined(points[i]);
    const length = Math.hypot(x - before.x, y - before.y);
    return length > 0 ? [{ length, x: (x - before.x) / length, y: (y - before.y) / length }] : [];
  });
}

function squareAtTurn(before: Leg, after: Leg, acceleration: number, corner: number): number {
  // The cosine of the angle between the legs: −1 where the way goes straight on.
  const cosine = -(before.x * after.x + before.y * after.y);
  const sine = Math.sqrt(Math.max(0, (1 - cosine) / 2));
  if (sine > 1 - 1e-9) return Infinity;
  const tangent = sine / Math.sqrt(Math.max(1e-18, (1 + cosine) / 2));
  const byCorner = (corner * corner * (Math.SQRT2 - 1) * sine) / (1 - sine);
  return Math.min(byCorner, 0.5 * Math.min(before.length, after.length) * tangent * acceleration);
}

/** @param from the squares of the speeds at both ends */
function legTime(length: number, from: number, to: number, speed: number, acceleration: number): number {
  const peak = Math.min(speed, Math.sqrt((2 * acceleration * length + from + to) / 2));
  const changing = (2 * peak * peak - from - to) / (2 * acceleration);
  return (2 * peak - Math.sqrt(from) - Math.sqrt(to)) / acceleration + (length - changing) / peak;
}

/** Straight on, from rest to rest. */
export function straightTime(distance: number, { speed, acceleration, jerk }: Motion): number {
  if (distance <= 0) return 0;
  return jerk === undefined
    ? travelTime(distance, speed, acceleration)
    : smoothTime(distance, speed, acceleration, jerk);
}

/**
 * With bounded jerk: the symmetric profile of seven segments in textbooks on motion control (from memory), fewer where the
 * speed or the acceleration is not reached.
 */
function smoothTime(distance: number, speed: number, acceleration: number, jerk: number): number {
  const rise = acceleration / jerk;
  if (speed * jerk >= acceleration * acceleration) {
    if (distance >= speed * (speed / acceleration + rise)) return distance / speed + speed / acceleration + rise;
    if (distance >= 2 * acceleration * rise * rise) {
      const peak = (-acceleration * rise + Math.sqrt((acceleration * rise) ** 2 + 4 * acceleration * distance)) / 2;
      return distance / peak + peak / acceleration + rise;
    }
  } else if (distance >= 2 * speed * Math.sqrt(speed / jerk)) {
    return distance / speed + 2 * Math.sqrt(speed / jerk);
  }
  return 4 * Math.cbrt(distance / (2 * jerk));
}
