/** What the eye would have alike in a layer. All in sheet mm, as cut. */
import type { Matrix, Point } from '../../../geometry/base/curve-types';

export interface Design {
  /** Mirror axes of the whole layer or of parts of it, those that most islands lie under first. */
  readonly mirrors: readonly Mirror[];
  /** Islands with equal surroundings, two or more to a class. */
  readonly alike: readonly Likeness[];
  /** Words: counters in a row. */
  readonly rows: readonly LetterRow[];
  /** Islands that lie one in another. */
  readonly nests: readonly Nest[];
}

/** An axis about which islands and the gaps about them are mirrored. */
export interface Mirror {
  /** On the axis. */
  readonly point: Point;
  /** Of length 1, upwards on the screen, or to the right where it is level. */
  readonly along: Point;
  /** Whether the whole layer is mirrored about it. */
  readonly whole: boolean;
  /** For each island that has an image its number and that of the image: its own where it lies on the axis. */
  readonly images: ReadonlyMap<number, number>;
}

/** Islands that are equal with the gap about each. */
export interface Likeness {
  /** The first stands for all: its motion is the identity. */
  readonly members: readonly LikeIsland[];
}

export interface LikeIsland {
  /** Number of the piece. */
  readonly piece: number;
  /** From the first island of its class to this one: a turn and a shift, never a reflection. */
  readonly motion: Matrix;
}

/** Two or more islands, each of which lies alone in another. */
export interface Nest {
  /** Straight lines through all of them: for each island the way across on either side of it. */
  readonly lines: readonly (readonly Counter[])[];
}

/** Three or more counters side by side, or the counters of three or more letters that stand on one line. */
export interface LetterRow {
  /** The common direction of the stems: of length 1, upwards; exactly upright for upright faces. */
  readonly along: Point;
  /** In reading direction across `along`. */
  readonly counters: readonly Counter[];
}

/** An island of a letter or of a nest, and the line along the stems that its bridges best stand on. */
export interface Counter {
  /** Number of the piece. */
  readonly piece: number;
  /** On the line that the bridges stand on, inside the counter. */
  readonly at: Point;
  /** One above and one below, in this order, as far as there is room for either. */
  readonly places: readonly CounterPlace[];
}

/** A way across the stroke above or below a counter, along the stems. */
export interface CounterPlace {
  /** On the counter's edge. */
  readonly from: Point;
  /** On the edge beyond the stroke. */
  readonly to: Point;
  /** Number of the piece beyond. */
  readonly target: number;
}
