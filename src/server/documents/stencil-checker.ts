/** Decides when each open document is checked, and publishes what the last check of its present text found. */
import { TextDocument } from 'vscode-languageserver-textdocument';
import { CONFIG_NAME } from '../../config/types';
import { FROM_ATTRIBUTE } from '../../engine/index';
import type { CheckFacts, DocumentFacts } from '../../protocol/facts';
import type { FileChecked, PreviewStack } from '../../protocol/index';
import type { OfferFacts } from '../../protocol/offers';
import type { EngineClient } from '../engine/engine-client';
import type { OpenFolders } from '../host/platform';
import { type CheckInput, type InputSources, inputFor, keyFor } from './check-input';
import { CheckRuns, type Run, type Wish } from './check-runs';
import {
  type CheckerOutput,
  type CheckerSurroundings,
  type DrawnFiles,
  NO_PROGRAMS,
  type OpenDocuments,
} from './checker-surroundings';
import { ConfigDiagnostics } from './config-diagnostics';
import { Debouncer } from './debounce';
import { DiskFiles } from './disk-files';
import { KnownConfigs } from './known-configs';
import { KnownDocument } from './known-document';
import { KnownProject } from './known-project';
import { LatestChecks } from './latest-checks';
import { LostChecks } from './lost-checks';
import { PublishedChecks } from './published-checks';
import { DEFAULT_SETTINGS, type ServerSettings } from './settings';
import { withShown } from './shown-severities';

/** Milliseconds that an answer may wait for a check that is under way. */
const GRACE = 30;

/** A text that changes faster than it is checked is not waited for any longer. */
const MAX_TRIES = 20;

export const isConfigUri = (uri: string): boolean => uri.endsWith(`/${CONFIG_NAME}`);

export class StencilChecker {
  private settings: ServerSettings = DEFAULT_SETTINGS;
  private readonly debouncer = new Debouncer();
  /** Documents that have had their first look, stencils or not. */
  private readonly seen = new Set<string>();
  /** The last published check of each project, by the address of its `tombolo.json`. */
  private readonly projects = new Map<string, KnownProject>();
  /** The versions in which documents were found to be no stencils. */
  private readonly plain = new Map<string, number>();
  private readonly runs: CheckRuns;
  private readonly lost = new LostChecks();
  private disposed = false;
  /** Files that are checked though they are not open. */
  private readonly listed = new Set<string>();
  private readonly disk: DiskFiles;
  private readonly configs: KnownConfigs;
  private readonly sources: InputSources;
  /** The folders that the editor has open. */
  readonly workspace: OpenFolders;
  private readonly notices: ConfigDiagnostics;
  private readonly published: PublishedChecks;
  private readonly latest: LatestChecks;

  private readonly documents: OpenDocuments;
  private readonly engine: EngineClient;
  private readonly programs: DrawnFiles;

  constructor(
    documents: OpenDocuments,
    engine: EngineClient,
    outlet: CheckerOutput,
    { files, workspace, programs }: CheckerSurroundings,
  ) {
    this.documents = documents;
    this.engine = engine;
    this.disk = new DiskFiles(files);
    this.workspace = workspace;
    this.programs = programs ?? NO_PROGRAMS;
    this.configs = new KnownConfigs((uri) => documents.get(uri)?.getText(), files);
    const { disk, configs, listed } = this;
    const marksOf = (uri: string, text: string) => this.programs.marksOf(uri, text);
    this.sources = { documents, disk, configs, listed, workspace: this.workspace, marksOf };
    this.runs = new CheckRuns(
      engine,
      this.configs,
      (run, facts) => this.ended(run, facts),
      (run) => this.tryAgain(run),
    );
    this.published = new PublishedChecks(documents, configs, this.programs, outlet);
    this.latest = new LatestChecks(documents, configs, this.published);
    this.notices = new ConfigDiagnostics({
      configs,
      pageOf: outlet.pageOf,
      faultsOf: ({ uri, text }) => this.projects.get(uri)?.problems(text) ?? [],
      publish: (uri, diagnostics) => outlet.diagnostics(uri, undefined, diagnostics),
    });
  }

  /** What the editor's settings say, from now on. */
  configure(settings: ServerSettings): void {
    const before = this.settings;
    this.settings = settings;
    this.published.remap(settings.severity);
    if (settings.run === 'onType' && before.run !== 'onType') this.checkAllSoon(0);
  }

