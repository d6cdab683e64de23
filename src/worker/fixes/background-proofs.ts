/** Proves ahead what somebody may ask for next: what is near to the caret first. */
import type { FixCandidate } from '../../engine/index';
import type { OfferFacts } from '../../protocol/offers';
import type { ReportedFinding } from '../../report/finding-id';
import type { DocumentFixes } from './document-fixes';

/** Milliseconds spent on one version of a document. */
const BUDGET = 5000;

export class BackgroundProofs {
  private spent = 0;

  private readonly fixes: DocumentFixes;
  private readonly caret: () => number | undefined;
  private readonly tell: (facts: OfferFacts) => void;

  /** @param tell is given what is found out, step by step */
  constructor(fixes: DocumentFixes, caret: () => number | undefined, tell: (facts: OfferFacts) => void) {
    this.fixes = fixes;
    this.caret = caret;
    this.tell = tell;
  }

  /**
   * Goes on where it was interrupted, until all is proven or the time for it is over.
   * @throws Stopped when whoever watches says so
   */
  run(): void {
    for (let next = this.next(); next && this.spent < BUDGET; next = this.next()) this.prove(next);
  }

  private prove({ id }: FixCandidate): void {
    const start = performance.now();
    try {
      this.fixes.prove(id);
    } finally {
      this.spent += performance.now() - start;
    }
    const { uri, version } = this.fixes.checked;
    this.tell({ uri, version, offers: [], proofs: this.fixes.proofs([id]) });
  }

  /** The first that is not known yet, nor another that is the same change. */
  private next(): FixCandidate | undefined {
    for (const finding of this.nearestFirst()) {
      const open = this.fixes.candidatesOf(finding).find((candidate) => !this.fixes.isKnownInGroup(candidate));
      if (open) return open;
    }
    return undefined;
  }

  private nearestFirst(): ReportedFinding[] {
    const { findings } = this.fixes.checked.report;
    const caret = this.caret();
    if (caret === undefined) return [...findings];
    const away = ({ span }: ReportedFinding) => Math.max(span.from - caret, caret - span.to, 0);
    return [...findings].sort((a, b) => away(a) - away(b));
  }
}
