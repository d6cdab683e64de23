/** What is offered for the findings of one checked document, and what has been proven of it so far. */
import {
  BRIDGE_ISLAND_HERE,
  bridgeAtCaret,
  candidatesFor,
  edgeAtCaret,
  type Fix,
  type FixCandidate,
  offerOrder,
  proveFix,
  sharedChange,
} from '../../engine/index';
import {
  ANYWAY,
  type DocumentEdits,
  type Offer,
  type OfferFacts,
  type Proof,
  type ProvenFix,
} from '../../protocol/offers';
import type { FindingId, ReportedFinding } from '../../report/finding-id';
import { isRefusal, type Result, refuse } from '../../report/refusal';
import type { TextEdit } from '../../text/text';
import type { CheckedDocument } from '../documents/checked-document';
import { type Refactor, refactorsAt } from './refactors';

/** UTF-16 code units: longer edits are not told before somebody asks for them. */
const SHORT_EDITS = 4000;

const NO_EDGE_HERE = 'The text at the caret draws no edge of this island.';

/** What the engine says of an offer, and all edits that belong to it. */
type Outcome = Result<Fix> | undefined;

export class DocumentFixes {
  private readonly candidates = new Map<FindingId, readonly FixCandidate[]>();
  private readonly outcomes = new Map<string, Outcome>();
  private readonly knownGroups = new Set<string>();
  private readonly refactors = new Map<string, Refactor>();

  readonly checked: CheckedDocument;

  constructor(checked: CheckedDocument) {
    this.checked = checked;
  }

  /** Cheap for a finding, and remembered. */
  candidatesOf(finding: ReportedFinding): readonly FixCandidate[] {
    const known = this.candidates.get(finding.id) ?? candidatesFor(this.checked.report, finding);
    this.candidates.set(finding.id, known);
    return known;
  }

  /** All offers, and what is known of them. */
  facts(): OfferFacts {
    const { uri, version, report } = this.checked;
    const offers = report.findings.flatMap((finding) => this.offersOf(finding));
    return { uri, version, offers, proofs: this.proofs(offers.map(({ id }) => id)) };
  }

  /** What is known of these offers. Long edits are left out: they are asked for. */
  proofs(ids: readonly string[]): Proof[] {
    return ids.filter((id) => this.outcomes.has(id)).map((id) => this.proofOf(id, SHORT_EDITS));
  }

  private offersOf(finding: ReportedFinding): Offer[] {
    const offers = this.candidatesOf(finding).map((candidate) => this.offerOf(candidate));
    if (finding.subject?.kind !== 'island') return offers;
    const id = `${finding.id}!${BRIDGE_ISLAND_HERE.kind}`;
    const here = {
      ...BRIDGE_ISLAND_HERE,
      id,
      group: id,
      finding: finding.id,
      order: 0,
      preferred: false,
      atCaret: true,
    };
    return [...offers, here];
  }

  private offerOf(candidate: FixCandidate): Offer {
    const { id, finding, kind, title, scope, preferred, safe, spare } = candidate;
    return {
      id,
      finding,
      kind,
      title,
      scope,
      preferred,
      safe,
      ...(spare && { spare }),
      order: offerOrder(candidate),
      group: groupOf(candidate),
    };
  }

  /** Whether it is known what becomes of an offer, or of one that is the same change. */
  isKnownInGroup(candidate: FixCandidate): boolean {
    return this.outcomes.has(candidate.id) || this.knownGroups.has(groupOf(candidate));
  }

  /**
   * Proves an offer, unless that has been done.
   * @param offset of the caret, for a bridge that is wanted there
   * @throws Stopped when whoever watches says so
   */
  prove(id: string, offset?: number): Proof {
    if (id.endsWith(ANYWAY)) return this.proveAnyway(id, offset);
    const key = offset === undefined ? id : this.keyAtCaret(id, offset);
    if (!this.outcomes.has(key)) this.keep(key, id, this.outcomeOf(id, offset));
    return { ...this.proofOf(key, Infinity), id };
  }

  /** What may be had although it was refused. */
  private proveAnyway(id: string, offset?: number): Proof {
    const proof = this.prove(id.slice(0, -ANYWAY.length), offset);
    const forced = proof.outcome === 'refused' ? proof.anyway : undefined;
    return forced ? { ...forced, id } : proof;
  }

