/** The curves of all borders, each fitted once and drawn better where it would cross another. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { flattenCurve } from '../../geometry/curve/flatten';
import type { Arc } from '../map/planar-map';
import type { CornerRule } from './corners';
import { crossingOf } from './crossing';
import { type Curves, fitArc, polyline } from './fit-arc';
import { longestCubics, type Piece, type Seam } from './longest-cubics';

/** How borders are drawn. Lengths in pixels. */
export interface FitRule {
  readonly tolerance: number;
  readonly corners: CornerRule | undefined;
}

/** So often the tolerance of a curve is halved before the points themselves are taken. */
const HALVINGS = 3;

/** Relaxed so often, a border has no corners that are not its own points; */
const RELAXED = 4;
/** so often, it is nothing but its points. */
const ALL_POINTS = 5;

/** Of the tolerance: how near curves are looked at for crossings. */
const LOOKED_AT = 0.1;

interface Part {
  readonly piece: Piece;
  /** How often its tolerance was halved; once more, and it is its own points. */
  readonly halved: number;
  /** The curve as a chain of short edges. */
  readonly flat: Float64Array;
}

interface Fitted {
  readonly arc: Arc;
  readonly rule: FitRule;
  /** How often its corners were drawn nearer to the border. */
  relaxed: number;
  parts: readonly Part[];
}

/** Borders by what they cross: the same border of two maps is the same to the point. */
export class Fits {
  private readonly known = new Map<string, Fitted>();

  /** How many lines and curves there are in all. */
  get nodes(): number {
    let sum = 0;
    for (const { parts } of this.known.values()) sum += parts.length;
    return sum;
  }

  curvesOf(arc: Arc, rule: FitRule): Curves {
    return this.fitted(arc, rule).parts.map(({ piece }) => piece.curve);
  }

  private fitted(arc: Arc, rule: FitRule): Fitted {
    const key = `${arc.from} ${arc.to} ${arc.edges[0]} ${arc.edges.at(-1)} ${arc.edges.length}`;
    const known = this.known.get(key);
    if (known) return known;
    const fitted: Fitted = { arc, rule, relaxed: 0, parts: [] };
    fit(fitted);
    this.known.set(key, fitted);
    return fitted;
  }

  /**
   * Draws borders better until none of them cross. The points of a map never cross.
   * @returns whether anything was drawn anew
   */
  part(arcs: readonly Arc[], ruleOf: (arc: Arc) => FitRule): boolean {
    const fits = arcs.map((arc) => this.fitted(arc, ruleOf(arc)));
    let changed = false;
    for (;;) {
      const parts = fits.flatMap((fitted) => fitted.parts.map((part) => ({ fitted, part })));
      const crossing = new Map<Fitted, Set<Part>>();
      for (const number of crossingOf(parts.map(({ part }) => part.flat))) {
        const { fitted, part } = defined(parts[number]);
        if (fitted.relaxed < ALL_POINTS) crossing.set(fitted, (crossing.get(fitted) ?? new Set()).add(part));
      }
      if (crossing.size === 0) return changed;
      crossing.forEach(drawBetter);
      changed = true;
    }
  }
}

/** Corners that were put too far out are what crosses most; else only what crosses is drawn better. */
function drawBetter(parts: ReadonlySet<Part>, fitted: Fitted): void {
  if ([...parts].some(({ piece }) => piece.isSharpened)) {
    fitted.relaxed += 1;
    fit(fitted);
  } else if ([...parts].some(({ halved }) => halved > HALVINGS)) {
    fitted.relaxed = ALL_POINTS;
    fit(fitted);
  } else {
    fitted.parts = fitted.parts.flatMap((part) => (parts.has(part) ? halved(part, fitted.rule.tolerance) : [part]));
  }
}

function fit(fitted: Fitted): void {
  const { arc, rule, relaxed } = fitted;
  const farthest = relaxed < RELAXED ? (rule.corners?.farthest ?? 0) / 4 ** relaxed : 0;
  const corners = rule.corners && { ...rule.corners, farthest };
  const pieces =
    relaxed === ALL_POINTS ? polyline(arc.points) : fitArc(arc.points, arc.from < 0, rule.tolerance, corners);
  fitted.parts = pieces.map((piece) => partOf(piece, 0, rule.tolerance));
}

function halved({ piece, halved: before }: Part, whole: number): Part[] {
  const times = before + 1;
  const tolerance = whole / 2 ** times;
  if (times > HALVINGS) return polyline(piece.chain).map((each) => partOf(each, times, tolerance));
  // What is not smooth any more after a second time is so little that nobody sees it.
  const seam = times === 1 ? tangentsOf(piece) : undefined;
  return longestCubics(piece.chain, tolerance, seam).map((each) => partOf(each, times, tolerance));
}

function partOf(piece: Piece, times: number, tolerance: number): Part {
  const { curve } = piece;
  const points = [curve.start.x, curve.start.y];
  flattenCurve(curve, LOOKED_AT * tolerance, points);
  return { piece, halved: times, flat: Float64Array.from(points) };
}

function tangentsOf({ curve }: Piece): Seam | undefined {
  if (curve.kind === 'line') return undefined;
  const { start, control1, control2, end } = curve;
  return { start: direction(start, control1), end: direction(end, control2) };
}

function direction(from: Point, to: Point): Point | undefined {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : undefined;
}
