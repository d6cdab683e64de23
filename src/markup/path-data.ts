/** Reads SVG path data with the place of each command and each number. */
import type { Span } from '../text';
import { NumberReader, characterAt } from './number-reader';
import type { PathCommand, PathData, PathError, PathLetter } from './path-commands';

const PARAMETERS: Record<string, readonly string[]> = {
  M: ['x', 'y'],
  L: ['x', 'y'],
  H: ['x'],
  V: ['y'],
  C: ['x1', 'y1', 'x2', 'y2', 'x', 'y'],
  S: ['x2', 'y2', 'x', 'y'],
  Q: ['x1', 'y1', 'x', 'y'],
  T: ['x', 'y'],
  A: ['rx', 'ry', 'the turn in degrees', 'the large-arc flag', 'the sweep flag', 'x', 'y'],
  Z: [],
};

/** The parameters by letter, of either case. */
const PARAMETERS_OF: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries(PARAMETERS).flatMap(([upper, names]) => [[upper, names], [upper.toLowerCase(), names]] as const),
);

const LETTERS_BY_CODE: readonly (PathLetter | undefined)[] = lettersByCode();
const ZERO = 48;
const ONE = 49;

function lettersByCode(): (PathLetter | undefined)[] {
  const letters: (PathLetter | undefined)[] = [];
  for (const upper of Object.keys(PARAMETERS)) {
    for (const letter of [upper, upper.toLowerCase()]) letters[letter.charCodeAt(0)] = letter as PathLetter;
  }
  return letters;
}

/** How many parameters one set of the command takes: 7 for an arc, 0 for Z. */
export function parameterCount(letter: PathLetter): number {
  return PARAMETERS_OF.get(letter)!.length;
}

/**
 * Reads path data (SVG 2, "The grammar for path data"): all whole commands up to the first error, as a renderer draws
 * them ("Error handling in path data"). Spans are offsets in `data`. Empty data and `none` give no commands, no error.
 */
export function parsePathData(data: string): PathData {
  return new PathReader(data).read();
}

class PathReader {
  private readonly commands: PathCommand[] = [];
  private readonly numbers: NumberReader;
  private error: PathError | undefined;

  constructor(private readonly data: string) {
    this.numbers = new NumberReader(data);
  }

  read(): PathData {
    if (this.data.trim() === 'none') return { commands: [], error: undefined };
    this.numbers.skipBlanks();
    while (!this.numbers.atEnd && this.readCommand()) this.numbers.skipBlanks();
    return { commands: this.commands, error: this.error };
  }

  /** Reads a letter and all sets of numbers after it; false after an error. */
  private readCommand(): boolean {
    const from = this.numbers.position;
    const letter = LETTERS_BY_CODE[this.numbers.code];
    if (letter === undefined) return this.failWithoutLetter();
    if (this.commands.length === 0 && letter !== 'M' && letter !== 'm') {
      return this.fail(`A path must begin with M or m, not with ${letter}.`, { from, to: from + 1 });
    }
    this.numbers.position++;
    if (letter === 'Z' || letter === 'z') {
      this.commands.push({ letter, written: true, values: [], valueSpans: [], span: { from, to: from + 1 } });
      return true;
    }
    this.numbers.skipBlanks();
    return this.readSets(letter, from);
  }

  private readSets(written: PathLetter, letterFrom: number): boolean {
    const first = this.readSet(written, letterFrom, true);
    if (first === undefined) return false;
    this.commands.push(first);
    const repeated = written === 'M' ? 'L' : written === 'm' ? 'l' : written;
    for (;;) {
      const comma = this.numbers.skipSeparator();
      if (!this.numbers.atNumber) {
        if (comma < 0) return true;
        return this.fail('A number was expected after this comma.', { from: comma, to: comma + 1 });
      }
      const next = this.readSet(repeated, this.numbers.position, false);
      if (next === undefined) return false;
      this.commands.push(next);
    }
  }

  private readSet(letter: PathLetter, from: number, written: boolean): PathCommand | undefined {
    const count = parameterCount(letter);
    const isArc = letter === 'A' || letter === 'a';
    const values: number[] = [];
    const valueSpans: Span[] = [];
    for (let index = 0; index < count; index++) {
      if (index > 0) this.numbers.skipSeparator();
      const valueFrom = this.numbers.position;
      const value = isArc && (index === 3 || index === 4) ? this.readFlag() : this.numbers.readNumber();
      if (!Number.isFinite(value)) {
        this.failInSet(letter, value, valueFrom, { from, to: valueSpans.at(-1)?.to ?? from + 1 }, index);
        return undefined;
      }
      values.push(value);
      valueSpans.push({ from: valueFrom, to: this.numbers.position });
    }
    return { letter, written, values, valueSpans, span: { from, to: this.numbers.position } };
  }

  /** A flag is the one character 0 or 1; nothing need stand between it and what follows. */
  private readFlag(): number {
    const code = this.numbers.code;
    if (code !== ZERO && code !== ONE) return NaN;
    this.numbers.position++;
    return code - ZERO;
  }

  private failWithoutLetter(): boolean {
    const { position } = this.numbers;
    if (this.numbers.atNumber) {
      this.numbers.readNumber();
      const span = { from: position, to: this.numbers.position };
      const text = this.data.slice(span.from, span.to);
      if (this.commands.length === 0) return this.fail(`A path must begin with M or m, not with ${quote(text)}.`, span);
      return this.fail(`The number ${text} cannot follow Z: a command letter was expected.`, span);
    }
    const character = characterAt(this.data, position);
    const span = { from: position, to: position + character.length };
    if (this.commands.length === 0) {
      return this.fail(`A path must begin with M or m, not with ${quote(character)}.`, span);
    }
    return this.fail(`${quote(character)} is no path command: a letter of M L H V C S Q T A Z was expected.`, span);
  }

  /** `soFar`: what was read of the set; `value`: NaN where there is no number, infinite where it is too large. */
  private failInSet(letter: PathLetter, value: number, at: number, soFar: Span, index: number): void {
    const parameters = PARAMETERS_OF.get(letter)!;
    const missing = parameters[index]!;
    const character = characterAt(this.data, at);
    if (!Number.isNaN(value)) {
      this.fail('This number is too large to be drawn.', { from: at, to: this.numbers.position });
    } else if (character === '' || LETTERS_BY_CODE[this.data.charCodeAt(at)] !== undefined) {
      this.fail(`${letter} needs ${enumerate(parameters)}: ${missing} is missing.`, soFar);
    } else {
      const span = { from: at, to: at + character.length };
      const isFlag = missing.endsWith('flag');
      const message = isFlag
        ? `In ${letter}, ${missing} is 0 or 1, not ${quote(character)}.`
        : `${letter} needs ${enumerate(parameters)}: a number, ${missing}, was expected, not ${quote(character)}.`;
      this.fail(message, span);
    }
  }

  private fail(message: string, span: Span): false {
    this.error = { message, span };
    return false;
  }
}

function quote(text: string): string {
  return `“${text}”`;
}

function enumerate(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
