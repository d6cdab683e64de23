/** From a place on the sheet back to the text: which command of which shape drew the edge there. */
import Flatbush from 'flatbush';
import type { Shape } from '../drawing/drawing';
import { nearestOn, roughBoundsOf, tangentAt } from '../geometry/curves';
import type { Curve, Point } from '../geometry/curve';
import { dot, normalise, subtract } from '../geometry/point';
import type { Span } from '../text';

/** A curve of a shape, or of what clips it. */
export interface Source {
  readonly shape: Shape;
  /** Which chain of the shape; undefined for an edge that a clip path made. */
  readonly subpath: number | undefined;
  readonly curve: Curve;
  readonly span: Span;
}

/** Edges lie within the flatness and the integer grid of their curves; clips and unions add a little. */
const REACH = 0.02;

/** Edges of curves that nothing but flattening and the grid has moved lie within this distance of them, in mm. */
const ON_CURVE = 0.0015;

/** Curves that meet within this distance in mm are told apart by their direction. */
const CORNER = 0.005;

/** Looks up the sources of boundary points. Build it once for a layer; building costs one pass over its curves. */
export class SourceIndex {
  readonly #sources: readonly Source[];
  readonly #index: Flatbush | undefined;

  constructor(shapes: readonly Shape[], outlines: boolean) {
    this.#sources = shapes.flatMap((shape) => sourcesOf(shape, outlines));
    if (this.#sources.length === 0) return;
    this.#index = new Flatbush(this.#sources.length);
    for (const { curve } of this.#sources) {
      const box = roughBoundsOf(curve);
      this.#index.add(box.minX, box.minY, box.maxX, box.maxY);
    }
    this.#index.finish();
  }

  /**
   * The source nearest to a point of sheet mm, within 20 µm of it, or one that lies on it; undefined where only the frame
   * made the edge.
   * @param facing where the edge is looked at from: at a corner, the side that runs square to that view is meant
   */
  at(point: Point, facing?: Point): Source | undefined {
    const { x, y } = point;
    let best: Source | undefined;
    let bestRank = REACH;
    for (const id of this.#index?.search(x - REACH, y - REACH, x + REACH, y + REACH) ?? []) {
      const source = this.#sources[id] as Source;
      const { distance, t } = nearestOn(source.curve, point);
      if (!facing && distance < ON_CURVE) return source;
      const rank = distance < REACH && facing ? distance + CORNER * alongView(source.curve, t, point, facing) : distance;
      if (rank < bestRank) [best, bestRank] = [source, rank];
    }
    return best;
  }
}

/** 0 where the curve runs square to the view, 1 where it runs along it. */
function alongView(curve: Curve, t: number, point: Point, facing: Point): number {
  const [tangent, view] = [tangentAt(curve, t), normalise(subtract(facing, point))];
  return view ? Math.abs(dot(tangent, view)) : 0;
}

function sourcesOf(shape: Shape, outlines: boolean): Source[] {
  const chains = outlines ? shape.centreline ?? [] : shape.subpaths;
  const own = chains.flatMap(({ curves, spans }, subpath) =>
    curves.map((curve, i) => ({ shape, subpath, curve, span: spans[i] ?? shape.element.startTag })));
  const clipping = shape.clips.flatMap((clip) => clip.parts).flatMap((part) => part.subpaths)
    .flatMap(({ curves, spans }) => curves.map((curve, i) => (
      { shape, subpath: undefined, curve, span: spans[i] ?? shape.element.startTag })));
  return [...own, ...clipping];
}
