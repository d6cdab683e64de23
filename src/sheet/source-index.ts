/** From a place on the sheet back to the text: which command of which shape drew the edge there. */
import type Flatbush from 'flatbush';
import type { Shape, Subpath } from '../drawing/drawing';
import { boxesOfChain } from '../geometry/chain-boxes';
import { isQuicklyNear, nearestOn, tangentAt } from '../geometry/curves';
import { indexBoxes } from '../geometry/clusters';
import type { Curve, Point } from '../geometry/curve';
import { dot, normalise, subtract } from '../geometry/point';
import type { Box } from '../geometry/region';
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

/** Curve number `at` of a chain. Its span is worked out when it is asked for: few are. */
class ChainSource implements Source {
  constructor(
    readonly shape: Shape, readonly subpath: number | undefined, private readonly chain: Subpath, private readonly at: number,
  ) {}

  get curve(): Curve {
    return this.chain.curves[this.at] as Curve;
  }

  get span(): Span {
    return this.chain.spans[this.at] ?? this.shape.element.startTag;
  }
}

/** Looks up the sources of boundary points. Build it once for a layer; building costs one pass over its curves. */
export class SourceIndex {
  readonly #sources: Source[] = [];
  readonly #index: Flatbush | undefined;

  constructor(shapes: readonly Shape[], outlines: boolean) {
    const boxes: Box[] = [];
    for (const { shape, subpath, chain } of shapes.flatMap((each) => chainsOf(each, outlines))) {
      boxesOfChain(chain.curves).curves.forEach((box, at) => {
        boxes.push(box);
        this.#sources.push(new ChainSource(shape, subpath, chain, at));
      });
    }
    this.#index = boxes.length > 0 ? indexBoxes(boxes) : undefined;
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
      if (!facing && isQuicklyNear(source.curve, point, ON_CURVE)) return source;
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

interface OwnedChain {
  readonly shape: Shape;
  readonly subpath: number | undefined;
  readonly chain: Subpath;
}

function chainsOf(shape: Shape, outlines: boolean): OwnedChain[] {
  const chains = outlines ? shape.centreline ?? [] : shape.subpaths;
  const clipping = shape.clips.flatMap(({ parts }) => parts).flatMap(({ subpaths }) => subpaths);
  return [
    ...chains.map((chain, subpath) => ({ shape, subpath, chain })),
    ...clipping.map((chain) => ({ shape, subpath: undefined, chain })),
  ];
}
