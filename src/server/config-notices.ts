/** Publishes what is wrong with each `tombolo.json` that is open or in force for an open stencil. */
import type { Diagnostic } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { readConfig } from '../sheet/read-config';
import { configDiagnosticOf } from './diagnostics';
import type { FoundConfig } from './find-config';

export class ConfigNotices {
  /** The text that the published diagnostics of each file are about. */
  private readonly published = new Map<string, string>();

  constructor(private readonly publish: (uri: string, diagnostics: Diagnostic[]) => void) {}

  show({ uri, text }: FoundConfig): void {
    if (this.published.get(uri) === text) return;
    const document = TextDocument.create(uri, 'json', 0, text);
    this.publish(uri, readConfig(text).problems.map((problem) => configDiagnosticOf(problem, document)));
    this.published.set(uri, text);
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
