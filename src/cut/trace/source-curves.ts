/** The curves that drew a layer, to be found by the vertices of its flattened outlines. Sheet mm. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve, Line, Point } from '../../geometry/base/curve-types';
import { FLATTENING, ON_CURVE, OVERLAY_GRID } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import { flattenCurve } from '../../geometry/curve/flatten';
import { nearestOn, pointAt, roughBoundsOf } from '../../geometry/curve/index';
import { packBoxes, SequenceIndex } from '../../geometry/spatial/sequence-index';
import type { Layer } from '../../sheet/types';

/** A stretch of one of the curves, by its number; `to` is less than `from` where it runs against the curve. */
export interface CurveStretch {
  readonly curve: number;
  readonly from: number;
  readonly to: number;
}

/** Where a vertex lies on a curve. */
interface CurveVertex {
  readonly curve: number;
  readonly t: number;
  /** By how much t grows from one vertex to the next. */
  readonly step: number;
}

/** Keys of places on the grid: coordinates up to 3 km do not run into each other, and places are compared as well. */
const KEY_BASE = 2 ** 26;

/** How far apart an edge and its curve may be: both ends are rounded to the grid, and its curve was flattened. */
const REACH = ON_CURVE;

export class SourceCurves {
  private readonly curves: readonly Curve[];
  private readonly byPlace = new Map<number, CurveVertex[]>();
  private readonly boxes: SequenceIndex | undefined;

  constructor(curves: readonly Curve[]) {
    this.curves = curves;
    curves.forEach((curve, number) => this.addVertices(curve, number));
    this.boxes = curves.length > 0 ? new SequenceIndex(packBoxes(curves.map(roughBoundsOf))) : undefined;
  }

  curve(number: number): Curve {
    return defined(this.curves[number]);
  }

  /**
   * The stretch of a curve that an edge of a flattened outline stands for; undefined where no curve of the layer does, as
   * along the sheet's own frame.
   * @param preferred the curve that the edge before lies on: where several run together, it goes on
   */
  stretchOf(from: Point, to: Point, preferred: number | undefined): CurveStretch | undefined {
    const exact = this.chordsBetween(from, to);
    return exact.find(({ curve }) => curve === preferred) ?? exact[0] ?? this.searchStretch(from, to, preferred);
  }

  /** Where both ends are neighbouring vertices of a flattened curve. */
  private chordsBetween(from: Point, to: Point): CurveStretch[] {
    const ends = this.byPlace.get(keyOf(to));
    if (!ends) return [];
    const starts = this.byPlace.get(keyOf(from)) ?? [];
    return starts.flatMap(({ curve, t, step }) => {
      const end = ends.find((each) => each.curve === curve && each.t !== t && Math.abs(each.t - t) < 1.5 * step);
      return end && this.isAt(curve, t, from) && this.isAt(curve, end.t, to) ? [{ curve, from: t, to: end.t }] : [];
    });
  }

  private isAt(curve: number, t: number, point: Point): boolean {
    return distance(pointAt(this.curve(curve), t), point) < 2 * OVERLAY_GRID;
  }

  /** Where outlines meet, an edge is but a part of a chord. */
  private searchStretch(from: Point, to: Point, preferred: number | undefined): CurveStretch | undefined {
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const near = this.near(middle);
    const ordered = preferred !== undefined && near.includes(preferred) ? [preferred, ...near] : near;
    for (const number of ordered) {
      checkpoint(20);
      const stretch = this.stretchOn(number, from, middle, to);
      if (stretch) return stretch;
    }
    return undefined;
  }

  private stretchOn(number: number, from: Point, middle: Point, to: Point): CurveStretch | undefined {
    const curve = this.curve(number);
    const [start, half, end] = [from, middle, to].map((point) => nearestOn(curve, point)) as [Near, Near, Near];
    if (Math.max(start.distance, half.distance, end.distance) > REACH) return undefined;
    // A curve that ends where it begins has two parameters there: the one that suits the middle is meant.
    const seam = distance(curve.start, curve.end) < REACH;
    const isSeam = (t: number) => seam && (t < 1e-6 || t > 1 - 1e-6);
    const ways = [start.t, ...(isSeam(start.t) ? [0, 1] : [])].flatMap((a) =>
      [end.t, ...(isSeam(end.t) ? [0, 1] : [])].map((b) => ({ curve: number, from: a, to: b })),
    );
    const between = ({ from: a, to: b }: CurveStretch) => (half.t - a) * (b - half.t) > 0;
    return ways.filter(between).sort((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from))[0];
  }

  private near({ x, y }: Point): number[] {
    const found: number[] = [];
    this.boxes?.search(x - REACH, y - REACH, x + REACH, y + REACH, (number) => {
      found.push(number);
      return false;
    });
    return found.sort((a, b) => a - b);
  }

  private addVertices(curve: Curve, number: number): void {
    const ends: number[] = [];
    flattenCurve(curve, FLATTENING, ends);
    const step = 2 / ends.length;
    this.addVertex(curve.start, { curve: number, t: 0, step });
    for (let i = 0; i + 1 < ends.length; i += 2) {
      checkpoint();
      const t = i + 2 === ends.length ? 1 : (i / 2 + 1) * step;
      this.addVertex({ x: defined(ends[i]), y: defined(ends[i + 1]) }, { curve: number, t, step });
    }
  }

  private addVertex(point: Point, vertex: CurveVertex): void {
    const key = keyOf(point);
    const known = this.byPlace.get(key);
    if (known) known.push(vertex);
    else this.byPlace.set(key, [vertex]);
  }
}

type Near = ReturnType<typeof nearestOn>;

function keyOf({ x, y }: Point): number {
  return Math.round(x / OVERLAY_GRID) * KEY_BASE + Math.round(y / OVERLAY_GRID);
}

/** All that bounds what a layer fills: its outlines, or its cut lines, and the clips upon them. Open ones are closed. */
export function curvesOfLayer({ shapes, reading }: Layer): Curve[] {
  return shapes.flatMap((shape) => {
    const own = reading === 'outlines' ? (shape.centreline ?? []) : shape.subpaths;
    const clips = shape.clips.flatMap(({ parts }) => parts).flatMap(({ subpaths }) => subpaths);
    return [...own, ...clips].flatMap(({ curves }) => [...curves, ...closingLine(curves)]);
  });
}

function closingLine(curves: readonly Curve[]): Line[] {
  const [first, last] = [curves[0], curves.at(-1)];
  if (!first || !last || distance(first.start, last.end) < OVERLAY_GRID) return [];
  return [{ kind: 'line', start: last.end, end: first.start }];
}
