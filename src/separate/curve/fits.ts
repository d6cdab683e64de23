/** The curves of all borders, each fitted once and drawn better where it would cross another. */

import Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { crossFrom } from '../../geometry/base/vector';
import { flattenCurve } from '../../geometry/curve/flatten';
import type { Arc } from '../map/planar-map';
import type { CornerRule } from './corners';
import { type Curves, fitArc, polyline } from './fit-arc';

/** How borders are drawn. Lengths in pixels. */
export interface FitRule {
  readonly tolerance: number;
  readonly corners: CornerRule | undefined;
}

/** So often the tolerance is halved before the points themselves are taken. */
const HALVINGS = 3;

/** Of the tolerance: how near curves are looked at for crossings. */
const LOOKED_AT = 0.1;

interface Fitted {
  readonly arc: Arc;
  readonly rule: FitRule;
  halved: number;
  curves: Curves;
  /** The curves as a chain of short edges. */
  flat: Float64Array;
}

/** Borders by what they cross: the same border of two maps is the same to the point. */
export class Fits {
  private readonly known = new Map<string, Fitted>();

  /** How many lines and curves there are in all. */
  get nodes(): number {
    let sum = 0;
    for (const { curves } of this.known.values()) sum += curves.length;
    return sum;
  }

  curvesOf(arc: Arc, rule: FitRule): Curves {
    return this.fitted(arc, rule).curves;
  }

  private fitted(arc: Arc, rule: FitRule): Fitted {
    const key = `${arc.from} ${arc.to} ${arc.edges[0]} ${arc.edges.at(-1)} ${arc.edges.length}`;
    const known = this.known.get(key);
    if (known) return known;
    const curves = fitArc(arc.points, arc.from < 0, rule.tolerance, rule.corners);
    const fitted: Fitted = { arc, rule, halved: 0, curves, flat: flattened(curves, LOOKED_AT * rule.tolerance) };
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
      const crossing = [...crossingOf(fits.map(({ flat }) => flat))].map((number) => defined(fits[number]));
      const open = crossing.filter(({ halved }) => halved <= HALVINGS);
      if (open.length === 0) return changed;
      open.forEach(drawBetter);
      changed = true;
    }
  }
}

function drawBetter(fitted: Fitted): void {
  const { arc, rule } = fitted;
  fitted.halved += 1;
  const tolerance = rule.tolerance / 2 ** fitted.halved;
  const last = fitted.halved > HALVINGS;
  // Corners that were put too far out are what crosses most.
  const corners = rule.corners && { ...rule.corners, farthest: rule.corners.farthest / 4 ** fitted.halved };
  fitted.curves = last ? polyline(arc.points) : fitArc(arc.points, arc.from < 0, tolerance, corners);
  fitted.flat = flattened(fitted.curves, LOOKED_AT * tolerance);
}

function flattened(curves: Curves, tolerance: number): Float64Array {
  const points: number[] = [];
  const [first] = curves;
  if (first) points.push(first.start.x, first.start.y);
  for (const curve of curves) flattenCurve(curve, tolerance, points);
  return Float64Array.from(points);
}

/** The numbers of the chains that cross another one, or themselves. Chains that only meet in an end do not cross. */
function crossingOf(chains: readonly Float64Array[]): Set<number> {
  const count = chains.reduce((sum, chain) => sum + Math.max(0, chain.length / 2 - 1), 0);
  const crossing = new Set<number>();
  if (count === 0) return crossing;
  const owner = new Int32Array(count);
  const start = new Int32Array(count);
  const index = new Flatbush(count);
  let edge = 0;
  chains.forEach((chain, number) => {
    for (let at = 0; at + 3 < chain.length; at += 2, edge += 1) {
      owner[edge] = number;
      start[edge] = at;
      const [x1, y1, x2, y2] = edgeAt(chain, at);
      index.add(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
    }
  });
  index.finish();
  for (let one = 0; one < count; one += 1) {
    checkpoint(40);
    const [x1, y1, x2, y2] = edgeAt(defined(chains[defined(owner[one])]), defined(start[one]));
    const [a, b] = [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ];
    const box = [Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2)] as const;
    index.search(...box, (other) => {
      if (other <= one) return false;
      const [x3, y3, x4, y4] = edgeAt(defined(chains[defined(owner[other])]), defined(start[other]));
      const [c, d] = [
        { x: x3, y: y3 },
        { x: x4, y: y4 },
      ];
      if (crossFrom(a, b, c) * crossFrom(a, b, d) < 0 && crossFrom(c, d, a) * crossFrom(c, d, b) < 0) {
        crossing.add(defined(owner[one]));
        crossing.add(defined(owner[other]));
      }
      return false;
    });
  }
  return crossing;
}

function edgeAt(chain: Float64Array, at: number): [number, number, number, number] {
  return [defined(chain[at]), defined(chain[at + 1]), defined(chain[at + 2]), defined(chain[at + 3])];
}
