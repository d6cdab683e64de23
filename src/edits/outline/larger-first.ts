/** Which of two outlines of different colours the united one is to be drawn as. */

import { signedArea } from '../../geometry/base/ring';
import type { CutLine, DoubledLine } from '../../sheet/cut-lines/index';
import { ringOfCurves } from '../../sheet/layer/shape-region';

/**
 * The same two outlines, the larger one first where their colours differ: most of what both paint then keeps its colour, even
 * where the other is too fine to count as a colour of the sheet.
 */
export function largerFirst(doubled: DoubledLine): DoubledLine {
  const { first, second } = doubled;
  const isKept = colourOf(first) === colourOf(second) || areaOf(first) >= areaOf(second);
  return isKept ? doubled : { ...doubled, first: second, second: first, stretch: mirrored(doubled.stretch) };
}

function colourOf({ shape: { paint } }: CutLine): string {
  return paint.kind === 'none' ? paint.kind : paint.colour;
}

/** mm². */
function areaOf({ curves }: CutLine): number {
  return Math.abs(signedArea(ringOfCurves(curves)));
}

/** As it is met along the second outline. */
function mirrored(stretch: DoubledLine['stretch']): DoubledLine['stretch'] {
  const pieces = stretch.pieces.map((piece) => {
    const { curve, from, to, otherCurve, otherFrom, otherTo } = piece;
    const [own, other] = [
      [otherFrom, otherTo],
      [from, to],
    ].map((ends) => (stretch.reversed ? ends.toReversed() : ends)) as [[number, number], [number, number]];
    return {
      ...piece,
      curve: otherCurve,
      from: own[0],
      to: own[1],
      otherCurve: curve,
      otherFrom: other[0],
      otherTo: other[1],
    };
  });
  return { ...stretch, pieces: stretch.reversed ? pieces.toReversed() : pieces };
}
