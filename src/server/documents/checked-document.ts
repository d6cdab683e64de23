/** One version of a document with its report, and the mends proven for it so far. */
import { TextDocument } from 'vscode-languageserver-textdocument';
import {
  bridgeAtCaret,
  bridgeIslands,
  check,
  type Fix,
  type FixesOfFinding,
  type FixRefusal,
  fixesFor,
  isStencil,
  readConfig,
} from '../../engine/index';
import type { Report } from '../../report/report';
import type { FoundConfig } from './find-config';

/** What a document asks of the project that it was checked with. */
export interface ProjectOfDocument {
  readonly config: FoundConfig;
  readonly documents: ReadonlyMap<string, CheckedDocument>;
  /** Whether all its files are still as they were. */
  readonly current: boolean;
}

export class CheckedDocument {
  private readonly fixCache = new Map<number, FixesOfFinding>();

  /** Changes in place when the editor's text changes. */
  private readonly live: TextDocument;
  /** Whether it is open in the editor. */
  readonly open: boolean;
  /** The document as it was when it was checked. */
  readonly document: TextDocument;
  readonly stencil: boolean;
  readonly config: FoundConfig | undefined;
  readonly report: Report;
  readonly project: ProjectOfDocument | undefined;

  private constructor(
    live: TextDocument,
    open: boolean,
    document: TextDocument,
    stencil: boolean,
    config: FoundConfig | undefined,
    report: Report,
    project?: ProjectOfDocument,
  ) {
    this.live = live;
    this.open = open;
    this.document = document;
    this.stencil = stencil;
    this.config = config;
    this.report = report;
    this.project = project;
  }

  /**
   * Checks the document as it stands, by itself. Synchronous; takes as long as the engine takes.
   * @param earlier the last check of this document: its unchanged layers are not measured again
   */
  static check(live: TextDocument, found: FoundConfig | undefined, earlier?: CheckedDocument): CheckedDocument {
    const document = snapshot(live);
    const report = check(document.getText(), found ? { config: readConfig(found.text).config } : {}, earlier?.report);
    return new CheckedDocument(live, true, document, isStencilDocument(live, found), found, report);
  }

  /** A file of a project that was checked. */
  static ofProject(live: TextDocument, open: boolean, report: Report, project: ProjectOfDocument): CheckedDocument {
    return new CheckedDocument(live, open, snapshot(live), true, project.config, report, project);
  }

  get version(): number {
    return this.document.version;
  }

  /** Whether the report is about the texts that are in the editor now, its own and those of its project. */
  get current(): boolean {
    return this.project ? this.project.current : this.upToDate;
  }

  /** Whether the document itself is still as it was. */
  get upToDate(): boolean {
    return this.live.version === this.version;
  }

  /** All documents of its project, this one first. */
  documents(): CheckedDocument[] {
    return [this, ...[...(this.project?.documents.values() ?? [])].filter((each) => each !== this)];
  }

  /** The document that the stack knows under a name. */
  named(file: string): CheckedDocument | undefined {
    return this.project ? this.project.documents.get(file) : this;
  }

  /** What became of the fixes for the finding with that index: proven once for each version. */
  fixes(index: number): FixesOfFinding {
    const known = this.fixCache.get(index);
    if (known) return known;
    const finding = this.report.findings[index];
    const fixes = finding ? fixesFor(this.report, finding) : { fixes: [], refusals: [] };
    this.fixCache.set(index, fixes);
    return fixes;
  }

  /** The same where they were proven already. */
  knownFixes(index: number): FixesOfFinding | undefined {
    return this.fixCache.get(index);
  }

  /** A bridge at an offset of the text, for the island with that index. */
  bridgeAtCaret(index: number, offset: number): Fix | FixRefusal | undefined {
    const finding = this.report.findings[index];
    return finding && bridgeAtCaret(this.report, finding, offset);
  }

  bridgeIslands(): ReturnType<typeof bridgeIslands> {
    return bridgeIslands(this.report, {});
  }
}

function snapshot(live: TextDocument): TextDocument {
  return TextDocument.create(live.uri, live.languageId, live.version, live.getText());
}

/** A stencil is what has a `tombolo.json` beside or above it, or says so in its root. Others are left in peace. */
export function isStencilDocument(document: TextDocument, found: FoundConfig | undefined): boolean {
  return found !== undefined || isStencil(document.getText());
}
