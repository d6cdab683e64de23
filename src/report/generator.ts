/** Where a program draws what a drawing has. Plain data; the engine makes it, hosts show it. */

/** A stretch of a program's text. Lines and characters count from zero, in UTF-16 code units. */
export interface GeneratorPlace {
  /** Relative to the folder that the program ran in, with slashes. */
  readonly path: string;
  readonly range: { readonly start: TextPosition; readonly end: TextPosition };
}

export interface TextPosition {
  readonly line: number;
  readonly character: number;
}

export interface Generator extends GeneratorPlace {
  /** Which of all that is drawn there: "reed17, number 3 of 5 drawn here". */
  readonly drawn: string;
  /** The id of that, where it has one. */
  readonly id?: string;
  /** From where that was called, innermost first, where it is known. */
  readonly callers: readonly GeneratorPlace[];
}

/**
 * Places that a traced program left, beside the text that they were taken from. Each belongs to the element in whose
 * start tag it lies.
 */
export interface GeneratorMarks {
  /** Offsets in the text, rising. */
  readonly offsets: readonly number[];
  /** For each offset, `path:line:column` of the place and then of its callers, counted from one. */
  readonly places: readonly (readonly string[])[];
}

const PLACE = /^(.+):([1-9]\d{0,8}):([1-9]\d{0,8})$/s;

/** Reads `path:line:column`, counted from one as editors print it; undefined for anything else. */
export function parseGeneratorPlace(text: string): GeneratorPlace | undefined {
  const [, path, line, column] = PLACE.exec(text.trim()) ?? [];
  if (path === undefined) return undefined;
  const at = { line: Number(line) - 1, character: Number(column) - 1 };
  return { path, range: { start: at, end: at } };
}

/**
 * How far a place reaches in its line: over the start tag's name or the identifier that stands there.
 * @param rest the line from the place on
 * @returns UTF-16 code units
 */
export function reachOfPlace(rest: string): number {
  return /^<[^\s<>/'"`]*|^[\w$]*/.exec(rest)?.[0].length ?? 0;
}
