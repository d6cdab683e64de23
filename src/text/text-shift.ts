/** How places of a text move when it is edited, known only from the text before and after. */
import type { Span } from './text';

/** All that two texts do not have in common at their ends counts as one edit. Offsets are UTF-16 code units. */
export class TextShift {
  private readonly start: number;
  /** Length of what both have in common at the end. */
  private readonly tail: number;

  private readonly before: string;
  private readonly after: string;

  constructor(before: string, after: string) {
    this.before = before;
    this.after = after;
    const most = Math.min(before.length, after.length);
    let start = 0;
    while (start < most && before.charCodeAt(start) === after.charCodeAt(start)) start += 1;
    let tail = 0;
    const [last, lastAfter] = [before.length - 1, after.length - 1];
    while (tail < most - start && before.charCodeAt(last - tail) === after.charCodeAt(lastAfter - tail)) tail += 1;
    [this.start, this.tail] = [start, tail];
  }

  /** Where the character at a place of the text before is in the text after; the end of the edit if it was replaced. */
  forward(offset: number): number {
    return shifted(offset, this.start, this.before.length - this.tail, this.after.length - this.tail);
  }

  /** Where a place of the text after was in the text before. */
  back(offset: number): number {
    return shifted(offset, this.start, this.after.length - this.tail, this.before.length - this.tail);
  }

  /** What was put in at either end of a stretch is no part of it. */
  forwardSpan({ from, to }: Span): Span {
    const start = this.forward(from);
    return { from: start, to: Math.max(start, to <= this.start ? to : this.forward(to)) };
  }
}

/** @param end of the edited stretch, and where that is on the other side */
function shifted(offset: number, start: number, end: number, other: number): number {
  if (offset >= end) return offset - end + other;
  return offset < start ? offset : other;
}
