/** Programs that draw: which drawings are theirs, and what is found in those, at the lines that drew it. */
import type { Diagnostic } from 'vscode-languageserver';
import type { FindingId, GeneratorMarks } from '../../engine/index';
import type { Programs as ProgramList } from '../../protocol/programs';
import type { KnownDocument } from '../documents/known-document';
import type { Marks, PageOf, ProgramFiles, WatchMarks } from '../host/platform';
import { type PlacesOfDrawing, type ProgramFinding, programDiagnostic, programFindings } from './program-findings';

export interface ProgramsOutput {
  diagnostics(uri: string, diagnostics: Diagnostic[]): void;
  /** Said when they are others than before. */
  programs(list: ProgramList): void;
  /** Drawings that were made anew, or that nobody draws any more. */
  drawn(uris: ReadonlySet<string>): void;
  pageOf: PageOf;
}

/** What is known of one drawing. */
interface Drawing {
  /** By the address of the program, its names in the drawing. */
  readonly programs: ReadonlyMap<string, readonly string[]>;
  readonly findings: readonly ProgramFinding[];
}

export class Programs {
  private readonly outlet: ProgramsOutput;
  private readonly places: ProgramFiles;
  private readonly watchMarks: WatchMarks | undefined;
  private readonly drawings = new Map<string, Drawing>();
  private marks: Marks | undefined;
  private told = '';

  /** @param watchMarks not there where no program can run */
  constructor(places: ProgramFiles, outlet: ProgramsOutput, watchMarks?: WatchMarks) {
    this.places = places;
    this.watchMarks = watchMarks;
    this.outlet = outlet;
  }

  /** @param folder that watched programs leave their marks in */
  follow(folder: string): void {
    this.marks?.dispose();
    this.marks = this.watchMarks?.(folder, (uris) => this.outlet.drawn(uris));
  }

  /** Whether a watched program wrote it last. */
  isMarked(uri: string): boolean {
    return this.marks?.of(uri) !== undefined;
  }

  /** Whether a program is known that draws it. */
  isDrawn(uri: string): boolean {
    return this.isMarked(uri) || (this.drawings.get(uri)?.programs.size ?? 0) > 0;
  }

  marksOf(uri: string, text: string): GeneratorMarks | undefined {
    return this.marks?.marksOf(uri, text);
  }

  /**
   * Shows what was found in a drawing at the programs that draw it.
   * @returns what is told there
   */
  show(known: KnownDocument): ReadonlySet<FindingId> {
    const { uri } = known;
    const before = this.drawings.get(uri);
    // Of a text that its program has not finished, or that was changed since, nobody knows what drew it.
    const isBetween = this.isMarked(uri) && this.marksOf(uri, known.document.getText()) === undefined;
    const now = isBetween && before ? before : this.drawingOf(known);
    if (now.programs.size > 0) this.drawings.set(uri, now);
    else this.drawings.delete(uri);
    this.publish(before, now);
    return new Set(now.findings.flatMap(({ findings }) => findings.map(({ id }) => id)));
  }

  /** Nothing is known of a drawing any more, unless its program is at work on it. */
  drop(uri: string): void {
    if (this.isMarked(uri)) return;
    const before = this.drawings.get(uri);
    if (this.drawings.delete(uri)) this.publish(before, undefined);
  }

  /** The names that a drawing has for a program. */
  namesIn(drawing: string, program: string): readonly string[] {
    return this.drawings.get(drawing)?.programs.get(program) ?? [];
  }

  /** What is found in all that a program draws. */
  findingsOf(program: string): ProgramFinding[] {
    return [...this.drawings.values()].flatMap(({ findings }) => findings.filter(({ uri }) => uri === program));
  }

  isProgram(uri: string): boolean {
    return [...this.drawings.values()].some(({ programs }) => programs.has(uri));
  }

  drawingsOf(program: string): string[] {
    return [...this.drawings].flatMap(([uri, { programs }]) => (programs.has(program) ? [uri] : []));
  }

  placesOf(drawing: string): PlacesOfDrawing {
    const { places } = this;
    const root = this.marks?.of(drawing)?.root;
    const known = new Map<string, string | undefined>();
    return {
      places,
      uriOf: (name) => {
        if (!known.has(name)) known.set(name, places.uriOf(name, drawing, root));
        return known.get(name);
      },
    };
  }

  dispose(): void {
    this.marks?.dispose();
  }

  private drawingOf(known: KnownDocument): Drawing {
    const places = this.placesOf(known.uri);
    const programs = new Map<string, string[]>();
    for (const name of known.facts.programs) {
      const uri = places.uriOf(name);
      if (uri !== undefined) programs.set(uri, [...(programs.get(uri) ?? []), name]);
    }
    return { programs, findings: programFindings(known, places) };
  }

  private publish(before: Drawing | undefined, now: Drawing | undefined): void {
    const found = [...(before?.findings ?? []), ...(now?.findings ?? [])];
    for (const uri of new Set(found.map((finding) => finding.uri))) {
      const all = this.findingsOf(uri);
      this.outlet.diagnostics(
        uri,
        all.flatMap((each) => programDiagnostic(each, this.outlet.pageOf, this.placesOf(each.known.uri))),
      );
    }
    this.tellPrograms();
  }

  private tellPrograms(): void {
    const uris = [...new Set([...this.drawings.values()].flatMap(({ programs }) => [...programs.keys()]))];
    const programs = uris.map((uri) => ({ uri, drawings: this.drawingsOf(uri) }));
    const text = JSON.stringify(programs);
    if (text === this.told) return;
    this.told = text;
    this.outlet.programs({ programs });
  }
}
