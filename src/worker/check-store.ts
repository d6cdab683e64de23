/** The last check of each document and project, and what is offered in it. */
import { createEngine } from '../engine/index';
import type { CheckedFile, CheckRequest, ConfigFile } from '../protocol/engine-worker';
import type { CheckFacts } from '../protocol/facts';
import { CheckedDocument, isCalledStencil, type MemoryWatch, type SourceFile } from './documents/checked-document';
import { CheckedProject } from './documents/checked-project';
import { documentFactsOf, projectFactsOf } from './facts/document-facts';
import { DocumentFixes } from './fixes/document-fixes';

type Checked = CheckedDocument | CheckedProject;

export class CheckStore {
  /** The texts that were sent last, by their addresses. */
  private readonly texts = new Map<string, string>();
  private readonly checks = new Map<string, Checked>();
  private readonly documents = new Map<string, CheckedDocument>();
  private readonly fixes = new WeakMap<CheckedDocument, DocumentFixes>();
  /** One for all documents: what they need together has one bound. */
  private readonly engine = createEngine();
  private readonly memory: MemoryWatch;

  constructor(memory: MemoryWatch = {}) {
    this.memory = memory;
  }

  /** The files as they were sent: taken at once, since a later request may bring other texts. */
  sources(files: readonly CheckedFile[]): ReadonlyMap<string, SourceFile> {
    return new Map(
      files.map(({ name, uri, text = this.texts.get(uri) ?? '', ...file }) => {
        this.texts.set(uri, text);
        return [name, { ...file, uri, text }];
      }),
    );
  }

  /** @throws Stopped when whoever watches says so; what was known stays then */
  check({ key, config, project, always }: CheckRequest, sources: ReadonlyMap<string, SourceFile>): CheckFacts {
    if (project && config) return this.checkProject(key, config, sources);
    const [file] = sources.values();
    if (!file || !(always || isCalledStencil(file, config))) return NOTHING;
    const checked = CheckedDocument.check(file, config, this.engine, this.memory);
    this.keep(key, checked, [checked]);
    return { documents: [documentFactsOf(checked)], amiss: undefined, elapsed: checked.report.elapsed };
  }

  private checkProject(key: string, config: ConfigFile, sources: ReadonlyMap<string, SourceFile>): CheckFacts {
    const checked = CheckedProject.check(config, sources, this.engine, this.memory);
    this.keep(key, checked, [...checked.documents.values()]);
    return projectFactsOf(checked);
  }

  private keep(key: string, checked: Checked, documents: readonly CheckedDocument[]): void {
    this.forgetDocuments(key);
    this.checks.set(key, checked);
    for (const document of documents) this.documents.set(document.uri, document);
  }

  /** The last check of a document; with a version, only of that. */
  document(uri: string, version?: number): CheckedDocument | undefined {
    const found = this.documents.get(uri);
    return version === undefined || found?.version === version ? found : undefined;
  }

  /** The documents of the last check under a key. */
  documentsOf(key: string): CheckedDocument[] {
    const checked = this.checks.get(key);
    return checked instanceof CheckedProject ? [...checked.documents.values()] : checked ? [checked] : [];
  }

  fixesOf(checked: CheckedDocument): DocumentFixes {
    const known = this.fixes.get(checked) ?? new DocumentFixes(checked);
    this.fixes.set(checked, known);
    return known;
  }

  forget(key: string): void {
    for (const uri of [key, ...this.documentsOf(key).map((document) => document.uri)]) this.texts.delete(uri);
    this.forgetDocuments(key);
    this.checks.delete(key);
  }

  private forgetDocuments(key: string): void {
    for (const document of this.documentsOf(key)) {
      if (this.documents.get(document.uri) === document) this.documents.delete(document.uri);
    }
  }
}

const NOTHING: CheckFacts = { documents: [], amiss: undefined, elapsed: 0 };
