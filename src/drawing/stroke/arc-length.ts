/** Lengths along curves, and the way back from a length to the curve's parameter. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve } from '../../geometry/base/curve-types';
import { vectorLength } from '../../geometry/base/vector';
import { derivativeAt, lengthOf, subCurve } from '../../geometry/curve/index';

/** A stretch of curve along which the length is, within tolerance, a cubic of the parameter. */
interface LengthInterval {
  readonly t0: number;
  readonly t1: number;
  /** Length from the curve's start to the stretch's, and that of the stretch. */
  readonly before: number;
  readonly length: number;
  /** Length per unit of the parameter at both ends. */
  readonly speed0: number;
  readonly speed1: number;
}

/** Parts that a curve is cut into at first: one alone could agree in its middle by symmetry. */
const FIRST_PARTS = 4;
/** Where in a stretch the cubic is held against the length. */
const PROBES = [0.25, 0.5, 0.75];
const MAX_HALVINGS = 16;
const NEWTON_STEPS = 8;

export class ArcLength {
  readonly length: number;
  private readonly curve: Curve;
  private readonly tolerance: number;
  private readonly intervals: LengthInterval[] = [];

  /** @param tolerance by how much, in the curve's own units, the place of a length may be off */
  constructor(curve: Curve, tolerance: number) {
    this.curve = curve;
    this.tolerance = tolerance;
    const parts = curve.kind === 'line' ? 1 : FIRST_PARTS;
    for (let part = 0; part < parts; part += 1) this.addInterval(part / parts, (part + 1) / parts, 0);
    const last = this.intervals.at(-1);
    this.length = last ? last.before + last.length : 0;
  }

  /** The parameter at a length from the curve's start; lengths beyond the ends give the ends. */
  parameterAt(distance: number): number {
    if (!(distance > 0)) return 0;
    if (distance >= this.length) return 1;
    let [low, high] = [0, this.intervals.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.intervals[middle]?.before ?? 0) <= distance) low = middle;
      else high = middle - 1;
    }
    const stretch = this.intervals[low];
    return stretch ? parameterWithin(stretch, distance - stretch.before) : 1;
  }

  private addInterval(t0: number, t1: number, depth: number): void {
    checkpoint(10);
    const { curve, tolerance } = this;
    const places = [0, ...PROBES, 1].map((u) => t0 + u * (t1 - t0));
    const lengths = places.slice(1).map((t, i) => lengthOf(subCurve(curve, defined(places[i]), t)));
    const last = this.intervals.at(-1);
    const stretch = {
      t0,
      t1,
      before: last ? last.before + last.length : 0,
      length: lengths.reduce((sum, each) => sum + each, 0),
      speed0: speedAt(curve, t0),
      speed1: speedAt(curve, t1),
    };
    let reached = 0;
    const isOff = PROBES.some(
      (u, i) => Math.abs(lengthWithin(stretch, u) - (reached += defined(lengths[i]))) > tolerance,
    );
    if (!isOff || depth >= MAX_HALVINGS) {
      this.intervals.push(stretch);
      return;
    }
    const middle = (t0 + t1) / 2;
    this.addInterval(t0, middle, depth + 1);
    this.addInterval(middle, t1, depth + 1);
  }
}

function speedAt(curve: Curve, t: number): number {
  return vectorLength(derivativeAt(curve, t));
}

/** The cubic with the stretch's length, and its speeds at both ends (Hermite's), at u from 0 to 1. */
function lengthWithin({ t0, t1, length: whole, speed0, speed1 }: LengthInterval, u: number): number {
  const [a, b] = [speed0 * (t1 - t0), speed1 * (t1 - t0)];
  return u * (a + u * (3 * whole - 2 * a - b + u * (a + b - 2 * whole)));
}

function speedWithin({ t0, t1, length: whole, speed0, speed1 }: LengthInterval, u: number): number {
  const [a, b] = [speed0 * (t1 - t0), speed1 * (t1 - t0)];
  return a + u * (2 * (3 * whole - 2 * a - b) + 3 * u * (a + b - 2 * whole));
}

/** Newton's method on the cubic, kept between bounds by halving. */
function parameterWithin(stretch: LengthInterval, distance: number): number {
  const { t0, t1, length: whole } = stretch;
  let [low, high, u] = [0, 1, whole > 0 ? distance / whole : 0];
  for (let round = 0; round < NEWTON_STEPS; round += 1) {
    const reached = lengthWithin(stretch, u);
    if (reached > distance) high = u;
    else low = u;
    const next = u + (distance - reached) / speedWithin(stretch, u);
    u = next >= low && next <= high ? next : (low + high) / 2;
  }
  return t0 + u * (t1 - t0);
}
