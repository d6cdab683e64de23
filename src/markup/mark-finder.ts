/** Finds the next place of one mark. Asked from front to back it passes over the text once in all. */
export class MarkFinder {
  private searchedFrom = 0;
  private found = -1;

  private readonly text: string;
  private readonly mark: string;

  constructor(text: string, mark: string) {
    this.text = text;
    this.mark = mark;
  }

  /** The offset of the first mark at or after `from`; infinite if there is none. */
  next(from: number): number {
    if (from < this.searchedFrom || from > this.found) {
      const at = this.text.indexOf(this.mark, from);
      this.searchedFrom = from;
      this.found = at < 0 ? Infinity : at;
    }
    return this.found;
  }
}
