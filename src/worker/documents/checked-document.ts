/** One version of a document with its report. */
import { check, isStencil } from '../../engine/index';
import type { ConfigFile } from '../../protocol/engine-worker';
import type { Report } from '../../report/report';

/** A document as it stood when it was checked. */
export interface SourceFile {
  readonly uri: string;
  /** 0 for a file that is not open in the editor. */
  readonly version: number;
  /** Whether it is open in the editor. */
  readonly open: boolean;
  readonly text: string;
}

/** What a document asks of the project that it was checked with. */
export interface ProjectOfDocument {
  readonly config: ConfigFile;
  readonly documents: ReadonlyMap<string, CheckedDocument>;
}

export class CheckedDocument {
  readonly file: SourceFile;
  readonly stencil: boolean;
  readonly config: ConfigFile | undefined;
  readonly report: Report;
  readonly project: ProjectOfDocument | undefined;

  private constructor(
    file: SourceFile,
    stencil: boolean,
    config: ConfigFile | undefined,
    report: Report,
    project?: ProjectOfDocument,
  ) {
    this.file = file;
    this.stencil = stencil;
    this.config = config;
    this.report = report;
    this.project = project;
  }

  /**
   * Checks a document by itself. Takes as long as the engine takes.
   * @param earlier the last check of this document: its unchanged layers are not measured again
   * @throws Stopped when whoever watches says so
   */
  static check(file: SourceFile, config: ConfigFile | undefined, earlier?: CheckedDocument): CheckedDocument {
    const report = check(file.text, config ? { config: config.config } : {}, earlier?.report);
    return new CheckedDocument(file, config !== undefined || isStencil(file.text), config, report);
  }

  /** A file of a project that was checked. */
  static ofProject(file: SourceFile, report: Report, project: ProjectOfDocument): CheckedDocument {
    return new CheckedDocument(file, true, project.config, report, project);
  }

  get uri(): string {
    return this.file.uri;
  }

  get version(): number {
    return this.file.version;
  }

  /** All documents of its project, this one first. */
  documents(): CheckedDocument[] {
    return [this, ...[...(this.project?.documents.values() ?? [])].filter((each) => each !== this)];
  }

  /** The document that the stack knows under a name. */
  named(name: string): CheckedDocument | undefined {
    return this.project ? this.project.documents.get(name) : this;
  }
}
