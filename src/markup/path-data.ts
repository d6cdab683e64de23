/** Reads SVG path data with the place of each command and each number. */
import { checkpoint } from '../base/checkpoint';
import type { Span } from '../text/text';
import { NAME_ROOM, quoted, shortened } from '../text/wording';
import { characterAt, NumberReader } from './number-reader';
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
  A: ['rx', 'ry', 'rotation', 'large-arc flag', 'sweep flag', 'x', 'y'],
  Z: [],
};

/** What a letter of path data stands for. */
interface CommandKind {
  readonly letter: PathLetter;
  readonly parameters: readonly string[];
  /** What further sets of parameters without a letter stand for. */
  readonly repeated: PathLetter;
  readonly isArc: boolean;
}

const KINDS: ReadonlyMap<PathLetter, CommandKind> = new Map(
  Object.entries(PARAMETERS).flatMap(([upper, parameters]) =>
    ([upper, upper.toLowerCase()] as PathLetter[]).map((letter) => [letter, kindOf(letter, parameters)] as const),
  ),
);

/** By the letter's character code. */
const KINDS_BY_CODE: readonly (CommandKind | undefined)[] = Array.from({ length: 128 }, (_, code) =>
  KINDS.get(String.fromCharCode(code) as PathLetter),
);

const ZERO = 48;
const ONE = 49;

function kindOf(letter: PathLetter, parameters: readonly string[]): CommandKind {
  const repeated = letter === 'M' ? 'L' : letter === 'm' ? 'l' : letter;
  return { letter, parameters, repeated, isArc: letter === 'A' || letter === 'a' };
}

/** How many parameters one set of the command takes: 7 for an arc, 0 for Z. */
function parameterCount(letter: PathLetter): number {
  return KINDS.get(letter)!.parameters.length;
}

/** The command that was read last. The reader writes the next one over it, so that millions of them cost no memory. */
export interface CurrentCommand {
  readonly letter: PathLetter;
  /** False where the letter was left out because it repeats. */
  readonly written: boolean;
  /** As many as the letter takes count; those behind are left from earlier commands. */
  readonly values: readonly number[];
  /** Where each value begins and ends in the path data. */
  readonly valueFrom: readonly number[];
  readonly valueTo: readonly number[];
  readonly from: number;
  readonly to: number;
}

/**
 * Reads path data (SVG 2, "The grammar for path data"): all whole commands up to the first error, as a renderer draws
 * them ("Error handling in path data"). Spans are offsets in `data`. Empty data and `none` give no commands, no error.
 */
export function parsePathData(data: string): PathData {
  const commands: PathCommand[] = [];
  const error = readPathData(data, (command) => commands.push(lastingCommand(command)));
  return { commands, error };
}

/** As `parsePathData`, but hands each command over as soon as it is read. Gives the error, if there is one. */
export function readPathData(data: string, take: (command: CurrentCommand) => void): PathError | undefined {
  return new PathReader(data, take).read();
}

function lastingCommand({ letter, written, values, valueFrom, valueTo, from, to }: CurrentCommand): PathCommand {
  const count = parameterCount(letter);
  const ownValues: number[] = [];
  const valueSpans: Span[] = [];
  for (let index = 0; index < count; index += 1) {
    ownValues.push(values[index]!);
    valueSpans.push({ from: valueFrom[index]!, to: valueTo[index]! });
  }
  return { letter, written, values: ownValues, valueSpans, span: { from, to } };
}

type WritableCommand = {
  -readonly [Key in keyof CurrentCommand]: CurrentCommand[Key] extends readonly number[]
    ? number[]
    : CurrentCommand[Key];
};

/** Of plain arrays: making typed ones takes longer than reading a short path. */
function makeCommand(): WritableCommand {
  const [values, valueFrom, valueTo] = [
    [0, 0, 0, 0, 0, 0, 0],
    [0, 0, 0, 0, 0, 0, 0],
    [0, 0, 0, 0, 0, 0, 0],
  ];
  return { letter: 'M', written: true, from: 0, to: 0, values, valueFrom, valueTo };
}

class PathReader {
  private readonly numbers: NumberReader;
  private readonly command = makeCommand();
  private empty = true;
  private error: PathError | undefined;

  private readonly data: string;
  private readonly take: (command: CurrentCommand) => void;

  constructor(data: string, take: (command: CurrentCommand) => void) {
    this.data = data;
    this.take = take;

    this.numbers = new NumberReader(data);
  }

  read(): PathError | undefined {
    if (this.data.trim() !== 'none') {
      this.numbers.skipBlanks();
      while (!this.numbers.atEnd && this.readCommand()) this.numbers.skipBlanks();
    }
    return this.error;
  }

