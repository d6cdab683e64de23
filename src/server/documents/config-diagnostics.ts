/** Publishes what is wrong with each `tombolo.json` that is open or in force for an open stencil. */
import type { Diagnostic } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ConfigProblem } from '../../config/read';
import type { PageOf } from '../host/platform';
import { configDiagnosticOf } from './diagnostics';
import type { FoundConfig } from './find-config';
import type { KnownConfigs } from './known-configs';

/** Where what is wrong comes from, and where it goes. */
export interface ConfigDiagnosticsSurroundings {
  readonly configs: KnownConfigs;
  /** The address of a page, where there is one. */
  readonly pageOf: PageOf;
  /** What only shows when the files that it names are looked at, as far as it is known. */
  faultsOf(config: FoundConfig): readonly ConfigProblem[];
  publish(uri: string, diagnostics: Diagnostic[]): void;
}

export class ConfigDiagnostics {
  /** What each file's published diagnostics are about. */
  private readonly published = new Map<string, string>();
  private readonly around: ConfigDiagnosticsSurroundings;

  constructor(around: ConfigDiagnosticsSurroundings) {
    this.around = around;
  }

  /**
   * Each file in use as it stands now: whichever check has asked for it may have read an earlier text, or nothing of the
   * files that it names. The diagnostics of all others are cleared.
   * @param inUse addresses of `tombolo.json` files
   */
  show(inUse: ReadonlySet<string>): void {
    for (const uri of inUse) {
      const found = this.around.configs.find(uri);
      if (found?.uri === uri) this.showOne(found);
    }
    for (const uri of [...this.published.keys()]) {
      if (inUse.has(uri)) continue;
      this.around.publish(uri, []);
      this.published.delete(uri);
    }
  }

  private showOne(found: FoundConfig): void {
    const { configs, pageOf, publish } = this.around;
    const { uri, text } = found;
    const faults = this.around.faultsOf(found);
    const about = JSON.stringify([text, faults]);
    const before = this.published.get(uri);
    if (before === about) return;
    this.published.set(uri, about);
    const document = TextDocument.create(uri, 'json', 0, text);
    const problems = [...configs.read(found).problems, ...faults];
    // Of a file that has always been right, there is nothing to tell.
    if (problems.length === 0 && before === undefined) return;
    publish(
      uri,
      problems.map((problem) => configDiagnosticOf(problem, document, pageOf)),
    );
  }
}
