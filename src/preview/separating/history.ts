/** What can be taken back and done again. Values are never changed, only replaced. */

const MOST = 200;

export class History<T> {
  private readonly before: T[] = [];
  private after: T[] = [];

  /** Notes how things were before a change. */
  push(value: T): void {
    this.before.push(value);
    if (this.before.length > MOST) this.before.shift();
    this.after = [];
  }

  undo(now: T): T | undefined {
    const value = this.before.pop();
    if (value !== undefined) this.after.push(now);
    return value;
  }

  redo(now: T): T | undefined {
    const value = this.after.pop();
    if (value !== undefined) this.before.push(now);
    return value;
  }
}
