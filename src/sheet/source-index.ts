/** From a place on the sheet back to the text: which command of which shape drew the edge there. */

import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Reading } from '../config/types';
import type { Shape, Subpath } from '../drawing/types';
import type { Curve, Line, Point } from '../geometry/base/curve-types';
import { derivedFacts, memoizeByIdentity } from '../geometry/base/derived-facts';
import type { Box, Ring } from '../geometry/base/polygon-types';
import { boxOfRing } from '../geometry/base/ring';
import { MEANT_TO_MEET, NEAR_EDGE, ON_CURVE } from '../geometry/base/tolerances';
import { dot, normalise, subtract } from '../geometry/base/vector';
import { boxesOfChain } from '../geometry/curve/curve-table';
import { isPlainlyOff, isQuicklyNear, nearestOn, tangentAt } from '../geometry/curve/index';
import { packBoxes, SequenceIndex } from '../geometry/spatial/sequence-index';
import type { Span } from '../text/text';
import { curvesKey } from './layer/artwork-key';
import type { Sheet } from './types';

/** A curve of a shape, or of what clips it. */
export interface CurveSource {
  readonly shape: Shape;
  /** Which chain of the shape; undefined for an edge that a clip path made. */
  readonly subpath: number | undefined;
  readonly curve: Curve;
  readonly span: Span;
}

/** Edges lie within the flatness and the integer grid of their curves; clips and unions add a little. */
const REACH = NEAR_EDGE;

/** Curves that meet within this distance in mm are told apart by their direction. */
const CORNER = MEANT_TO_MEET;

/** So many edges of a ring are looked up at most: enough to name its contour, cheap on long ones. */
const SAMPLES = 32;

/** What it costs to look whether a curve passes a point at once, and to seek its nearest place. */
const STEPS_PER_LOOK = 10;
const STEPS_PER_SEARCH = 40;

/** The curves of a chain in a spatial index: a chain is met again after an edit. */
const boxesOfCurves = memoizeByIdentity(
  'index of a chain',
  (curves: readonly Curve[]) => new SequenceIndex(boxesOfChain(curves).sides),
);

/** Looks up the sources of boundary points. Build it once for a layer; building costs one pass over its chains. */
export class SourceIndex {
  private readonly chains: readonly OwnedChain[];
  private readonly boxes: SequenceIndex | undefined;

  constructor(shapes: readonly Shape[], outlines: boolean) {
    this.chains = withoutCopies(shapes.flatMap((shape) => chainsOf(shape, outlines)));
    const boxes = this.chains.map(({ chain }) => boxesOfChain(chain.curves).whole);
    this.boxes = boxes.length > 0 ? new SequenceIndex(packBoxes(boxes)) : undefined;
  }

  /**
   * The source nearest to a point of sheet mm, within 20 µm of it, or one that lies on it; undefined where only the
   * frame made the edge.
   * @param facing where the edge is looked at from: at a corner, the side that runs square to that view is meant
   */
  at(point: Point, facing?: Point): CurveSource | undefined {
    const place = this.placeAt(point, facing);
    return place && this.sourceAt(place);
  }

  /**
   * The sources of some of a ring's edges, evenly spread; what the chains near by answered before they answer again.
   */
  along(ring: Ring): CurveSource[] {
    const near = this.chainsIn(boxOfRing(ring));
    const before = sourcesAlong.find(ring)?.value;
    const isSame =
      before?.near.length === near.length && near.every((chain, i) => this.curvesOf(chain) === before.near[i]);
    const amongNear = ({ chain, at }: CurvePlace) => ({ chain: near.indexOf(chain), at });
    const places = isSame ? before.places : this.placesAlong(ring).map(amongNear);
    if (!isSame) sourcesAlong.set(ring, { near: near.map((chain) => this.curvesOf(chain)), places });
    return places.map(({ chain, at }) => this.sourceAt({ chain: defined(near[chain]), at }));
  }

  /** The curves whose boxes come within 20 µm of a point of sheet mm. */
  curvesNear(point: Point): Curve[] {
    const around = { minX: point.x, minY: point.y, maxX: point.x, maxY: point.y };
    return this.chainsIn(around).flatMap((chain) => {
      const curves = this.curvesOf(chain);
      return foundIn(boxesOfCurves(curves), around).map((at) => {
        checkpoint(STEPS_PER_SEARCH);
        return defined(curves[at]);
      });
    });
  }

  private placesAlong(ring: Ring): CurvePlace[] {
    const edges = ring.length / 2;
    const step = Math.max(1, Math.ceil(edges / SAMPLES));
    const places: CurvePlace[] = [];
    for (let i = 0; i < edges; i += step) {
      const next = (i + 1) % edges;
      const place = this.placeAt({
        x: (defined(ring[2 * i]) + defined(ring[2 * next])) / 2,
        y: (defined(ring[2 * i + 1]) + defined(ring[2 * next + 1])) / 2,
      });
      if (place) places.push(place);
    }
    return places;
  }

