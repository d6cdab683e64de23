/** From a place on the sheet back to the text: which command of which shape drew the edge there. */
import type { Shape, Subpath } from '../drawing/drawing';
import { BoxesInRow, sidesOf } from '../geometry/boxes-in-row';
import { boxesOfChain } from '../geometry/chain-boxes';
import type { Curve, Point } from '../geometry/curve';
import { isQuicklyNear, nearestOn, tangentAt } from '../geometry/curves';
import { dot, normalise, subtract } from '../geometry/point';
import { remember } from '../geometry/remember';
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

/** The curves of a chain in a spatial index: a chain is met again after an edit. */
const curvesInRow = remember((curves: readonly Curve[]) => new BoxesInRow(sidesOf(boxesOfChain(curves).curves)));

/** Looks up the sources of boundary points. Build it once for a layer; building costs one pass over its chains. */
export class SourceIndex {
  readonly #chains: readonly OwnedChain[];
  readonly #boxes: BoxesInRow | undefined;

  constructor(shapes: readonly Shape[], outlines: boolean) {
    this.#chains = shapes.flatMap((shape) => chainsOf(shape, outlines)).filter(({ chain }) => chain.curves.length > 0);
    const boxes = this.#chains.map(({ chain }) => boxesOfChain(chain.curves).whole);
    this.#boxes = boxes.length > 0 ? new BoxesInRow(sidesOf(boxes)) : undefined;
  }

  /**
   * The source nearest to a point of sheet mm, within 20 µm of it, or one that lies on it; undefined where only the frame
   * made the edge.
   * @param facing where the edge is looked at from: at a corner, the side that runs square to that view is meant
   */
  at(point: Point, facing?: Point): Source | undefined {
    let best: Source | undefined;
    let bestRank = REACH;
    for (const number of this.#boxes ? foundNear(this.#boxes, point) : []) {
      const owner = this.#chains[number] as OwnedChain;
      for (const at of foundNear(curvesInRow(owner.chain.curves), point)) {
        const curve = owner.chain.curves[at] as Curve;
        if (!facing && isQuicklyNear(curve, point, ON_CURVE)) return sourceAt(owner, at);
        const { distance, t } = nearestOn(curve, point);
        if (!facing && distance < ON_CURVE) return sourceAt(owner, at);
        const rank = distance < REACH && facing ? distance + CORNER * alongView(curve, t, point, facing) : distance;
        if (rank < bestRank) [best, bestRank] = [sourceAt(owner, at), rank];
      }
    }
    return best;
  }
}

/** In the order of the text. */
function foundNear(boxes: BoxesInRow, { x, y }: Point): number[] {
  const found: number[] = [];
  boxes.search(x - REACH, y - REACH, x + REACH, y + REACH, (number) => {
    found.push(number);
    return false;
  });
  return found.length > 1 ? found.sort((a, b) => a - b) : found;
}

function sourceAt({ shape, subpath, chain }: OwnedChain, at: number): Source {
  return { shape, subpath, curve: chain.curves[at] as Curve, span: chain.spans[at] ?? shape.element.startTag };
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
