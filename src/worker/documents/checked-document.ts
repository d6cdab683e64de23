/** One version of a document with its report. */
import {
  createEngine,
  type Engine,
  FROM_ATTRIBUTE,
  type GeneratorMarks,
  type Generators,
  generatorsOf,
  isPicture,
  isStencil,
  type Settings,
} from '../../engine/index';
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
  /** What a program that was watched left of this text. */
  readonly marks?: GeneratorMarks;
}

/** How the host says what memory a run may use. */
export type MemoryWatch = Pick<Settings, 'memoryInUse' | 'memoryBudget'>;

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
  private known: Generators | undefined;

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
   * @param engine remembers what was worked out for its last check: what did not change is not measured again
   * @throws Stopped when whoever watches says so
   */
  static check(
    file: SourceFile,
    config: ConfigFile | undefined,
    engine: Engine = createEngine(),
    memory: MemoryWatch = {},
  ): CheckedDocument {
    const settings = config && { config: config.config, file: nameBeside(config.uri, file.uri) };
    const report = engine.check(file.text, { ...memory, ...settings }, file.uri);
    return new CheckedDocument(file, isCalledStencil(file, config), config, report);
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

  /** What draws it. */
  get generators(): Generators {
    this.known ??= generatorsOf(this.report.drawing.document, this.file.marks);
    return this.known;
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

/** Whether somebody has called it a stencil: its root, a `tombolo.json`, or the program that draws it. */
export function isCalledStencil({ text, marks }: SourceFile, config: ConfigFile | undefined): boolean {
  if (isStencil(text)) return true;
  return !isPicture(text) && (config !== undefined || marks !== undefined || text.includes(FROM_ATTRIBUTE));
}

/** What a `tombolo.json` calls a document that lies in its folder or below; the whole address of any other. */
function nameBeside(config: string, uri: string): string {
  const folder = config.slice(0, config.lastIndexOf('/') + 1);
  if (!uri.startsWith(folder)) return uri;
  try {
    return decodeURIComponent(uri.slice(folder.length));
  } catch {
    return uri.slice(folder.length);
  }
}
