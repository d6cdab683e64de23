/** Decides when each open document is checked, and publishes what the last check of its present text found. */
import type { Diagnostic } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { CONFIG_NAME } from '../../config/types';
import type { Checked } from '../../protocol/index';
import { CheckedDocument, isStencilDocument } from './checked-document';
import { CheckedProject, namesDocument } from './checked-project';
import { ConfigDiagnostics } from './config-diagnostics';
import { Debouncer } from './debounce';
import { diagnosticOf } from './diagnostics';
import { DiskFiles } from './disk-files';
import { type FoundConfig, findConfig } from './find-config';
import { DEFAULT_SETTINGS, type ServerSettings } from './settings';
import { summaryOf } from './summary';

/** The way out of the checker. */
export interface CheckerOutput {
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
const MAX_EXTRA_DELAY = 500;

export const isConfigUri = (uri: string): boolean => uri.endsWith(`/${CONFIG_NAME}`);

export class StencilChecker {
  settings: ServerSettings = DEFAULT_SETTINGS;
  private readonly debouncer = new Debouncer();
  /** Documents that have had their first look, stencils or not. */
  private readonly seen = new Set<string>();
  /** The last published check of each stencil, and of each file of a project. */
  private readonly results = new Map<string, CheckedDocument>();
  /** The last published check of each project, by the address of its `tombolo.json`. */
  private readonly projects = new Map<string, CheckedProject>();
  private readonly disk = new DiskFiles();
  /** The last check that was asked for of a document without a published one. */
  private asked: CheckedDocument | undefined;
  private readonly notices: ConfigDiagnostics;

  private readonly documents: OpenDocuments;
  private readonly outlet: CheckerOutput;

  constructor(documents: OpenDocuments, outlet: CheckerOutput) {
    this.documents = documents;
    this.outlet = outlet;

    this.notices = new ConfigDiagnostics((uri, diagnostics) => outlet.diagnostics(uri, undefined, diagnostics));
  }

  /** The text of a document was opened or has changed. */
  changed(document: TextDocument): void {
    const { uri } = document;
    const first = !this.seen.has(uri);
    if (isConfigUri(uri)) {
      this.seen.add(uri);
      this.showNotices({ uri, text: document.getText() });
    }
    const { run, delay } = this.settings;
    if (run === 'manual' || (run === 'onSave' && !first)) return;
    if (isConfigUri(uri)) this.checkAllSoon(first ? 0 : delay);
    else this.checkSoon(uri, first ? 0 : this.delayFor(uri));
  }

  saved({ uri }: TextDocument): void {
    if (this.settings.run !== 'onSave') return;
    if (isConfigUri(uri)) this.checkAllSoon(0);
    else this.checkSoon(uri, 0);
  }

  closed({ uri }: TextDocument): void {
    this.debouncer.cancel(uri);
    this.seen.delete(uri);
    if (this.asked?.document.uri === uri) this.asked = undefined;
    const project = this.projectWith(uri);
    if (!project) this.clear(uri);
    else if (this.isInForce(project)) this.checkProjectSoon(project.config.uri);
    else this.clearProject(project);
    if (isConfigUri(uri)) this.configChanged();
    this.sweepNotices();
  }

  /** Some `tombolo.json` on disk was written, made, moved or deleted. */
  configChanged(): void {
    if (this.settings.run !== 'manual') this.checkAllSoon(0);
  }

  /** A drawing on disk was written, made, moved or deleted: of interest where a project names it and it is not open. */
  drawingChanged(uri: string): void {
    if (this.settings.run === 'manual' || this.documents.get(uri)) return;
    for (const { config, named } of this.projects.values()) if (named.has(uri)) this.checkProjectSoon(config.uri);
  }

  checkNow(uri: string): void {
    const document = this.documents.get(uri);
    if (!document) return;
    const found = this.configFor(document);
    this.debouncer.cancel(this.keyOf(uri, found));
    this.guard(uri, () => this.run(document, found));
  }

  /**
   * The check of the document's present text, made now if need be. For documents that are no stencils too; nothing is
   * published for those. Files of a project are known though they are not open.
   */
  current(uri: string): CheckedDocument | undefined {
    if (isConfigUri(uri)) return undefined;
    const known = this.results.get(uri);
    if (known?.current) return known;
    const document = this.documents.get(uri);
    const found = known?.project ? this.configFor(known.document) : document && this.configFor(document);
    if (found && namesDocument(found, uri)) {
      const project = this.checkProject(found);
      if (known) this.publishProject(project);
      return project.document(uri);
    }
    if (!document) return undefined;
    if (this.isAsked(uri) && this.asked?.config?.text === found?.text) return this.asked;
    const checked = CheckedDocument.check(document, found, known);
    if (known && checked.stencil) this.publish(checked);
    else this.asked = checked;
    return checked;
  }

  /** The check of the document's present text, where it has been made. */
  known(uri: string): CheckedDocument | undefined {
    const known = this.results.get(uri);
    if (known) return known.upToDate ? known : undefined;
    return this.isAsked(uri) ? this.asked : undefined;
  }

  private isAsked(uri: string): boolean {
    return this.asked !== undefined && this.asked.document.uri === uri && this.asked.upToDate;
  }

  dispose(): void {
    this.debouncer.cancelAll();
  }

