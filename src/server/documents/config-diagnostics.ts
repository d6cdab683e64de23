/** Publishes what is wrong with each `tombolo.json` that is open or in force for an open stencil. */
import type { Diagnostic } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ConfigProblem } from '../../config/read';
import type { PageOf } from '../host/platform';
import { configDiagnosticOf } from './diagnostics';
import type { FoundConfig } from './find-config';

export class ConfigDiagnostics {
  /** What each file's published diagnostics are about. */
  private readonly published = new Map<string, string>();

  private readonly pageOf: PageOf;
  private readonly problemsOf: (config: FoundConfig) => readonly ConfigProblem[];
  private readonly publish: (uri: string, diagnostics: Diagnostic[]) => void;

  /** @param pageOf the address of a page, where there is one */
  constructor(
    pageOf: PageOf,
    problemsOf: (config: FoundConfig) => readonly ConfigProblem[],
    publish: (uri: string, diagnostics: Diagnostic[]) => void,
  ) {
    this.pageOf = pageOf;
    this.problemsOf = problemsOf;
    this.publish = publish;
  }

  /** @param more problems that only show when the files that it names are looked at */
  show({ uri, text }: FoundConfig, more: readonly ConfigProblem[] = []): void {
    const about = JSON.stringify([text, more]);
    if (this.published.get(uri) === about) return;
    const document = TextDocument.create(uri, 'json', 0, text);
    const problems = [...this.problemsOf({ uri, text }), ...more];
    this.publish(
      uri,
      problems.map((problem) => configDiagnosticOf(problem, document, this.pageOf)),
    );
    this.published.set(uri, about);
  }

  /** Clears the diagnostics of every file that is not among those in use. */
  keepOnly(inUse: ReadonlySet<string>): void {
    for (const uri of [...this.published.keys()]) {
      if (inUse.has(uri)) continue;
      this.publish(uri, []);
      this.published.delete(uri);
    }
  }
}
