/** Decides when each open document is checked, and publishes what the last check of its present text found. */
import type { Diagnostic } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { CheckedDocument, isStencilDocument } from './checked-document';
import { ConfigNotices } from './config-notices';
import { diagnosticOf } from './diagnostics';
import { CONFIG_NAME, findConfig, type FoundConfig } from './find-config';
import type { Checked } from './protocol';
import { Schedule } from './schedule';
import { DEFAULT_SETTINGS, type ServerSettings } from './settings';
import { summaryOf } from './summary';

/** The way out of the checker. */
export interface Outlet {
  diagnostics(uri: string, version: number | undefined, diagnostics: Diagnostic[]): void;
  checked(checked: Checked): void;
  log(message: string): void;
  /** The address of a check's page. */
  pageOf(check: string): string | undefined;
}

/** The open documents. */
export interface OpenDocuments {
  get(uri: string): TextDocument | undefined;
  all(): TextDocument[];
}

/** Milliseconds that a heavy drawing may be kept waiting beyond what is set. */
const MOST_EXTRA_DELAY = 500;

export const isConfigUri = (uri: string): boolean => uri.endsWith(`/${CONFIG_NAME}`);

export class StencilChecker {
  settings: ServerSettings = DEFAULT_SETTINGS;
  private readonly schedule = new Schedule();
  /** Documents that have had their first look, stencils or not. */
  private readonly seen = new Set<string>();
  /** The last published check of each stencil. */
  private readonly results = new Map<string, CheckedDocument>();
  private readonly notices: ConfigNotices;

  constructor(private readonly documents: OpenDocuments, private readonly outlet: Outlet) {
    this.notices = new ConfigNotices((uri, diagnostics) => outlet.diagnostics(uri, undefined, diagnostics));
  }

  /** The text of a document was opened or has changed. */
  changed(document: TextDocument): void {
    const { uri } = document;
    if (isConfigUri(uri)) {
      this.notices.show({ uri, text: document.getText() });
      if (this.settings.run === 'onType') this.checkAllSoon(this.settings.delay);
    } else if (!this.seen.has(uri)) {
      if (this.settings.run !== 'manual') this.checkSoon(uri, 0);
    } else if (this.settings.run === 'onType') {
      this.checkSoon(uri, this.delayFor(uri));
    }
  }

  saved({ uri }: TextDocument): void {
    if (this.settings.run !== 'onSave') return;
    if (isConfigUri(uri)) this.checkAllSoon(0);
    else this.checkSoon(uri, 0);
  }

  closed({ uri }: TextDocument): void {
    this.schedule.cancel(uri);
    this.seen.delete(uri);
    if (this.results.delete(uri)) this.outlet.diagnostics(uri, undefined, []);
    if (isConfigUri(uri)) this.configChanged();
    this.sweepNotices();
  }

  /** Some `tombolo.json` on disk was written, made, moved or deleted. */
  configChanged(): void {
    if (this.settings.run !== 'manual') this.checkAllSoon(0);
  }

  checkNow(uri: string): void {
    this.schedule.cancel(uri);
    const document = this.documents.get(uri);
    if (!document || isConfigUri(uri)) return;
    try {
      this.run(document);
    } catch (error) {
      this.outlet.log(`${uri}: the check failed. ${error instanceof Error ? error.stack : String(error)}`);
    }
  }

  /**
   * The check of the document's present text, made now if need be. For documents that are no stencils too; nothing is
   * published for those.
   */
  current(uri: string): CheckedDocument | undefined {
    const document = this.documents.get(uri);
    if (!document || isConfigUri(uri)) return undefined;
    const known = this.results.get(uri);
    if (known?.current) return known;
    const checked = CheckedDocument.check(document, this.configOf(document), known);
    if (known && checked.stencil) this.keep(checked);
    return checked;
  }

  /** The check of the document's present text, where it has been made. */
  known(uri: string): CheckedDocument | undefined {
    const known = this.results.get(uri);
    return known?.current ? known : undefined;
  }

  dispose(): void {
    this.schedule.cancelAll();
  }

  private checkSoon(uri: string, delay: number): void {
    this.schedule.in(delay, uri, () => this.checkNow(uri));
  }

  private checkAllSoon(delay: number): void {
    for (const { uri } of this.documents.all()) if (!isConfigUri(uri)) this.checkSoon(uri, delay);
  }

  /** Heavy drawings are given more rest, so that the server has time for questions between two runs. */
  private delayFor(uri: string): number {
    const elapsed = this.results.get(uri)?.report.elapsed ?? 0;
    return Math.max(this.settings.delay, Math.min(elapsed / 2, MOST_EXTRA_DELAY));
  }

  private run(document: TextDocument): void {
    this.seen.add(document.uri);
    const found = this.configOf(document);
    if (found) this.notices.show(found);
    if (isStencilDocument(document, found)) this.keep(CheckedDocument.check(document, found, this.results.get(document.uri)));
    else this.leaveInPeace(document);
    this.sweepNotices();
  }

  private keep(checked: CheckedDocument): void {
    const { document, report, version } = checked;
    this.results.set(document.uri, checked);
    this.outlet.diagnostics(document.uri, version, report.findings.map(
      (finding, index) => diagnosticOf(finding, index, document, this.outlet.pageOf),
    ));
    this.outlet.checked({ uri: document.uri, version, stencil: true, summary: summaryOf(report, checked.config) });
    this.outlet.log(`${document.uri}: ${report.findings.length} findings in ${report.elapsed.toFixed(0)} ms`);
  }

  private leaveInPeace({ uri, version }: TextDocument): void {
    if (this.results.delete(uri)) this.outlet.diagnostics(uri, version, []);
    this.outlet.checked({ uri, version, stencil: false });
  }

  private configOf(document: TextDocument): FoundConfig | undefined {
    return findConfig(document.uri, (uri) => this.documents.get(uri)?.getText());
  }

  private sweepNotices(): void {
    const open = this.documents.all().map(({ uri }) => uri).filter(isConfigUri);
    const inForce = [...this.results.values()].flatMap(({ config }) => config ? [config.uri] : []);
    this.notices.keepOnly(new Set([...open, ...inForce]));
  }
}
