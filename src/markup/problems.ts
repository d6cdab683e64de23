import type { MarkupProblem } from './tree';

const MAX_PROBLEMS = 200;

/** Gathers problems up to a bound, so that a file of another kind does not give a million of them. */
export class ProblemList {
  private readonly problems: MarkupProblem[] = [];

  fatal(message: string, from: number, to: number): void {
    this.add({ message, span: { from, to }, severity: 'fatal' });
  }

  recovered(message: string, from: number, to: number): void {
    this.add({ message, span: { from, to }, severity: 'recovered' });
  }

  /** Whether one more problem would be left out. */
  get full(): boolean {
    return this.problems.length > MAX_PROBLEMS;
  }

  private add(problem: MarkupProblem): void {
    if (this.full) return;
    if (this.problems.length < MAX_PROBLEMS) {
      this.problems.push(problem);
      return;
    }
    const message = `There are more than ${MAX_PROBLEMS} problems; the others are not listed.`;
    this.problems.push({ ...problem, message });
  }

  /** In the order of the text; what says that there are more stands last. */
  inOrder(): MarkupProblem[] {
    const listed = this.problems.slice(0, MAX_PROBLEMS).sort((a, b) => a.span.from - b.span.from);
    return [...listed, ...this.problems.slice(MAX_PROBLEMS)];
  }
}
