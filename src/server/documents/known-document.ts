/** What the server knows of a document that the worker has checked, put to the text as it stands now. */

import type { Range } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { ConfigProblem } from '../../config/read';
import type { FindingId, ShapeDescription } from '../../engine/index';
import type { DocumentFacts, FindingFact } from '../../protocol/facts';
import type { Offer, OfferFacts, Proof } from '../../protocol/offers';
import type { Span } from '../../text/text';
import { TextShift } from '../../text/text-shift';
import type { FoundConfig } from './find-config';
import { type ShownSeverities, withSeverities } from './shown-severities';

/** What a document asks of the project that it was checked with. */
export interface ProjectOfDocument {
  readonly documents: readonly KnownDocument[];
  document(uri: string): KnownDocument | undefined;
  /** What in its `tombolo.json` only shows when the files are looked at. */
  problems(): readonly ConfigProblem[];
}

export class KnownDocument {
  /** What was found out of shapes, by the places of their start tags; null for those without an area. */
  readonly shapes = new Map<number, ShapeDescription | null>();
  /** Of places of findings, as the text of SVG files. */
  readonly pictures = new Map<FindingId, string>();
  private offers: ReadonlyMap<string, readonly Offer[]> | undefined;
  private readonly proofs = new Map<string, Proof>();
  private readonly listeners = new Set<() => void>();
  private shift: { readonly version: number; readonly shift: TextShift } | undefined;

  /** As they are shown: some findings as more or less serious than they were found to be. */
  facts: DocumentFacts;
  private readonly found: DocumentFacts;
  /** The document as it was when it was checked. */
  readonly document: TextDocument;
  readonly config: FoundConfig | undefined;
  readonly project: ProjectOfDocument | undefined;

  constructor(
    facts: DocumentFacts,
    document: TextDocument,
    config: FoundConfig | undefined,
    project?: ProjectOfDocument,
  ) {
    this.facts = facts;
    this.found = facts;
    this.document = document;
    this.config = config;
    this.project = project;
  }

  get uri(): string {
    return this.facts.uri;
  }

  get version(): number {
    return this.facts.version;
  }

  /** @returns whether findings are shown in another way now */
  remap(severities: ShownSeverities): boolean {
    const before = this.facts;
    this.facts = withSeverities(this.found, severities);
    return JSON.stringify(before.findings) !== JSON.stringify(this.facts.findings);
  }

  /** The document that an address stands for: this one or another of its project. */
  sibling(uri: string): KnownDocument | undefined {
    return uri === this.uri ? this : this.project?.document(uri);
  }

  finding(id: FindingId): FindingFact | undefined {
    return this.facts.findings.find((finding) => finding.id === id);
  }

  /** How places of the checked text have moved since. */
  shiftTo(live: TextDocument): TextShift {
    if (this.shift?.version !== live.version) {
      this.shift = { version: live.version, shift: new TextShift(this.document.getText(), live.getText()) };
    }
    return this.shift.shift;
  }

  /** Where a stretch of the checked text is now. */
  rangeIn(live: TextDocument, span: Span): Range {
    return rangeOf(this.shiftTo(live).forwardSpan(span), live);
  }

  /** Undefined before the worker has told them. */
  offersOf(finding: FindingId): readonly Offer[] | undefined {
    return this.offers && (this.offers.get(finding) ?? []);
  }

  /** Whether the worker has told what is offered. */
  get offersTold(): boolean {
    return this.offers !== undefined;
  }

  get allOffers(): readonly Offer[] {
    return [...(this.offers?.values() ?? [])].flat();
  }

  proof(key: string): Proof | undefined {
    return this.proofs.get(key);
  }

  keepProof(key: string, proof: Proof): void {
    this.proofs.set(key, proof);
  }

  take({ offers, proofs }: OfferFacts): void {
    if (offers.length > 0 || !this.offers) this.offers = byFinding(offers);
    for (const proof of proofs) this.keepProof(proof.id, proof);
    for (const listener of [...this.listeners]) listener();
  }

  /** Waits until something is known that the worker tells in its own time. */
  async until(isKnown: () => boolean, milliseconds: number): Promise<void> {
    if (isKnown()) return;
    await new Promise<void>((resolve) => {
      const end = () => {
        clearTimeout(timer);
        this.listeners.delete(look);
        resolve();
      };
      const look = () => isKnown() && end();
      const timer = setTimeout(end, milliseconds);
      this.listeners.add(look);
    });
  }
}

function byFinding(offers: readonly Offer[]): ReadonlyMap<string, readonly Offer[]> {
  const found = new Map<string, Offer[]>();
  for (const offer of offers) {
    const others = found.get(offer.finding);
    if (others) others.push(offer);
    else found.set(offer.finding, [offer]);
  }
  return found;
}

export function rangeOf(span: Span, document: TextDocument): Range {
  return { start: document.positionAt(span.from), end: document.positionAt(span.to) };
}
