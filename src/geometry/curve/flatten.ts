/** Curves to chords that stay within a stated distance of them. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Arc, Cubic, Curve, Point, Quadratic } from '../base/curve-types';
import { singularValues } from '../base/matrix';
import type { Ring } from '../base/polygon-types';
import { vectorLength } from '../base/vector';
import { pointAtAngle, secondDifference } from './evaluate';

/** Keeps memory bounded when coordinates are absurd: at 5 µm a bend of more than 100 km would be needed. */
const MAX_CHORDS = 1 << 16;

/**
 * Appends x, y of each chord's end (the curve's own start is not written, its end is, exactly). No point of the curve
 * is farther from its chord than `tolerance` (mm). Reversed curves give the same points, reversed.
 */
export function flattenCurve(curve: Curve, tolerance: number, into: number[]): void {
  switch (curve.kind) {
    case 'line':
      break;
    case 'quadratic':
      flattenQuadratic(curve, tolerance, into);
      break;
    case 'cubic':
      flattenCubic(curve, tolerance, into);
      break;
    case 'arc':
      flattenArc(curve, tolerance, into);
      break;
  }
  into.push(curve.end.x, curve.end.y);
}

/**
 * Wang's bound: n equal steps in t keep a Bézier curve of degree d within `tolerance` of its chords when
 * n² ≥ d(d − 1)/8 · max |second difference| / tolerance.
 * G. Wang, "The subdivision method for finding the intersection between two Bézier curves or surfaces",
 * Zhejiang University Journal, special issue on computational geometry, 1984.
 */
function chordsOf(degree: number, bend: number, tolerance: number): number {
  return clampChords(Math.sqrt((degree * (degree - 1) * bend) / (8 * tolerance)));
}

function clampChords(chords: number): number {
  return Number.isFinite(chords) ? Math.max(1, Math.min(MAX_CHORDS, Math.ceil(chords))) : 1;
}

/** Paired sums keep the result the same, to the last bit, when start and end change places. */
function flattenQuadratic(curve: Quadratic, tolerance: number, into: number[]): void {
  const { start, control, end } = curve;
  const chords = chordsOf(2, vectorLength(secondDifference(start, control, end)), tolerance);
  for (let index = 1; index < chords; index += 1) {
    const [s, t] = [(chords - index) / chords, index / chords];
    const [first, middle, last] = [s * s, 2 * s * t, t * t];
    into.push(first * start.x + last * end.x + middle * control.x, first * start.y + last * end.y + middle * control.y);
  }
}

function flattenCubic(curve: Cubic, tolerance: number, into: number[]): void {
  const { start, control1, control2, end } = curve;
  const bend = Math.max(
    vectorLength(secondDifference(start, control1, control2)),
    vectorLength(secondDifference(control1, control2, end)),
  );
  const chords = chordsOf(3, bend, tolerance);
  for (let index = 1; index < chords; index += 1) {
    const [s, t] = [(chords - index) / chords, index / chords];
    const [first, second, third, last] = [s * s * s, 3 * (s * t) * s, 3 * (s * t) * t, t * t * t];
    into.push(
      first * start.x + last * end.x + (second * control1.x + third * control2.x),
      first * start.y + last * end.y + (second * control1.y + third * control2.y),
    );
  }
}

/** The sagitta 1 − cos(step/2) of the unit circle, enlarged by the larger semi-axis, bounds the chord's error. */
function flattenArc(arc: Arc, tolerance: number, into: number[]): void {
  const radius = singularValues(arc.axisU, arc.axisV).larger;
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance / radius));
  const chords = radius > 0 ? clampChords(Math.abs(arc.sweep) / step) : 1;
  const to = arc.from + arc.sweep;
  for (let index = 1; index < chords; index += 1) {
    const angle = (arc.from * (chords - index) + to * index) / chords;
    const point = pointAtAngle(arc, angle);
    into.push(point.x, point.y);
  }
}

/** A chain of curves as a closed ring, in mm: repeated points dropped, the closing one too. */
export function flattenSubpath(curves: readonly Curve[], tolerance: number): Ring {
  const first = curves[0];
  if (first === undefined) return new Float64Array(0);
  const coordinates: number[] = [first.start.x, first.start.y];
  let previous: Point = first.start;
  for (const curve of curves) {
    checkpoint(10);
    if (curve.start.x !== previous.x || curve.start.y !== previous.y) coordinates.push(curve.start.x, curve.start.y);
    flattenCurve(curve, tolerance, coordinates);
    previous = curve.end;
  }
  checkpoint(coordinates.length);
  return ringWithoutRepeats(coordinates);
}

function ringWithoutRepeats(coordinates: readonly number[]): Ring {
  const kept: number[] = [];
  for (let index = 0; index + 1 < coordinates.length; index += 2) {
    const [x, y] = [defined(coordinates[index]), defined(coordinates[index + 1])];
    if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
    if (kept.length > 0 && kept.at(-2) === x && kept.at(-1) === y) continue;
    kept.push(x, y);
  }
  while (kept.length > 2 && kept[0] === kept.at(-2) && kept[1] === kept.at(-1)) kept.length -= 2;
  return Float64Array.from(kept);
}