  /** The text of a document was opened or has changed. */
  changed(document: TextDocument): void {
    const { uri } = document;
    const first = !this.seen.has(uri);
    if (isConfigUri(uri)) {
      this.seen.add(uri);
      if (first) this.configs.changed();
      this.showNotices();
    }
    const { run, delay } = this.settings;
    if (run === 'manual' || (run === 'onSave' && !first)) return;
    this.runs.cancelOutdated(this.documents);
    if (isConfigUri(uri)) this.checkAllSoon(first ? 0 : delay);
    else this.checkSoon(uri, first ? 0 : delay);
  }

  saved({ uri }: TextDocument): void {
    if (isConfigUri(uri)) this.configs.changed();
    if (this.settings.run !== 'onSave') return;
    if (isConfigUri(uri)) this.checkAllSoon(0);
    else this.checkSoon(uri, 0);
  }

  closed({ uri }: TextDocument): void {
    this.debouncer.cancel(uri);
    this.seen.delete(uri);
    this.plain.delete(uri);
    this.latest.drop(uri);
    if (isConfigUri(uri)) this.configs.changed();
    const project = this.projectWith(uri);
    if (!project) this.forget(uri);
    else if (!this.isInForce(project.config.uri, project.named)) this.clearProject(project);
    else if (this.settings.run !== 'manual') this.checkProjectSoon(project.config.uri);
    if (isConfigUri(uri)) this.configChanged();
    if (this.listed.has(uri) && this.settings.run !== 'manual') this.checkSoon(uri, 0);
    this.showNotices();
  }

  /** Some `tombolo.json` on disk was written, made, moved or deleted. */
  configChanged(): void {
    this.configs.changed();
    if (this.settings.run !== 'manual') this.checkAllSoon(0);
  }

  /** A drawing on disk was written, made, moved or deleted: of interest where a project names it and it is not open. */
  drawingChanged(uri: string): void {
    // A watched program says itself when its drawing is done.
    if (this.settings.run === 'manual' || this.documents.get(uri) || this.programs.isMarked(uri)) return;
    if (this.disk.read(uri)?.getText().includes(FROM_ATTRIBUTE)) this.listed.add(uri);
    if (this.listed.has(uri)) this.checkSoon(uri, 0);
    for (const { config, named } of this.projects.values()) if (named.has(uri)) this.checkProjectSoon(config.uri);
  }

  /** A watched program has drawn a file anew, or draws it no more. */
  drawn(uri: string): void {
    if (this.programs.isMarked(uri)) this.listed.add(uri);
    else {
      this.listed.delete(uri);
      if (!this.documents.get(uri)) this.forget(uri);
    }
    const project = this.projectWith(uri);
    if (project && !this.isInForce(project.config.uri, project.named)) this.clearProject(project);
    else if (this.listed.has(uri) || this.documents.get(uri)) this.checkSoon(uri, 0);
  }

  /** Settles when the check is done and published. */
  async checkNow(uri: string): Promise<void> {
    await this.look(uri, true);
  }

  /** Checks a file that need not be open; what is found in it stays published until it changes there. */
  async checkFile(uri: string): Promise<FileChecked> {
    if (!this.documents.get(uri)) this.listed.add(uri);
    await this.look(uri, true);
    const { stencil = false, summary } = this.latest.lastOf(uri)?.facts ?? {};
    if (!stencil) this.listed.delete(uri);
    return { stencil, counts: summary?.counts ?? { error: 0, warning: 0, info: 0, hint: 0 } };
  }

  private async look(uri: string, announced: boolean): Promise<void> {
    const isListed = this.listed.has(uri) && !this.documents.get(uri);
    const input = this.documents.get(uri) || isListed ? this.inputFor(uri) : undefined;
    if (input) await this.run(input, { always: false, announced }).outcome;
    if (!isListed) return;
    if (!input) {
      this.listed.delete(uri);
      this.published.clear(uri);
    } else if (input.files.every(({ uri: file, open }) => !open && !this.programs.isDrawn(file)))
      this.engine.forget(input.key);
  }

  /** A new worker runs, which has checked nothing yet. What was checked last stays published. */
  engineRestarted(lost: ReadonlySet<string>): void {
    const single = this.published.all().flatMap(({ uri, project }) => (project ? [] : [uri]));
    for (const key of [...this.projects.keys(), ...single]) {
      const input = lost.has(key) ? undefined : this.inputFor(key);
      if (input) this.run(input, { always: true, announced: false });
    }
  }

