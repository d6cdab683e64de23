/** One version of a document with its report, and the mends proven for it so far. */
import { TextDocument } from 'vscode-languageserver-textdocument';
import { bridgeAtCaret, bridgeIslands, check, isStencil, mendsFor } from '../engine';
import type { Mend, Report } from '../report';
import { readConfig } from '../sheet/read-config';
import type { FoundConfig } from './find-config';

export class CheckedDocument {
  private readonly proven = new Map<number, readonly Mend[]>();

  private constructor(
    private readonly live: TextDocument,
    /** The document as it was when it was checked. */
    readonly document: TextDocument,
    readonly stencil: boolean,
    readonly config: FoundConfig | undefined,
    readonly report: Report,
  ) {}

  /**
   * Checks the document as it stands. Synchronous; takes as long as the engine takes.
   * @param live changes in place when the editor's text changes
   * @param earlier the last check of this document: its unchanged layers are not measured again
   */
  static check(live: TextDocument, found: FoundConfig | undefined, earlier?: CheckedDocument): CheckedDocument {
    const text = live.getText();
    const document = TextDocument.create(live.uri, live.languageId, live.version, text);
    const report = check(text, found ? { config: readConfig(found.text).config } : {}, earlier?.report);
    return new CheckedDocument(live, document, isStencilDocument(live, found), found, report);
  }

  get version(): number {
    return this.document.version;
  }

  /** Whether the report is about the text that is in the editor now. */
  get current(): boolean {
    return this.live.version === this.version;
  }

  /** Mends for the finding with that index, proven once for each version. */
  mends(index: number): readonly Mend[] {
    const known = this.proven.get(index);
    if (known) return known;
    const finding = this.report.findings[index];
    const mends = finding ? mendsFor(this.report, finding) : [];
    this.proven.set(index, mends);
    return mends;
  }

  /** A bridge at an offset of the text, for the island with that index. */
  bridgeAtCaret(index: number, offset: number): Mend | undefined {
    const finding = this.report.findings[index];
    return finding && bridgeAtCaret(this.report, finding, offset);
  }

  bridgeIslands(): ReturnType<typeof bridgeIslands> {
    return bridgeIslands(this.report, {});
  }
}

/** A stencil is what has a `tombolo.json` beside or above it, or says so in its root. Others are left in peace. */
export function isStencilDocument(document: TextDocument, found: FoundConfig | undefined): boolean {
  return found !== undefined || isStencil(document.getText());
}
