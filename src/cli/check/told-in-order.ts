/** Files told of in the order in which they were named, each as soon as those before it are done. */
import type { Host } from '../host';
import type { CheckUnit } from './check-units';
import type { FileOutcome } from './file-check';
import type { FileResult, UnitResult } from './unit-check';

export class ToldInOrder {
  /** Of the files that could be checked, those told of so far. */
  readonly outcomes: FileOutcome[] = [];
  private readonly files: readonly string[];
  private readonly host: Host;
  private readonly tell: (outcome: FileOutcome) => void;
  private readonly done = new Map<string, FileResult>();
  private next = 0;

  /**
   * @param files all that will be done
   * @param host says what went wrong with a file, and what is to be said of it
   * @param tell is given each file that could be checked
   */
  constructor(files: readonly string[], host: Host, tell: (outcome: FileOutcome) => void) {
    this.files = files;
    this.host = host;
    this.tell = tell;
  }

  /** Takes what became of a unit's files, and tells of those that wait for nothing any more. */
  take(unit: CheckUnit, result: UnitResult): void {
    unit.files.forEach((file, i) => {
      const outcome = result.files[i];
      if (outcome) this.done.set(file, outcome);
    });
    for (let file = this.files[this.next]; file !== undefined; file = this.files[this.next]) {
      const outcome = this.done.get(file);
      if (!outcome) return;
      this.next += 1;
      this.done.delete(file);
      this.tellOf(outcome);
    }
  }

  private tellOf(result: FileResult): void {
    if ('failure' in result) return this.host.failWith(result.failure);
    for (const remark of result.remarks) this.host.say(remark);
    this.outcomes.push(result);
    this.tell(result);
  }
}
