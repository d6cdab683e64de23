/** Proves the fixes of reports within a stretch of time. */
import { type FixesOfFinding, fixesFor, type ReportedFinding, whyBeyondMending } from '../../engine/index';
import type { Report } from '../../report/report';

export class FixVerifier {
  /** How many findings were asked for when the time was over. */
  leftOut = 0;
  private spent = 0;
  private readonly budget: number;

  /** @param budget milliseconds: each proof checks the file anew, which hundreds of findings would draw out for hours */
  constructor(budget: number) {
    this.budget = budget;
  }

  fixesFor(report: Report, finding: ReportedFinding): FixesOfFinding | undefined {
    return this.within(() => fixesFor(report, finding));
  }

  /** Only the refusals, and only where no fix mends the finding. */
  whyBeyondMending(report: Report, finding: ReportedFinding): FixesOfFinding | undefined {
    return this.within(() => ({ fixes: [], refusals: whyBeyondMending(report, finding) }));
  }

  private within(prove: () => FixesOfFinding): FixesOfFinding | undefined {
    if (this.spent >= this.budget) {
      this.leftOut += 1;
      return undefined;
    }
    const start = performance.now();
    try {
      return prove();
    } finally {
      this.spent += performance.now() - start;
    }
  }
}