  private placeAt(point: Point, facing?: Point): CurvePlace | undefined {
    const around = { minX: point.x, minY: point.y, maxX: point.x, maxY: point.y };
    let best: CurvePlace | undefined;
    let bestRank = REACH;
    for (const chain of this.chainsIn(around)) {
      const curves = this.curvesOf(chain);
      for (const at of foundIn(boxesOfCurves(curves), around)) {
        checkpoint(STEPS_PER_LOOK);
        const curve = defined(curves[at]);
        if (curve.kind === 'line' && isBeside(curve, point, bestRank)) continue;
        if (!facing && isQuicklyNear(curve, point, ON_CURVE)) return { chain, at };
        checkpoint(STEPS_PER_SEARCH);
        if (isPlainlyOff(curve, point, bestRank)) continue;
        const { distance, t } = nearestOn(curve, point);
        if (!facing && distance < ON_CURVE) return { chain, at };
        const rank = distance < REACH && facing ? distance + CORNER * alongView(curve, t, point, facing) : distance;
        if (rank < bestRank) [best, bestRank] = [{ chain, at }, rank];
      }
    }
    return best;
  }

  private chainsIn(box: Box): number[] {
    return this.boxes ? foundIn(this.boxes, box) : [];
  }

  private curvesOf(chain: number): readonly Curve[] {
    return defined(this.chains[chain]).chain.curves;
  }

  private sourceAt({ chain: number, at }: CurvePlace): CurveSource {
    const { shape, subpath, chain } = defined(this.chains[number]);
    return { shape, subpath, curve: defined(chain.curves[at]), span: defined(chain.spans[at]) };
  }
}

const indexOfAreas = memoizeByIdentity(
  'sources of areas',
  (shapes: readonly Shape[]) => new SourceIndex(shapes, false),
);
const indexOfOutlines = memoizeByIdentity(
  'sources of outlines',
  (shapes: readonly Shape[]) => new SourceIndex(shapes, true),
);

/** The sources of a sheet's edges, built when a place is first asked for. */
export function sourcesOf({ layer }: Sheet): SourceIndex {
  return sourcesOfShapes(layer.shapes, layer.reading);
}

/** The same of shapes that are read so. */
export function sourcesOfShapes(shapes: readonly Shape[], reading: Reading): SourceIndex {
  return reading === 'outlines' ? indexOfOutlines(shapes) : indexOfAreas(shapes);
}

/** Which chain, and which curve of it. */
interface CurvePlace {
  readonly chain: number;
  readonly at: number;
}

/** By ring: the chains near it, and the places of its edges among those. */
const sourcesAlong = derivedFacts.table<Ring, { near: readonly (readonly Curve[])[]; places: readonly CurvePlace[] }>(
  'sources along a ring',
);

/** Whether the line passes the point by more than `reach` mm: the common case where lines are long. */
function isBeside({ start, end }: Line, { x, y }: Point, reach: number): boolean {
  const [dx, dy] = [end.x - start.x, end.y - start.y];
  const aside = dx * (y - start.y) - dy * (x - start.x);
  return aside * aside > SURELY * reach * reach * (dx * dx + dy * dy);
}

/** Squares differ by less from rounding. */
const SURELY = 1.0001;

/** Those within reach of the box, in the order of the text. */
function foundIn(boxes: SequenceIndex, { minX, minY, maxX, maxY }: Box): number[] {
  const found: number[] = [];
  boxes.search(minX - REACH, minY - REACH, maxX + REACH, maxY + REACH, (number) => {
    found.push(number);
    return false;
  });
  // To put them in order takes longer than to find them.
  checkpoint(3 * found.length);
  return found.length > 1 ? found.sort((a, b) => a - b) : found;
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

/** What is drawn again at the very place is never nearer than what was drawn there first. */
function withoutCopies(chains: readonly OwnedChain[]): OwnedChain[] {
  const known = new Set<number>();
  return chains.filter(({ chain: { curves } }) => {
    checkpoint(10);
    const key = curvesKey(curves);
    if (curves.length === 0 || known.has(key)) return false;
    known.add(key);
    return true;
  });
}

function chainsOf(shape: Shape, outlines: boolean): OwnedChain[] {
  const chains = outlines ? (shape.centreline ?? []) : shape.subpaths;
  const clipping = shape.clips.flatMap(({ parts }) => parts).flatMap(({ subpaths }) => subpaths);
  return [
    ...chains.map((chain, subpath) => ({ shape, subpath, chain })),
    ...clipping.map((chain) => ({ shape, subpath: undefined, chain })),
  ];
}
