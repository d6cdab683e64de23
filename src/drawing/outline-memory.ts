/** Outlines by the text that they were read from, so that the same text is not read again: within a drawing or later. */
import type { Matrix } from '../geometry/curve';
import type { Span } from '../text';
import type { Trace } from './located-subpath';
import { OutlineBuilder } from './outline-builder';

export interface TracedOutline {
  readonly traces: readonly Trace[];
  /** Places are in the text that was read. */
  readonly error: OutlineError | undefined;
}

export interface OutlineError {
  readonly message: string;
  readonly span: Span;
}

export type OutlineKind = 'path' | 'polyline' | 'polygon';

/** Outlines of texts of one kind, each under the few maps to sheet mm that it was last wanted under. */
export type KnownOutlines = Readonly<Record<OutlineKind, ReadonlyMap<string, readonly MappedOutline[]>>>;

interface MappedOutline extends TracedOutline {
  readonly toMm: Matrix;
}

/** A `use` may want the same text under thousands of maps, none of them twice. */
const MOST_MAPS = 4;

export class OutlineMemory {
  private readonly known: Record<OutlineKind, Map<string, MappedOutline[]>> =
    { path: new Map(), polyline: new Map(), polygon: new Map() };
  private earlier: KnownOutlines | undefined;

  /** @param earlier what another reading knew */
  constructor(earlier: KnownOutlines | undefined) {
    this.earlier = earlier;
  }

  /**
   * The outline of `text` mapped by `toMm`.
   * @param trace reads the text for the builder, and gives the error in it
   */
  recall(
    kind: OutlineKind, text: string, toMm: Matrix, trace: (builder: OutlineBuilder) => OutlineError | undefined,
  ): TracedOutline {
    const outlines = this.known[kind].get(text);
    const known = outlines?.find((outline) => sameMap(outline.toMm, toMm));
    if (known) return known;
    const outline = this.earlier?.[kind].get(text)?.find((each) => sameMap(each.toMm, toMm)) ?? traced(toMm, trace);
    if (!outlines) this.known[kind].set(text, [outline]);
    else if (outlines.push(outline) > MOST_MAPS) outlines.shift();
    return outline;
  }

  /** What this reading wanted. What only earlier ones did is let go, so that a chain of readings does not grow. */
  finish(): KnownOutlines {
    this.earlier = undefined;
    return this.known;
  }
}

function traced(toMm: Matrix, trace: (builder: OutlineBuilder) => OutlineError | undefined): MappedOutline {
  const builder = new OutlineBuilder(toMm);
  const error = trace(builder);
  return { toMm, traces: builder.traces(), error };
}

function sameMap(a: Matrix, b: Matrix): boolean {
  return a === b || (a.a === b.a && a.b === b.b && a.c === b.c && a.d === b.d && a.e === b.e && a.f === b.f);
}
