/** All files of a project, checked together: those that are open as they stand in the editor, the others from disk. */
import path from 'node:path';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import type { Config } from '../../config/types';
import {
  type ConfigProblem,
  checkProject,
  layerProblems,
  type ProjectReport,
  projectFiles,
  readConfig,
  unusedAcceptances,
} from '../../engine/index';
import { CheckedDocument } from './checked-document';
import type { FoundConfig } from './find-config';

/** A document of the project as it is now. */
export type ReadDocument = (uri: string) => { readonly document: TextDocument; readonly open: boolean } | undefined;

export class CheckedProject {
  readonly config: FoundConfig;
  readonly report: ProjectReport;
  /** By the project's names for them. */
  readonly documents: ReadonlyMap<string, CheckedDocument>;
  /** All documents that the project names, those that are not there too. */
  readonly named: ReadonlySet<string>;

  private constructor(
    config: FoundConfig,
    report: ProjectReport,
    documents: ReadonlyMap<string, CheckedDocument>,
    named: ReadonlySet<string>,
  ) {
    this.config = config;
    this.report = report;
    this.documents = documents;
    this.named = named;
  }

  /**
   * Checks the files as they stand. Synchronous; takes as long as the engine takes.
   * @param earlier the last check of this project: what did not change is not measured again
   */
  static check(found: FoundConfig, read: ReadDocument, earlier?: CheckedProject): CheckedProject {
    const { config } = readConfig(found.text);
    const uris = documentsOf(found, config);
    const there = [...uris].flatMap(([name, uri]) => {
      const known = read(uri);
      return known ? [{ name, ...known }] : [];
    });
    const texts = new Map(there.map(({ name, document }) => [name, document.getText()]));
    const report = checkProject(texts, { config }, earlier?.report);
    const documents = new Map<string, CheckedDocument>();
    const project = new CheckedProject(found, report, documents, new Set(uris.values()));
    for (const { name, document, open } of there) {
      const part = report.files.get(name);
      if (part) documents.set(name, CheckedDocument.ofProject(document, open, part, project));
    }
    return project;
  }

  /** Whether the reports are about the texts that are in the editor now. */
  get current(): boolean {
    return [...this.documents.values()].every((each) => each.upToDate);
  }

  document(uri: string): CheckedDocument | undefined {
    return [...this.documents.values()].find(({ document }) => document.uri === uri);
  }

  /**
   * What only shows when the files are looked at: layers that name nothing, acceptances that accept nothing.
   * @param text of the `tombolo.json`, where it is another by now
   */
  problems(text = this.config.text): ConfigProblem[] {
    return [...layerProblems(text, this.report.faults), ...unusedAcceptances(text, this.report)];
  }
}

/** The documents that a `tombolo.json` names, by its names for them; none where it has no layers. */
export function documentsOf({ uri }: FoundConfig, config: Config): ReadonlyMap<string, string> {
  const folder = path.dirname(URI.parse(uri).fsPath);
  return new Map(projectFiles(config).map((name) => [name, URI.file(path.join(folder, name)).toString()]));
}

/** Whether a document is part of the project that a `tombolo.json` makes. */
export function namesDocument(found: FoundConfig, uri: string): boolean {
  return [...documentsOf(found, readConfig(found.text).config).values()].includes(uri);
}