  private checkSoon(uri: string, delay: number): void {
    const document = this.documents.get(uri);
    const key = this.keyOf(uri, document && this.configFor(document));
    this.debouncer.schedule(delay, key, () => this.checkNow(uri));
  }

  /** All documents of a project are checked in one run, whichever of them asks for it. */
  private keyOf(uri: string, found: FoundConfig | undefined): string {
    return found && (found.uri === uri || namesDocument(found, uri)) ? found.uri : uri;
  }

  private checkAllSoon(delay: number): void {
    for (const { uri } of this.documents.all()) this.checkSoon(uri, delay);
  }

  private checkProjectSoon(configUri: string): void {
    this.debouncer.schedule(0, configUri, () => this.guard(configUri, () => this.runProject(configUri)));
  }

  /** Heavy drawings are given more rest, so that the server has time for questions between two runs. */
  private delayFor(uri: string): number {
    const { report } = this.results.get(uri) ?? {};
    const elapsed = report?.project?.report.elapsed ?? report?.elapsed ?? 0;
    return Math.max(this.settings.delay, Math.min(elapsed / 2, MAX_EXTRA_DELAY));
  }

  private guard(uri: string, run: () => void): void {
    try {
      run();
    } catch (error) {
      this.outlet.log(`${uri}: the check failed. ${error instanceof Error ? error.stack : String(error)}`);
    }
  }

  private run(document: TextDocument, found: FoundConfig | undefined): void {
    const { uri } = document;
    this.seen.add(uri);
    if (found && (found.uri === uri || namesDocument(found, uri))) {
      this.publishProject(this.checkProject(found));
    } else if (!isConfigUri(uri)) {
      if (found) this.notices.show(found);
      if (isStencilDocument(document, found))
        this.publish(CheckedDocument.check(document, found, this.results.get(uri)));
      else this.ignore(document);
    }
    this.sweepNotices();
  }

  private runProject(configUri: string): void {
    const found = findConfig(configUri, (uri) => this.documents.get(uri)?.getText());
    const project = this.projects.get(configUri);
    if (found?.uri === configUri) this.publishProject(this.checkProject(found));
    else if (project) this.clearProject(project);
    this.sweepNotices();
  }

  private checkProject(found: FoundConfig): CheckedProject {
    return CheckedProject.check(found, (uri) => this.read(uri), this.projects.get(found.uri));
  }

  private read(uri: string): { document: TextDocument; open: boolean } | undefined {
    const document = this.documents.get(uri);
    if (document) return { document, open: true };
    const onDisk = this.disk.read(uri);
    return onDisk && { document: onDisk, open: false };
  }

  /** At once, with what the last check of the project found amiss in its layers. */
  private showNotices(found: FoundConfig): void {
    this.notices.show(found, this.projects.get(found.uri)?.problems(found.text));
  }

  private publishProject(project: CheckedProject): void {
    const { config } = project;
    const before = this.projects.get(config.uri);
    this.projects.set(config.uri, project);
    this.notices.show(config, project.problems());
    for (const document of project.documents.values()) this.publish(document);
    for (const {
      document: { uri },
    } of before?.documents.values() ?? []) {
      if (project.document(uri)) continue;
      this.clear(uri);
      if (this.documents.get(uri)) this.checkSoon(uri, 0);
    }
  }

  private clearProject(project: CheckedProject): void {
    this.projects.delete(project.config.uri);
    this.debouncer.cancel(project.config.uri);
    for (const {
      document: { uri },
    } of project.documents.values())
      this.clear(uri);
  }

  /** Whether a document is open that belongs to the project. */
  private isInForce({ config, named }: CheckedProject): boolean {
    return [config.uri, ...named].some((uri) => this.documents.get(uri));
  }

  private projectWith(uri: string): CheckedProject | undefined {
    return this.projects.get(uri) ?? [...this.projects.values()].find(({ named }) => named.has(uri));
  }

  private publish(checked: CheckedDocument): void {
    const {
      document: { uri },
      open,
      report,
      version,
    } = checked;
    this.results.set(uri, checked);
    if (open) this.seen.add(uri);
    this.outlet.diagnostics(
      uri,
      open ? version : undefined,
      report.findings.map((finding, index) => diagnosticOf(finding, index, checked, this.outlet.pageOf)),
    );
    if (open) this.outlet.checked({ uri, version, stencil: true, summary: summaryOf(report, checked.config) });
    this.outlet.log(`${uri}: ${report.findings.length} findings in ${report.elapsed.toFixed(0)} ms`);
  }

  private clear(uri: string): void {
    if (this.results.delete(uri)) this.outlet.diagnostics(uri, undefined, []);
  }

  private ignore({ uri, version }: TextDocument): void {
    if (this.results.delete(uri)) this.outlet.diagnostics(uri, version, []);
    this.outlet.checked({ uri, version, stencil: false });
  }

  private configFor(document: TextDocument): FoundConfig | undefined {
    return findConfig(document.uri, (uri) => this.documents.get(uri)?.getText());
  }

  private sweepNotices(): void {
    const open = this.documents
      .all()
      .map(({ uri }) => uri)
      .filter(isConfigUri);
    const inForce = [...this.results.values()].flatMap(({ config }) => (config ? [config.uri] : []));
    this.notices.keepOnly(new Set([...open, ...inForce]));
    this.disk.keepOnly(new Set(this.results.keys()));
  }
}
