/** All files of a project, checked together: those that are open as they stand in the editor, the others from disk. */
import { createEngine, type Engine, type ProjectReport } from '../../engine/index';
import type { ConfigFile } from '../../protocol/engine-worker';
import { CheckedDocument, type MemoryWatch, type SourceFile } from './checked-document';

export class CheckedProject {
  readonly config: ConfigFile;
  readonly report: ProjectReport;
  /** By the project's names for them. */
  readonly documents: ReadonlyMap<string, CheckedDocument>;

  private constructor(config: ConfigFile, report: ProjectReport, documents: ReadonlyMap<string, CheckedDocument>) {
    this.config = config;
    this.report = report;
    this.documents = documents;
  }

  /**
   * Checks the files as they stand. Takes as long as the engine takes.
   * @param files those that are there, by the project's names for them
   * @param engine remembers what was worked out for its last check: what did not change is not measured again
   * @throws Stopped when whoever watches says so
   */
  static check(
    config: ConfigFile,
    files: ReadonlyMap<string, SourceFile>,
    engine: Engine = createEngine(),
    memory: MemoryWatch = {},
  ): CheckedProject {
    const texts = new Map([...files].map(([name, { text }]) => [name, text]));
    const report = engine.checkProject(texts, { ...memory, config: config.config }, config.uri);
    const documents = new Map<string, CheckedDocument>();
    const project = new CheckedProject(config, report, documents);
    for (const [name, file] of files) {
      const part = report.files.get(name);
      if (part) documents.set(name, CheckedDocument.ofProject(file, part, project));
    }
    return project;
  }
}
