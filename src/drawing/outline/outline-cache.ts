/** Outlines with the text that they were read from, so that a later reading need not read the same text again. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Matrix } from '../../geometry/base/curve-types';
import { isSameMatrix } from '../../geometry/base/matrix';
import type { Span } from '../../text/text';
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

export interface CachedOutline extends TracedOutline {
  readonly kind: OutlineKind;
  readonly text: string;
  readonly toMm: Matrix;
}

export type Tracer = (text: string, builder: OutlineBuilder) => OutlineError | undefined;

/** How many outlines in a row a later state of the text may lack for those behind them still to be known. */
const MAX_MISSES = 64;

/**
 * Both readings want their outlines in the order of the text, and an edit changes few of them: so the next one known is
 * looked for a little way on from the last. Comparing texts there costs far less than a table of them would.
 */
export class OutlineCache {
  private readonly wanted: CachedOutline[] = [];
  private next = 0;

  private readonly earlier: readonly CachedOutline[];

  /** @param earlier what an earlier reading wanted, in its order */
  constructor(earlier: readonly CachedOutline[]) {
    this.earlier = earlier;
  }

  /**
   * The outline of `text` mapped by `toMm`.
   * @param trace reads the text for the builder, and gives the error in it
   */
  recall(kind: OutlineKind, text: string, toMm: Matrix, trace: Tracer): TracedOutline {
    const { traces, error } = this.known(kind, text, toMm) ?? traceOutline(text, toMm, trace);
    // The text is that of the present document: keeping an earlier one would keep all of its document.
    const outline = { kind, text, toMm, traces, error };
    this.wanted.push(outline);
    return outline;
  }

  /** What this reading wanted: for the next one. */
  get outlines(): readonly CachedOutline[] {
    return this.wanted;
  }

  private known(kind: OutlineKind, text: string, toMm: Matrix): CachedOutline | undefined {
    const { earlier, next } = this;
    checkpoint(8);
    for (let at = next; at < earlier.length && at < next + MAX_MISSES; at += 1) {
      const outline = defined(earlier[at]);
      if (outline.text !== text || outline.kind !== kind || !isSameMatrix(outline.toMm, toMm)) continue;
      this.next = at + 1;
      return outline;
    }
    return undefined;
  }
}

function traceOutline(text: string, toMm: Matrix, trace: Tracer): TracedOutline {
  const builder = new OutlineBuilder(toMm);
  const error = trace(text, builder);
  return { traces: builder.traces(), error };
}
