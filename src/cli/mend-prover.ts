/** Proves the fixes of one report within a stretch of time. */
import { type FixesOfFinding, fixesFor } from '../engine/index';
import type { ReportedFinding } from '../report/finding-id';
import type { Report } from '../report/report';

/** Milliseconds for one file. Each proof checks the file anew, which hundreds of findings would draw out for hours. */
const BUDGET = 60_000;

export class FixVerifier {
  /** How many findings were asked for when the time was over. */
  leftOut = 0;
  private spent = 0;

  private readonly report: Report;
  private readonly budget: number;

  constructor(report: Report, budget = BUDGET) {
    this.report = report;
    this.budget = budget;
  }

  fixesFor(finding: ReportedFinding): FixesOfFinding | undefined {
    if (this.spent >= this.budget) {
      this.leftOut += 1;
      return undefined;
    }
    const start = performance.now();
    try {
      return fixesFor(this.report, finding);
    } finally {
      this.spent += performance.now() - start;
    }
  }
}