  /** What the worker has found out ahead. */
  offered(facts: OfferFacts): void {
    for (const known of this.latest.allOf(facts.uri)) if (known.version === facts.version) known.take(facts);
  }

  /**
   * The check of the document's present text, made now if need be. For documents that are no stencils too. Published
   * only where a stencil is checked as it changes. Files of a project are known though they are not open.
   */
  async current(uri: string): Promise<KnownDocument | undefined> {
    if (isConfigUri(uri)) return undefined;
    for (let tries = 0; tries < MAX_TRIES; tries += 1) {
      const known = this.latest.current(uri);
      if (known) return known;
      const input = this.inputFor(uri);
      if (!input || this.lost.isGivenUp(input)) return undefined;
      const outcome = await this.run(input, { always: true, announced: false }).outcome;
      if (outcome === 'lost') return undefined;
    }
    return undefined;
  }

  /**
   * What is known of a stencil now: of an earlier text, where the present one is not checked at once.
   * @returns undefined for what is no stencil
   */
  async facts(uri: string): Promise<KnownDocument | undefined> {
    const known = this.latest.lastOf(uri);
    if (known) {
      const run = this.latest.isCurrent(known) ? undefined : this.runs.get(this.keyOf(uri));
      if (run) await Promise.race([run.outcome, new Promise((resolve) => setTimeout(resolve, GRACE))]);
      return this.latest.lastOf(uri);
    }
    const document = this.documents.get(uri);
    if (!document || isConfigUri(uri) || this.plain.get(uri) === document.version) return undefined;
    const input = this.inputFor(uri);
    if (input && this.lost.isGivenUp(input)) return undefined;
    await this.look(uri, this.settings.run !== 'manual');
    return this.latest.lastOf(uri);
  }

  /** The check of the document's present text, where it has been made. */
  known(uri: string): KnownDocument | undefined {
    return this.latest.upToDate(uri);
  }

  /** The stack as the bench is to show it. */
  shown(stack: PreviewStack): PreviewStack {
    const known = this.latest.lastOf(stack.uri);
    const configErrors = known ? this.published.configErrors(known).length : 0;
    return { ...stack, configErrors, findings: withShown(stack.findings, this.settings.severity) };
  }

  /** The `tombolo.json` of a document, where it is open in the editor. */
  openConfig({ config }: KnownDocument): { readonly version: number; readonly text: string } | undefined {
    const open = config && this.documents.get(config.uri);
    return open && { version: open.version, text: open.getText() };
  }

  dispose(): void {
    this.disposed = true;
    this.debouncer.cancelAll();
    this.programs.dispose();
    this.engine.dispose();
  }

  private inputFor(uri: string): CheckInput | undefined {
    const input = inputFor(uri, this.sources);
    return input && (input.project || !isConfigUri(uri)) ? input : undefined;
  }

  private checkSoon(uri: string, delay: number): void {
    this.debouncer.schedule(delay, this.keyOf(uri), () => void this.checkNow(uri));
  }

  /** All documents of a project are checked in one run, whichever of them asks for it. */
  private keyOf(uri: string): string {
    return keyFor(uri, this.sources);
  }

  private checkAllSoon(delay: number): void {
    for (const project of [...this.projects.values()]) {
      if (!this.isAskedFor(project.config.uri, project.named)) this.clearProject(project);
    }
    const open = this.documents.all().map(({ uri }) => uri);
    for (const uri of new Set([...open, ...this.listed])) this.checkSoon(uri, delay);
  }

  private checkProjectSoon(configUri: string): void {
    this.debouncer.schedule(0, configUri, () => this.runProject(configUri));
  }

  private runProject(configUri: string): void {
    const input = this.inputFor(configUri);
    const project = this.projects.get(configUri);
    if (input?.key === configUri) this.run(input, { always: false, announced: true });
    else if (project) this.clearProject(project);
    this.showNotices();
  }

  private run(input: CheckInput, { always, announced }: Wish): Run {
    const wasPending = this.debouncer.cancel(input.key);
    return this.runs.start(input, { always, announced: announced || wasPending });
  }

  /** A check that was lost: once more, else what was found before is all that there is. */
  private tryAgain({ input, wish }: Run): void {
    if (this.disposed) return;
    const now = this.inputFor(input.key);
    if (this.lost.add(input)) {
      if (now) this.run(now, wish);
    } else for (const { uri, open } of input.files) if (open) this.published.showOld(uri);
  }

