/**
 * What a cutter is given: the lines of the artist's own file. It unites nothing, so that what two shapes have in common
 * is cut twice, whatever their areas come to.
 */
import type { Shape } from '../../drawing/types';
import type { Curve } from '../../geometry/base/curve-types';
import { defined } from '../../geometry/base/defined';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { findSharedIntervals, type SharedInterval } from '../../geometry/curve/coincident';
import { lengthOf } from '../../geometry/curve/index';
import type { ElementNode } from '../../markup/tree';
import type { Span } from '../../text/text';
import { isClosed, isHairline } from '../layer/reading';
import { sameCurves } from '../layer/same-area';
import type { Layer } from '../types';

/** One chain of curves that is cut in one go. Sheet mm. */
export interface CutLine {
  readonly shape: Shape;
  /** Its index among the shape's subpaths, or among those of its centreline. */
  readonly subpath: number;
  readonly curves: readonly Curve[];
  readonly spans: readonly Span[];
  /** Whether it ends where it begins. */
  readonly closed: boolean;
}

/** Two lines that run along each other, or one that runs along itself. */
export interface DoubledLine {
  readonly first: CutLine;
  readonly second: CutLine;
  readonly stretch: SharedInterval;
  /** Whether the second lies on the first from end to end. */
  readonly whole: boolean;
}

/** mm: what two lines share by less is a corner, or a touch. */
const MIN_LENGTH = 0.5;

/** mm by which a line may be longer than what it shares, and still lies on the other as a whole. */
const WHOLE = PLAINLY_BESIDE;

/**
 * The lines that a layer is cut along: outlines of what is filled, or the hairlines themselves. Strokes that are
 * painted in a width are no lines yet, and what a clip path leaves of a shape is in nobody's file: both are left out.
 */
export function cutLinesOf({ reading, shapes }: Layer): CutLine[] {
  const outlines = reading === 'outlines';
  const cut = shapes.filter(
    (shape) => (outlines ? isHairline(shape) : shape.part === 'fill') && shape.clips.every(({ box }) => box),
  );
  return cut.flatMap((shape) =>
    (outlines ? (shape.centreline ?? []) : shape.subpaths).map((chain, subpath) => ({
      shape,
      subpath,
      curves: chain.curves,
      spans: chain.spans,
      closed: isClosed(chain),
    })),
  );
}

/** The lines of a layer that would be cut twice. */
export function doubledLinesOf(layer: Layer): DoubledLine[] {
  const lines = withoutThirds(cutLinesOf(layer));
  return findSharedIntervals(
    lines.map(({ curves }) => curves),
    MIN_LENGTH,
  ).map((stretch) => {
    const [first, second] = [defined(lines[stretch.first]), defined(lines[stretch.second])];
    const whole = first !== second && lengthOfLine(second) - stretch.length < WHOLE;
    return { first, second, stretch, whole };
  });
}

/** What an element draws in one place more than twice, by `use` within `use`, need be told once. */
function withoutThirds(lines: readonly CutLine[]): CutLine[] {
  const seen = new Map<ElementNode, Map<string, CutLine[]>>();
  return lines.filter((line) => {
    const { element } = line.shape;
    const start = line.curves[0]?.start;
    const key = `${line.subpath} ${start?.x} ${start?.y}`;
    const known = seen.get(element) ?? new Map<string, CutLine[]>();
    seen.set(element, known);
    const twins = (known.get(key) ?? []).filter(({ curves }) => sameCurves(curves, line.curves));
    if (twins.length > 1) return false;
    known.set(key, [...(known.get(key) ?? []), line]);
    return true;
  });
}

/** mm */
export function lengthOfLine({ curves }: CutLine): number {
  return curves.reduce((sum, curve) => sum + lengthOf(curve), 0);
}
