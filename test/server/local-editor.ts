/** An editor of a folder of drawings, with the checker and the engine, all in the thread of the test and without a disk. */
import type { Diagnostic } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI, Utils } from 'vscode-uri';
import { DEFAULT_SETTINGS, type ServerSettings } from '../../src/server/documents/settings';
import { isConfigUri, StencilChecker } from '../../src/server/documents/stencil-checker';
import type { EngineClient } from '../../src/server/engine/engine-client';
import type { Files } from '../../src/server/host/platform';
import { localEngine } from './local-engine';

const FOLDER = URI.parse('file:///marsh');
const uriOf = (name: string): string => Utils.joinPath(FOLDER, name).toString();
const WORKSPACE = { open: () => undefined, change: () => undefined, holds: () => true };
const turn = () => new Promise((resolve) => setTimeout(resolve));

/** So many turns without a word mean that nothing is under way any more. */
const QUIET_TURNS = 20;

export class LocalEditor {
  private readonly onDisk = new Map<string, string>();
  private readonly documents = new Map<string, TextDocument>();
  private readonly shown = new Map<string, readonly Diagnostic[]>();
  private settings: ServerSettings = { ...DEFAULT_SETTINGS, delay: 0 };
  private engine: EngineClient;
  private checker: StencilChecker;

  constructor() {
    [this.engine, this.checker] = this.start();
  }

  private start(): [EngineClient, StencilChecker] {
    const engine = localEngine();
    const { documents, onDisk, shown } = this;
    const files: Files = { stampOf: (uri) => onDisk.get(uri), textOf: (uri) => onDisk.get(uri) };
    const checker = new StencilChecker(
      { get: (uri) => documents.get(uri), all: () => [...documents.values()] },
      engine,
      {
        diagnostics: (uri, _, diagnostics) => shown.set(uri, diagnostics),
        checked: () => undefined,
        log: () => undefined,
        pageOf: () => undefined,
      },
      { files, workspace: WORKSPACE },
    );
    checker.configure(this.settings);
    return [engine, checker];
  }

  /** In place of the server there is a new one, which is told what is open. */
  restart(): void {
    this.dispose();
    this.shown.clear();
    [this.engine, this.checker] = this.start();
    for (const document of this.documents.values()) this.checker.changed(document);
  }

  dispose(): void {
    this.checker.dispose();
  }

  run(run: ServerSettings['run']): void {
    this.settings = { ...this.settings, run };
    this.checker.configure(this.settings);
  }

  /** On disk, and told of. */
  write(name: string, text: string): void {
    const uri = uriOf(name);
    this.onDisk.set(uri, text);
    if (isConfigUri(uri)) this.checker.configChanged();
    else this.checker.drawingChanged(uri);
  }

  /** Opens it, or puts this text in the place of the one that is open. */
  type(name: string, text: string): void {
    const uri = uriOf(name);
    const version = (this.documents.get(uri)?.version ?? 0) + 1;
    const document = TextDocument.create(uri, 'xml', version, text);
    this.documents.set(uri, document);
    this.checker.changed(document);
  }

  close(name: string): void {
    const document = this.documents.get(uriOf(name));
    this.documents.delete(uriOf(name));
    if (document) this.checker.closed(document);
  }

  /** Settles when a check is under way. */
  async checking(): Promise<void> {
    while (!this.engine.checking) await turn();
  }

  /** What stands under each file that has findings, once nothing is under way. */
  async settled(): Promise<Record<string, string[]>> {
    for (let quiet = 0; quiet < QUIET_TURNS; quiet += 1) {
      await turn();
      if (this.engine.checking) quiet = 0;
    }
    const told = [...this.shown].filter(([, diagnostics]) => diagnostics.length > 0);
    const named = told.map(([uri, diagnostics]) => [Utils.basename(URI.parse(uri)), diagnostics] as const);
    const sorted = named.sort(([a], [b]) => (a < b ? -1 : 1));
    return Object.fromEntries(
      sorted.map(([name, diagnostics]) => [name, diagnostics.map(({ message }) => String(message))]),
    );
  }
}