  private keep(key: string, id: string, outcome: Outcome): void {
    this.outcomes.set(key, outcome);
    const finding = this.findingOf(id);
    const candidate = finding && this.candidatesOf(finding).find((each) => each.id === id);
    if (candidate) this.knownGroups.add(groupOf(candidate));
  }

  /** What an offer turned out to be; undefined where another one already does the same. */
  result(id: string): Outcome {
    this.prove(id);
    return this.outcomes.get(id);
  }

  /** The fix that an offer turned out to be. */
  private fix(id: string): Fix | undefined {
    const result = this.result(id);
    return result && !isRefusal(result) ? result : undefined;
  }

  /** All fixes that change nothing that is cut or painted and do not meddle with each other, as one. */
  proveSafe(): Proof {
    const edits: TextEdit[] = [];
    const candidates = this.checked.report.findings.flatMap((finding) => this.candidatesOf(finding));
    for (const { id } of candidates.filter(({ safe }) => safe)) {
      const fix = this.fix(id);
      if (fix?.safe && !fix.edits.some((edit) => edits.some((other) => isTouching(edit, other))))
        edits.push(...fix.edits);
    }
    if (edits.length === 0) return { id: '', outcome: 'needless' };
    const title = 'Apply all safe fixes';
    return { id: '', outcome: 'proven', title, preferred: false, edits: [editsIn(this.checked, edits)] };
  }

  /** Changes at a place that no finding asks for. */
  refactorsAt(offset: number): Offer[] {
    const found = refactorsAt(this.checked, offset);
    for (const refactor of found) this.refactors.set(refactor.offer.id, refactor);
    return found.map(({ offer }) => offer);
  }

  /** All commands that draw one edge lead to the same bridge. */
  private keyAtCaret(id: string, offset: number): string {
    const finding = this.findingOf(id);
    const edge = finding && edgeAtCaret(finding, offset);
    return edge ? `${id}@${edge.x} ${edge.y}` : `${id}@`;
  }

  private outcomeOf(id: string, offset?: number): Outcome {
    const refactor = this.refactors.get(id);
    const finding = this.findingOf(id);
    if (refactor) return refactor.prove();
    if (!finding) return refuse('The drawing has changed since; choose the fix again.');
    if (offset !== undefined) {
      return bridgeAtCaret(this.checked.report, finding, offset) ?? refuse(NO_EDGE_HERE);
    }
    const candidate = this.candidatesOf(finding).find((each) => each.id === id);
    return candidate ? proveFix(this.checked.report, candidate) : refuse('There is no such fix.');
  }

  private findingOf(id: string): ReportedFinding | undefined {
    return this.checked.report.findings.find((finding) => id.startsWith(`${finding.id}!`));
  }

  private proofOf(key: string, longest: number): Proof {
    const outcome = this.outcomes.get(key);
    if (!outcome) return { id: key, outcome: 'needless' };
    if (!isRefusal(outcome)) return this.provenOf(key, outcome, longest);
    const { reason, first, anyway } = outcome;
    const forced = anyway && this.provenOf(`${key}${ANYWAY}`, anyway, longest);
    return { id: key, outcome: 'refused', reason, ...(first && { first }), ...(forced && { anyway: forced }) };
  }

  private provenOf(id: string, fix: Fix, longest: number): ProvenFix {
    const { title, preferred, forced } = fix;
    const edits = this.editsOf(fix);
    const length = edits.flatMap((each) => each.edits).reduce((sum, { text }) => sum + text.length, 0);
    return {
      id,
      outcome: 'proven',
      title,
      preferred,
      ...(forced && { forced }),
      ...(length <= longest && { edits }),
    };
  }

  private editsOf({ edits, others = [] }: Fix): DocumentEdits[] {
    const rest = others.flatMap((each) => {
      const other = this.checked.named(each.file);
      return other ? [editsIn(other, each.edits)] : [];
    });
    return [editsIn(this.checked, edits), ...rest];
  }
}

/** What is the same for offers that make the same change. */
function groupOf(candidate: FixCandidate): string {
  return sharedChange(candidate) ?? candidate.id;
}

function editsIn({ uri, version, file }: CheckedDocument, edits: Fix['edits']): DocumentEdits {
  return { uri, version, open: file.open, edits };
}

const isTouching = ({ span: a }: TextEdit, { span: b }: TextEdit): boolean => a.from <= b.to && b.from <= a.to;
