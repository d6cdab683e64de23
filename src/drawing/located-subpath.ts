/** Subpaths that work out where their curves stand in the text when asked: most readers want the curves alone. */
import type { Curve } from '../geometry/curve';
import type { Span } from '../text';
import type { Subpath } from './drawing';

/** A chain of curves in sheet mm, each with the place that it was read from. Places are in the attribute's value. */
export interface Trace {
  readonly curves: readonly Curve[];
  /** Begin and end of the place of each curve, one after the other; two alone hold for all curves. */
  readonly places: readonly number[];
  readonly closed: boolean;
}

/** @param textOffset the offset in the document for one in the attribute's value */
export function locate(traces: readonly Trace[], textOffset: (index: number) => number): readonly Subpath[] {
  return traces.map((trace) => new LocatedSubpath(trace, textOffset));
}

class LocatedSubpath implements Subpath {
  readonly curves: readonly Curve[];
  readonly closed: boolean;
  readonly #places: readonly number[];
  readonly #textOffset: (index: number) => number;
  #spans: readonly Span[] | undefined;

  constructor({ curves, places, closed }: Trace, textOffset: (index: number) => number) {
    this.curves = curves;
    this.closed = closed;
    this.#places = places;
    this.#textOffset = textOffset;
  }

  get spans(): readonly Span[] {
    return (this.#spans ??= this.curves.map((_, index) => this.#spanAt(this.#places.length === 2 ? 0 : 2 * index)));
  }

  #spanAt(at: number): Span {
    return { from: this.#textOffset(this.#places[at] ?? 0), to: this.#textOffset(this.#places[at + 1] ?? 0) };
  }
}
