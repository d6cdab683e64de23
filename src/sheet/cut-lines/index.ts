/**
 * What a cutter is given: the lines of the artist's own file. It unites nothing, so that what two shapes have in common
 * is cut twice, whatever their areas come to.
 */

import { defined } from '../../base/defined';
import type { Shape, Subpath } from '../../drawing/types';
import type { Curve } from '../../geometry/base/curve-types';
import { memoizeByIdentity } from '../../geometry/base/derived-facts';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import { findSharedIntervals } from '../../geometry/curve/coincident';
import { lengthOf } from '../../geometry/curve/index';
import { signedAreaOf } from '../../geometry/curve/measure';
import type { SharedInterval } from '../../geometry/curve/shared-intervals';
import type { Span } from '../../text/text';
import { isClosed, isHairline } from '../layer/reading';
import type { Layer } from '../types';
import { partRepeats } from './repeats';

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
  readonly stretch: Pick<SharedInterval, 'reversed' | 'pieces' | 'length'>;
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
      ...(outlines ? { curves: chain.curves, spans: chain.spans } : filledOutline(chain)),
      closed: isClosed(chain),
    })),
  );
}

/** What is filled goes straight back to where it begins: nobody writes that line, and yet it is cut. */
function filledOutline({ curves, spans }: Subpath): Pick<CutLine, 'curves' | 'spans'> {
  const [first, last, span] = [curves[0], curves.at(-1), spans.at(-1)];
  if (!first || !last || !span || distance(last.end, first.start) < PLAINLY_BESIDE) return { curves, spans };
  const closed: Curve[] = [...curves, { kind: 'line', start: last.end, end: first.start }];
  // A line that encloses nothing is filled with nothing.
  if (
    Math.abs(closed.reduce((sum, curve) => sum + signedAreaOf(curve), 0)) <
    PLAINLY_BESIDE * distance(last.end, first.start)
  )
    return { curves, spans };
  return { curves: closed, spans: [...spans, span] };
}

/** The lines of a layer that would be cut twice, in the order of the second ones. */
export function doubledLinesOf(layer: Layer): DoubledLine[] {
  const all = cutLinesOf(layer);
  const { lines, repeats } = partRepeats(all);
  const shared = findSharedIntervals(
    lines.map(({ curves }) => curves),
    MIN_LENGTH,
  ).map((stretch) => {
    const [first, second] = [defined(lines[stretch.first]), defined(lines[stretch.second])];
    const whole = first !== second && lengthOfLine(second) - stretch.length < WHOLE;
    return { first, second, stretch, whole };
  });
  const place = new Map(all.map((line, i) => [line, i]));
  return [...shared, ...repeats.flatMap(repeated)].sort((a, b) => place.get(a.second)! - place.get(b.second)!);
}

function repeated({ first, second }: Pick<DoubledLine, 'first' | 'second'>): DoubledLine[] {
  const length = lengthOfLine(second);
  if (length < MIN_LENGTH) return [];
  const pieces = second.curves.map((_, i) => ({ curve: i, from: 0, to: 1, otherCurve: i, otherFrom: 0, otherTo: 1 }));
  return [{ first, second, stretch: { reversed: false, pieces, length }, whole: true }];
}

/** mm */
function lengthOfLine({ curves }: CutLine): number {
  return lengthOfChain(curves);
}

/** A line that runs along many others is asked for each of them. */
const lengthOfChain = memoizeByIdentity('length of a chain', (curves: readonly Curve[]) =>
  curves.reduce((sum, curve) => sum + lengthOf(curve), 0),
);
