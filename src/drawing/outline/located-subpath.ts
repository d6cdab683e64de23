/** Subpaths that work out where their curves stand in the text when asked: most readers want the curves alone. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve } from '../../geometry/base/curve-types';
import type { Attribute } from '../../markup/tree';
import type { Span } from '../../text/text';
import type { Subpath } from '../subpath';

/** A chain of curves in sheet mm, each with the place that it was read from. Places are in the attribute's value. */
export interface Trace {
  readonly curves: readonly Curve[];
  /** Begin and end of the place of each curve, one after the other; two alone hold for all curves. */
  readonly places: readonly number[];
  readonly closed: boolean;
}

/** Where the text that traces were read from stands in the document, as an attribute knows it. */
export type OutlineSource = Pick<Attribute, 'textOffset'>;

/** For places that are offsets in the document. */
export const IN_DOCUMENT: OutlineSource = { textOffset: (index) => index };

export function locate(traces: readonly Trace[], source: OutlineSource): readonly Subpath[] {
  return traces.map((trace) => new LocatedSubpath(trace, source));
}

class LocatedSubpath implements Subpath {
  readonly curves: readonly Curve[];
  readonly closed: boolean;
  private readonly places: readonly number[];
  private readonly source: OutlineSource;
  private knownSpans: readonly Span[] | undefined;

  constructor({ curves, places, closed }: Trace, source: OutlineSource) {
    this.curves = curves;
    this.closed = closed;
    this.places = places;
    this.source = source;
  }

  get spans(): readonly Span[] {
    return (this.knownSpans ??= this.curves.map((_, index) => this.spanAt(this.places.length === 2 ? 0 : 2 * index)));
  }

  private spanAt(at: number): Span {
    checkpoint(2);
    const [from, to] = [defined(this.places[at]), defined(this.places[at + 1])];
    return { from: this.source.textOffset(from), to: this.source.textOffset(to) };
  }
}