  private ended({ input, wish }: Run, facts: CheckFacts): void {
    this.lost.forget(input.key);
    // Some `tombolo.json` may have changed since: what counts is then told by another check.
    const isAskedFor = this.isAskedFor(input.key, input.named);
    const announced = isAskedFor && wish.announced;
    const isTold = announced || (isAskedFor && this.settings.run === 'onType');
    if (input.project) this.takeProject(input, facts, isTold);
    else this.takeDocument(input, facts, { ...wish, announced, isTold });
    this.showNotices();
  }

  private takeDocument(
    input: CheckInput,
    { documents: [facts] }: CheckFacts,
    { announced, isTold }: Wish & { readonly isTold: boolean },
  ): void {
    const [file] = input.files;
    if (!file) return;
    const { uri, version, open } = file;
    if (isTold && open) this.seen.add(uri);
    const known = facts && this.knownFrom(facts, input);
    if (known?.facts.stencil && isTold) return this.publish(known);
    if (known) this.latest.keepUntold([known]);
    if (known?.facts.stencil) return;
    if (announced || (isTold && this.published.get(uri))) {
      this.plain.set(uri, version);
      this.published.showPlain(file);
    } else if (!known) this.plain.set(uri, version);
  }

  private takeProject(input: CheckInput, facts: CheckFacts, isTold: boolean): void {
    const { config } = input;
    if (!config) return;
    const before = this.projects.get(config.uri);
    const project = new KnownProject(config, input.named, facts.amiss);
    project.documents.push(...facts.documents.map((each) => this.knownFrom(each, input, project)));
    if (!isTold) {
      this.latest.keepUntold(project.documents);
      return;
    }
    this.projects.set(config.uri, project);
    for (const document of project.documents) this.publish(document);
    for (const { uri } of before?.documents ?? []) {
      if (project.document(uri)) continue;
      this.published.clear(uri);
      if (this.documents.get(uri)) this.checkSoon(uri, 0);
    }
  }

  private clearProject(project: KnownProject): void {
    const { uri } = project.config;
    this.projects.delete(uri);
    this.debouncer.cancel(uri);
    this.runs.cancel(uri);
    this.engine.forget(uri);
    for (const each of project.documents) {
      // One that is open is checked by itself or with another project, and shows until then what was found last.
      if (!this.documents.get(each.uri) && this.published.get(each.uri) === each) this.published.clear(each.uri);
    }
  }

  /**
   * Whether a document that is open, or drawn by a program, is checked under this key as each `tombolo.json` stands now.
   * @param named all files of the project, where it is one
   */
  private isInForce(key: string, named: ReadonlySet<string>): boolean {
    const isThere = (uri: string) => this.documents.get(uri) !== undefined || this.programs.isDrawn(uri);
    return [key, ...named].some((uri) => isThere(uri) && this.keyOf(uri) === key);
  }

  /** The same, files that are checked though they are not open counted in. */
  private isAskedFor(key: string, named: ReadonlySet<string>): boolean {
    const isListed = [key, ...named].some((uri) => this.listed.has(uri) && this.keyOf(uri) === key);
    return isListed || this.isInForce(key, named);
  }

  private projectWith(uri: string): KnownProject | undefined {
    return this.projects.get(uri) ?? [...this.projects.values()].find(({ named }) => named.has(uri));
  }

  private publish(known: KnownDocument): void {
    const { uri, facts, project } = known;
    if (facts.open) this.seen.add(uri);
    this.published.show(known);
    if (this.programs.isDrawn(uri) && !project) this.listed.add(uri);
  }

  /** A document that is closed. */
  private forget(uri: string): void {
    this.runs.cancel(uri);
    this.engine.forget(uri);
    this.published.clear(uri);
  }

  /** At once, with what the last check of each project found amiss in its layers. */
  private showNotices(): void {
    const open = this.documents
      .all()
      .map(({ uri }) => uri)
      .filter(isConfigUri);
    const inForce = this.published.all().flatMap(({ config }) => (config ? [config.uri] : []));
    this.notices.show(new Set([...open, ...inForce]));
    this.disk.keepOnly(new Set(this.published.all().map(({ uri }) => uri)));
  }

  private knownFrom(facts: DocumentFacts, { files, config }: CheckInput, project?: KnownProject): KnownDocument {
    const text = files.find(({ uri }) => uri === facts.uri)?.text ?? '';
    const document = TextDocument.create(facts.uri, 'xml', facts.version, text);
    const known = new KnownDocument(facts, document, config, project);
    known.remap(this.settings.severity);
    return known;
  }
}
