/** Collects what the reader could not take, each thing once. */
import type { Span } from '../text/text';
import type { Wording } from '../text/wording';
import type { DrawingProblem } from './types';

/** Beyond this many, problems of one kind are counted but not kept. */
const MAX_OF_A_KIND = 1000;

export class Problems {
  readonly list: DrawingProblem[] = [];
  private readonly seen = new Set<string>();
  private readonly counts = new Map<string, number>();

  /** A second problem with the same span and message is the first one met again (through a `use`, say). */
  add(check: DrawingProblem['check'], severity: DrawingProblem['severity'], wording: Wording, span: Span): void {
    const count = this.counts.get(check) ?? 0;
    const key = `${span.from}:${span.to}:${wording.message}`;
    if (count >= MAX_OF_A_KIND || this.seen.has(key)) return;
    this.seen.add(key);
    this.counts.set(check, count + 1);
    this.list.push({ check, severity, ...wording, span });
  }
}
