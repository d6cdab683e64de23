/** The two sides of a stroke along a stretch of curve, as cubics that stay within a tolerance of the true offsets. */
import type { Cubic, Curve, Point } from '../../geometry/base/curve-types';

/** Place, first and second derivative of a curve at a parameter. */
export interface Sample {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly ddx: number;
  readonly ddy: number;
}

export type Bent = Exclude<Curve, { kind: 'line' }>;

export function sampleCurve(curve: Bent, t: number): Sample {
  if (curve.kind === 'arc') return sampleArc(curve, t);
  if (curve.kind === 'quadratic') return sampleQuadratic(curve, t);
  const { start, control1, control2, end } = curve;
  const s = 1 - t;
  const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  const [e, f, g] = [3 * s * s, 6 * s * t, 3 * t * t];
  return {
    x: a * start.x + b * control1.x + c * control2.x + d * end.x,
    y: a * start.y + b * control1.y + c * control2.y + d * end.y,
    dx: e * (control1.x - start.x) + f * (control2.x - control1.x) + g * (end.x - control2.x),
    dy: e * (control1.y - start.y) + f * (control2.y - control1.y) + g * (end.y - control2.y),
    ddx: 6 * (s * (start.x - 2 * control1.x + control2.x) + t * (control1.x - 2 * control2.x + end.x)),
    ddy: 6 * (s * (start.y - 2 * control1.y + control2.y) + t * (control1.y - 2 * control2.y + end.y)),
  };
}

function sampleQuadratic({ start, control, end }: Extract<Curve, { kind: 'quadratic' }>, t: number): Sample {
  const s = 1 - t;
  return {
    x: s * s * start.x + 2 * s * t * control.x + t * t * end.x,
    y: s * s * start.y + 2 * s * t * control.y + t * t * end.y,
    dx: 2 * (s * (control.x - start.x) + t * (end.x - control.x)),
    dy: 2 * (s * (control.y - start.y) + t * (end.y - control.y)),
    ddx: 2 * (start.x - 2 * control.x + end.x),
    ddy: 2 * (start.y - 2 * control.y + end.y),
  };
}

function sampleArc({ centre, axisU, axisV, from, sweep }: Extract<Curve, { kind: 'arc' }>, t: number): Sample {
  const [cosine, sine] = [Math.cos(from + t * sweep), Math.sin(from + t * sweep)];
  const [outX, outY] = [axisU.x * cosine + axisV.x * sine, axisU.y * cosine + axisV.y * sine];
  const [alongX, alongY] = [axisV.x * cosine - axisU.x * sine, axisV.y * cosine - axisU.y * sine];
  return {
    x: centre.x + outX,
    y: centre.y + outY,
    dx: sweep * alongX,
    dy: sweep * alongY,
    ddx: -sweep * sweep * outX,
    ddy: -sweep * sweep * outY,
  };
}

export interface Sides {
  readonly left: Cubic;
  readonly right: Cubic;
}

/** Where between the ends the sides are compared with the true offsets. */
const CHECKED_PARAMETERS = [0.25, 0.5, 0.75] as const;

/**
 * The sides of the stretch from `t0` to `t1`, at `half` to both sides. Each is the cubic that has the true offset's
 * ends and derivatives there: the offset's derivative is that of the curve times 1 ∓ curvature · half.
 * Undefined where a side folds or strays by more than `tolerance` at the places looked at.
 */
export function offsetSides(
  curve: Bent,
  t0: number,
  t1: number,
  first: Sample,
  last: Sample,
  half: number,
  tolerance: number,
): Sides | undefined {
  const left = hermite(first, last, t1 - t0, -half);
  const right = hermite(first, last, t1 - t0, half);
  if (!left || !right) return undefined;
  for (const share of CHECKED_PARAMETERS) {
    const sample = sampleCurve(curve, t0 + share * (t1 - t0));
    if (!(innerSideFactor(sample, half) >= 0)) return undefined;
    if (deviates(left, share, sample, -half, tolerance)) return undefined;
    if (deviates(right, share, sample, half, tolerance)) return undefined;
  }
  return { left, right };
}

/** 1 − |curvature| · half: the share of its length that the inner side keeps; 0 or less where it folds. */
function innerSideFactor({ dx, dy, ddx, ddy }: Sample, half: number): number {
  const squared = dx * dx + dy * dy;
  const bend = Math.abs(dx * ddy - dy * ddx) / (squared * Math.sqrt(squared));
  return bend >= 0 ? 1 - bend * half : -1;
}

/** The point beside a sample at a distance to the right (y down) of the direction of travel. */
function offsetPoint({ x, y, dx, dy }: Sample, distance: number): Point {
  const speed = Math.sqrt(dx * dx + dy * dy);
  return { x: x - (distance * dy) / speed, y: y + (distance * dx) / speed };
}

function hermite(first: Sample, last: Sample, step: number, distance: number): Cubic | undefined {
  const [stretch0, stretch1] = [scaleFactorAt(first, distance), scaleFactorAt(last, distance)];
  if (!(stretch0 >= 0) || !(stretch1 >= 0)) return undefined;
  const start = offsetPoint(first, distance);
  const end = offsetPoint(last, distance);
  const [reach0, reach1] = [(step / 3) * stretch0, (step / 3) * stretch1];
  const control1 = { x: start.x + reach0 * first.dx, y: start.y + reach0 * first.dy };
  const control2 = { x: end.x - reach1 * last.dx, y: end.y - reach1 * last.dy };
  return { kind: 'cubic', start, control1, control2, end };
}

/** Signed: above 1 on the outer side of a bend. */
function scaleFactorAt({ dx, dy, ddx, ddy }: Sample, distance: number): number {
  const squared = dx * dx + dy * dy;
  return 1 - (distance * (dx * ddy - dy * ddx)) / (squared * Math.sqrt(squared));
}

function deviates(side: Cubic, share: number, sample: Sample, distance: number, tolerance: number): boolean {
  const { start, control1, control2, end } = side;
  const s = 1 - share;
  const [a, b, c, d] = [s * s * s, 3 * s * s * share, 3 * s * share * share, share * share * share];
  const x = a * start.x + b * control1.x + c * control2.x + d * end.x;
  const y = a * start.y + b * control1.y + c * control2.y + d * end.y;
  const wanted = offsetPoint(sample, distance);
  return !(Math.hypot(x - wanted.x, y - wanted.y) <= tolerance);
}