  /** Reads a letter and all sets of numbers after it; false after an error. */
  private readCommand(): boolean {
    const from = this.numbers.position;
    const kind = KINDS_BY_CODE[this.numbers.code];
    if (kind === undefined) return this.failWithoutLetter();
    const { letter } = kind;
    if (this.empty && letter !== 'M' && letter !== 'm') {
      return this.fail(mustBegin(letter), { from, to: from + 1 });
    }
    this.numbers.position += 1;
    if (letter === 'Z' || letter === 'z') {
      this.emitCommand(letter, true, from);
      return true;
    }
    this.numbers.skipBlanks();
    return this.readSets(kind, from);
  }

  private emitCommand(letter: PathLetter, written: boolean, from: number): void {
    checkpoint(4);
    const { command } = this;
    command.letter = letter;
    command.written = written;
    command.from = from;
    command.to = this.numbers.position;
    this.empty = false;
    this.take(command);
  }

  private readSets(kind: CommandKind, letterFrom: number): boolean {
    if (!this.readSet(kind, kind.letter, letterFrom)) return false;
    this.emitCommand(kind.letter, true, letterFrom);
    for (;;) {
      const comma = this.numbers.skipSeparator();
      if (!this.numbers.atNumber) {
        if (comma < 0) return true;
        return this.fail('A number is missing after this comma.', { from: comma, to: comma + 1 });
      }
      const from = this.numbers.position;
      if (!this.readSet(kind, kind.repeated, from)) return false;
      this.emitCommand(kind.repeated, false, from);
    }
  }

  /** Reads one set of values into the command; false after an error. */
  private readSet({ parameters, isArc }: CommandKind, letter: PathLetter, from: number): boolean {
    const {
      numbers,
      command: { values, valueFrom, valueTo },
    } = this;
    const count = parameters.length;
    for (let index = 0; index < count; index += 1) {
      if (index > 0) numbers.skipSeparator();
      const at = numbers.position;
      const value = isArc && (index === 3 || index === 4) ? this.readFlag() : numbers.readNumber();
      if (!Number.isFinite(value)) {
        this.failInSet(letter, value, at, { from, to: index > 0 ? valueTo[index - 1]! : from + 1 }, index);
        return false;
      }
      values[index] = value;
      valueFrom[index] = at;
      valueTo[index] = numbers.position;
    }
    return true;
  }

  /** A flag is the one character 0 or 1; nothing need stand between it and what follows. */
  private readFlag(): number {
    const code = this.numbers.code;
    if (code !== ZERO && code !== ONE) return NaN;
    this.numbers.position += 1;
    return code - ZERO;
  }

  private failWithoutLetter(): boolean {
    const { position } = this.numbers;
    if (this.numbers.atNumber) {
      this.numbers.readNumber();
      const span = { from: position, to: this.numbers.position };
      const text = this.data.slice(span.from, span.to);
      if (this.empty) return this.fail(mustBegin(text), span);
      return this.fail(
        `The number ${shortened(text, NAME_ROOM)} cannot follow Z: a command letter was expected.`,
        span,
      );
    }
    const character = characterAt(this.data, position);
    const span = { from: position, to: position + character.length };
    if (this.empty) {
      return this.fail(mustBegin(character), span);
    }
    return this.fail(`"${character}" is not a path command: one of M L H V C S Q T A Z was expected.`, span);
  }

  /** `soFar`: what was read of the set; `value`: NaN where there is no number, infinite where it is too large. */
  private failInSet(letter: PathLetter, value: number, at: number, soFar: Span, index: number): void {
    const { parameters } = KINDS.get(letter)!;
    const missing = parameters[index]!;
    const character = characterAt(this.data, at);
    if (!Number.isNaN(value)) {
      this.fail('This number is too large to draw.', { from: at, to: this.numbers.position });
    } else if (character === '' || KINDS_BY_CODE[this.data.charCodeAt(at)] !== undefined) {
      this.fail(`${letter} needs ${enumerate(parameters)}: ${missing} is missing.`, soFar);
    } else {
      const span = { from: at, to: at + character.length };
      const isFlag = missing.endsWith('flag');
      const message = isFlag
        ? `The ${missing} of ${letter} must be 0 or 1, not "${character}".`
        : `${letter} needs ${enumerate(parameters)}: ${missing} must be a number, not "${character}".`;
      this.fail(message, span);
    }
  }

  private fail(message: string, span: Span): false {
    this.error = { message, span };
    return false;
  }
}

function mustBegin(found: string): string {
  return `A path must begin with M or m, not with ${quoted([found])[0]}.`;
}

function enumerate(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
