/** Dash patterns laid along lines. Dashes are exact parts of the curves, each stroked as any other line. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { pointAt, subCurve, tangentAt } from '../../geometry/curve/index';
import type { Span } from '../../text/text';
import type { DashInterval } from '../types';
import { ArcLength } from './arc-length';

export interface DashPattern {
  /** Dash, gap, dash, gap, … in pen units: an even count, with a sum above zero. */
  readonly lengths: readonly number[];
  /** Where in the pattern the line begins, pen units. */
  readonly offset: number;
}

/** A line to be stroked, in pen units. `spans[i]` is the text that gave `curves[i]`. */
export interface PenLine {
  readonly curves: readonly Curve[];
  readonly spans: readonly Span[];
  readonly closed: boolean;
  /** Where a line without length stands, and which way it points; only caps can show it. */
  readonly spot?: Dot;
  /** For a dash: which part of the line it is. */
  readonly stretches?: readonly DashInterval[];
}

export interface Dot {
  readonly at: Point;
  readonly direction: Point;
  readonly span: Span;
}

/** A line with the lengths along its curves. */
export interface MeasuredLine {
  readonly line: PenLine;
  readonly measures: readonly ArcLength[];
  readonly length: number;
}

/** @param tolerance by how much the ends of dashes may be off, pen units */
export function measureLine(line: PenLine, tolerance: number): MeasuredLine {
  const measures = line.curves.map((curve) => new ArcLength(curve, tolerance));
  return { line, measures, length: measures.reduce((sum, { length }) => sum + length, 0) };
}

/** How many dashes and gaps a line will be cut into, at most. */
export function dashCount({ length }: MeasuredLine, { lengths }: DashPattern): number {
  const period = lengths.reduce((sum, value) => sum + value, 0);
  return (length / period + 2) * lengths.length;
}

/**
 * The dashes of a line, each a line of its own. On a closed one a dash that runs over its start is one dash, as
 * renderers draw it.
 */
export function dashLine({ line, measures, length }: MeasuredLine, pattern: DashPattern): readonly PenLine[] {
  if (!(length > 0)) return [{ ...line, stretches: line.curves.map((_, curve) => ({ curve, from: 0, to: 1 })) }];
  const walker = new DashWalker(pattern);
  const startsOn = walker.drawing;
  line.curves.forEach((curve, index) => {
    const [measure, span] = [measures[index], line.spans[index]];
    if (measure && span) walker.walk({ curve, span, index }, measure);
  });
  const endsOn = walker.drawing;
  const dashes = walker.finish();
  const [first, last] = [dashes[0], dashes.at(-1)];
  if (!line.closed || !startsOn || !endsOn || dashes.length < 2 || !first || !last) return dashes;
  return [...dashes.slice(1, -1), joinDashes(last, first)];
}

function joinDashes(first: PenLine, second: PenLine): PenLine {
  return {
    curves: [...first.curves, ...second.curves],
    spans: [...first.spans, ...second.spans],
    closed: false,
    stretches: [...(first.stretches ?? []), ...(second.stretches ?? [])],
  };
}

/** A dash of no length is not past at its own start: with round or square caps it is a dot. */
function isBeyond(into: number, dash: number): boolean {
  return dash > 0 ? into >= dash : into > 0;
}

/** One curve of a line, and its number there. */
interface NumberedCurve {
  readonly curve: Curve;
  readonly span: Span;
  readonly index: number;
}

class DashWalker {
  private readonly lengths: readonly number[];
  private readonly dashes: PenLine[] = [];
  private index = 0;
  private left: number;
  private curves: Curve[] = [];
  private spans: Span[] = [];
  private stretches: DashInterval[] = [];

  constructor({ lengths, offset }: DashPattern) {
    this.lengths = lengths;
    const period = lengths.reduce((sum, value) => sum + value, 0);
    let into = ((offset % period) + period) % period;
    while (this.index < lengths.length - 1 && isBeyond(into, defined(lengths[this.index]))) {
      into -= defined(lengths[this.index]);
      this.index += 1;
    }
    this.left = Math.max(0, defined(lengths[this.index]) - into);
  }

  get drawing(): boolean {
    return this.index % 2 === 0;
  }

  walk(along: NumberedCurve, measure: ArcLength): void {
    let done = 0;
    let from = 0;
    while (measure.length - done > this.left) {
      checkpoint(100);
      done += this.left;
      const to = measure.parameterAt(done);
      if (this.drawing) {
        this.take(along, from, to);
        this.finishDash(along, to);
      }
      from = to;
      this.index = (this.index + 1) % this.lengths.length;
      this.left = defined(this.lengths[this.index]);
    }
    if (this.drawing) this.take(along, from, 1);
    this.left -= measure.length - done;
  }

  finish(): readonly PenLine[] {
    if (this.curves.length > 0) this.dashes.push(this.dash());
    return this.dashes;
  }

  private take({ curve, span, index }: NumberedCurve, from: number, to: number): void {
    if (!(to > from)) return;
    this.curves.push(from === 0 && to === 1 ? curve : subCurve(curve, from, to));
    this.spans.push(span);
    this.stretches.push({ curve: index, from, to });
  }

  private finishDash({ curve, span, index }: NumberedCurve, t: number): void {
    const spot = { at: pointAt(curve, t), direction: tangentAt(curve, t), span };
    const dot = { curves: [], spans: [], closed: false, spot, stretches: [{ curve: index, from: t, to: t }] };
    this.dashes.push(this.curves.length > 0 ? this.dash() : dot);
    [this.curves, this.spans, this.stretches] = [[], [], []];
  }

  private dash(): PenLine {
    return { curves: this.curves, spans: this.spans, closed: false, stretches: this.stretches };
  }
}
