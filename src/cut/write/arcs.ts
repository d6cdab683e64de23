/** Curves as lines and circular arcs, for formats that know no others. Millimetres. */
import { checkpoint } from '../../base/checkpoint';
import type { Arc, Curve, Point } from '../../geometry/base/curve-types';
import { singularValues } from '../../geometry/base/matrix';
import { cross, distance, dot, interpolate, subtract } from '../../geometry/base/vector';
import { nearestOn, pointAt, subCurve, tangentAt } from '../../geometry/curve/index';

/**
 * A straight line or a circular arc. `bulge` is the tangent of a quarter of the angle that the arc turns through, 0 for a
 * line: positive where it turns clockwise on the screen (y down), as angles grow there.
 */
export interface Bow {
  readonly start: Point;
  readonly end: Point;
  readonly bulge: number;
}

/** Places at which an arc is compared with its curve. */
const SAMPLES = 24;

/** Halvings at most: what is left is far below any tolerance. */
const DEPTH = 24;

/** Semi-axes that differ by less, of their length, are those of a circle. */
const ROUND = 1e-9;

/** Between the places that are looked at, arcs stray by so little more. */
const BETWEEN_SAMPLES = 0.98;

/** @param tolerance mm: how far an arc may lie from its curve */
export function bowsOf(curve: Curve, tolerance: number): Bow[] {
  if (curve.kind === 'line') return [line(curve.start, curve.end)];
  if (curve.kind === 'arc' && isCircular(curve)) return circularBows(curve);
  return biarcs(curve, BETWEEN_SAMPLES * tolerance, DEPTH);
}

function line(start: Point, end: Point): Bow {
  return { start, end, bulge: 0 };
}

export function isCircular({ axisU, axisV }: Arc): boolean {
  const { larger, smaller } = singularValues(axisU, axisV);
  return larger - smaller <= ROUND * larger;
}

/** Half turns at most: the bulge of a whole one would be infinite. */
function circularBows(arc: Arc): Bow[] {
  const parts = Math.max(1, Math.ceil(Math.abs(arc.sweep) / Math.PI - 1e-9));
  const mirrored = cross(arc.axisU, arc.axisV) < 0 ? -1 : 1;
  return Array.from({ length: parts }, (_, i) => {
    const { start, end } = subCurve(arc, i / parts, (i + 1) / parts);
    return { start, end, bulge: mirrored * Math.tan(arc.sweep / parts / 4) };
  });
}

function biarcs(curve: Curve, tolerance: number, depth: number): Bow[] {
  checkpoint(SAMPLES);
  const { start, end } = curve;
  if (distance(start, end) < tolerance / 100 && isNear(curve, [line(start, end)], tolerance)) return [line(start, end)];
  for (const bows of [[line(start, end)], biarc(start, tangentAt(curve, 0), end, tangentAt(curve, 1))]) {
    if (bows && (depth === 0 || isNear(curve, bows, tolerance))) return bows;
  }
  return [
    ...biarcs(subCurve(curve, 0, 0.5), tolerance, depth - 1),
    ...biarcs(subCurve(curve, 0.5, 1), tolerance, depth - 1),
  ];
}

/**
 * Two arcs that meet in one tangent, with equal lengths of the legs between the ends and their joint (K. M. Bolton, "Biarc
 * curves", Computer-Aided Design 7, 1975; the form with equal legs from memory). Undefined where there is none.
 */
function biarc(start: Point, t0: Point, end: Point, t1: Point): Bow[] | undefined {
  const chord = subtract(end, start);
  const tangents = { x: t0.x + t1.x, y: t0.y + t1.y };
  const along = dot(chord, tangents);
  const square = dot(chord, chord);
  const bend = 2 * (1 - dot(t0, t1));
  const leg =
    Math.abs(bend) < 1e-12 ? square / (4 * dot(chord, t1)) : (Math.sqrt(along * along + bend * square) - along) / bend;
  if (!(leg > 0) || leg > 10 * Math.sqrt(square)) return undefined;
  const joint = {
    x: (start.x + end.x + leg * (t0.x - t1.x)) / 2,
    y: (start.y + end.y + leg * (t0.y - t1.y)) / 2,
  };
  const back = { x: -t1.x, y: -t1.y };
  return [
    { start, end: joint, bulge: bulgeFrom(start, t0, joint) },
    { start: joint, end, bulge: -bulgeFrom(end, back, joint) },
  ];
}

/** Of the arc that leaves a point along a tangent and reaches another one: it turns by twice the angle to the chord. */
function bulgeFrom(from: Point, tangent: Point, to: Point): number {
  const chord = subtract(to, from);
  return Math.tan(Math.atan2(cross(tangent, chord), dot(tangent, chord)) / 2);
}

function isNear(curve: Curve, bows: readonly Bow[], tolerance: number): boolean {
  for (let i = 1; i < SAMPLES; i += 1) {
    const point = pointAt(curve, i / SAMPLES);
    if (!bows.some((bow) => distanceToBow(point, bow) <= tolerance)) return false;
  }
  // Arcs can be near all of the curve, and run on beyond it.
  return bows.every((bow) => Math.abs(bow.bulge) <= 1 && nearestOn(curve, middleOf(bow)).distance <= tolerance);
}

/** The middle of an arc: a bulge is the height over half the chord. */
export function middleOf({ start, end, bulge }: Bow): Point {
  const half = interpolate(start, end, 0.5);
  return { x: half.x + ((end.y - start.y) * bulge) / 2, y: half.y - ((end.x - start.x) * bulge) / 2 };
}

export function centreOf({ start, end, bulge }: Bow): Point {
  const half = interpolate(start, end, 0.5);
  const rise = (1 - bulge * bulge) / (4 * bulge);
  return { x: half.x - (end.y - start.y) * rise, y: half.y + (end.x - start.x) * rise };
}

function distanceToBow(point: Point, bow: Bow): number {
  const { start, end, bulge } = bow;
  const toEnds = Math.min(distance(point, start), distance(point, end));
  const chord = subtract(end, start);
  if (Math.abs(bulge) < 1e-9) {
    const square = dot(chord, chord);
    const share = square > 0 ? dot(subtract(point, start), chord) / square : -1;
    return share < 0 || share > 1 ? toEnds : Math.abs(cross(chord, subtract(point, start))) / Math.sqrt(square);
  }
  const centre = centreOf(bow);
  const radius = distance(centre, start);
  const [from, at] = [subtract(start, centre), subtract(point, centre)];
  const turn = 4 * Math.atan(bulge);
  const angle = Math.atan2(cross(from, at), dot(from, at));
  const ahead = turn > 0 ? (angle + 2 * Math.PI) % (2 * Math.PI) : (2 * Math.PI - angle) % (2 * Math.PI);
  return ahead <= Math.abs(turn) ? Math.abs(distance(point, centre) - radius) : toEnds;
}
