/**
 * Plane curves in millimetres, y down. A curve carries its own start, so that it can be looked at alone.
 * Elliptical arcs are kept as the affine image of a circular arc: any affine map of one is another.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly kind: 'line';
  readonly start: Point;
  readonly end: Point;
}

export interface Quadratic {
  readonly kind: 'quadratic';
  readonly start: Point;
  readonly control: Point;
  readonly end: Point;
}

export interface Cubic {
  readonly kind: 'cubic';
  readonly start: Point;
  readonly control1: Point;
  readonly control2: Point;
  readonly end: Point;
}

/** centre + axisU·cos θ + axisV·sin θ, for θ from `from` to `from + sweep` (radians, of either sign). */
export interface Arc {
  readonly kind: 'arc';
  readonly start: Point;
  readonly end: Point;
  readonly centre: Point;
  readonly axisU: Point;
  readonly axisV: Point;
  readonly from: number;
  readonly sweep: number;
}

export type Curve = Line | Quadratic | Cubic | Arc;

/** x' = a·x + c·y + e, y' = b·x + d·y + f: the letters of CSS `matrix(a, b, c, d, e, f)`. */
export interface Matrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}
