/** The checker and the engine for one document, all in the thread of the test. */
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { KnownDocument } from '../../src/server/documents/known-document';
import { StencilChecker } from '../../src/server/documents/stencil-checker';
import { Workspace } from '../../src/server/documents/workspace';
import type { EngineClient } from '../../src/server/engine/engine-client';
import type { ResolveSources } from '../../src/server/features/resolve-action';
import { NODE_FILES } from '../../src/server/host/node-files';
import { localEngine } from './local-engine';

export class LocalServer {
  /** As it stands in the editor. */
  live: TextDocument;
  readonly engine: EngineClient;
  readonly checker: StencilChecker;

  constructor(uri: string, text: string) {
    this.live = TextDocument.create(uri, 'xml', 3, text);
    this.engine = localEngine({ offers: (facts) => this.checker.offered(facts) });
    const documents = { get: (asked: string) => (asked === uri ? this.live : undefined), all: () => [this.live] };
    this.checker = new StencilChecker(
      documents,
      this.engine,
      {
        diagnostics: () => undefined,
        checked: () => undefined,
        log: () => undefined,
        pageOf: () => undefined,
      },
      { files: NODE_FILES, workspace: new Workspace() },
    );
  }

  /** Another document instead. */
  open(text: string): void {
    this.live = TextDocument.create(this.live.uri, 'xml', 3, text);
  }

  /** What is known of the document, once it has been checked. */
  async known(): Promise<KnownDocument> {
    const known = await this.checker.facts(this.live.uri);
    if (!known) throw new Error('The document was not checked.');
    return known;
  }

  get sources(): ResolveSources {
    return { engine: this.engine, current: (uri) => this.checker.current(uri) };
  }

  dispose(): void {
    this.checker.dispose();
  }
}
