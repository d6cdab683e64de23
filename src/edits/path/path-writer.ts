/** Writes path commands one after the other, keeping track of where a reader of the new text would stand. */
import type { Point } from '../../geometry/base/curve-types';
import { RELATIVE_ROUNDING } from '../../geometry/base/tolerances';
import type { PathCommand, PathLetter } from '../../markup/path-commands';
import type { Span } from '../../text/text';
import type { AbsoluteCommand, StepPath } from './path-model';
import { commandText, formatNumber, gapBefore, hasLineBreak, type PathStyle, parametersText } from './path-style';

/** Either a stretch of the old text, or new text; `insteadOf` says which stretch of the old it stands for. */
export type TextPiece =
  | { readonly kind: 'copy'; readonly span: Span }
  | { readonly kind: 'new'; readonly text: string; readonly insteadOf?: Span };

export interface PathSource {
  readonly data: string;
  readonly commands: readonly PathCommand[];
  readonly absolute: readonly AbsoluteCommand[];
  readonly paths: readonly StepPath[];
  readonly style: PathStyle;
  /** Digits after the point for new points, in the element's user units. */
  readonly decimals: number;
  /** Whether a line is drawn along it. */
  readonly lined?: boolean;
}

/** A point to be written. */
export interface CommandEnd {
  readonly point: Point;
  readonly decimals: number;
  /** An end of one of the author's own curves, where untouched commands may go on: as many digits as it needs. */
  readonly exact: boolean;
}

export type DrawingLetter = 'M' | 'L' | 'C' | 'Q' | 'A';

const MAX_DIGITS = 15;

export class CommandWriter {
  readonly pieces: TextPiece[] = [];
  private current: Point = { x: 0, y: 0 };
  private start: Point = { x: 0, y: 0 };
  private control: AbsoluteCommand['after']['control'];
  private letter: PathLetter | undefined;
  private lastCopied: number | undefined;
  /** Line breaks of the author's stand in one place only. */
  private readonly brokenBefore = new Set<number>();
  private breakOwed: string | undefined;

  private readonly source: PathSource;

  constructor(source: PathSource) {
    this.source = source;
  }

  /** Whether the last command was written relative; `undefined` before the first. */
  get relative(): boolean | undefined {
    return this.letter && this.letter !== this.letter.toUpperCase();
  }

  /** Whether a subpath beginning at `point` needs no move. */
  continuesAt(point: Point): boolean {
    return this.letter?.toUpperCase() === 'Z' && isNear(this.current, point);
  }

  /** What is written next begins a line, as the author's command of that number does. */
  breakAs(index: number): void {
    const gap = this.ownGap(index);
    if (gap !== undefined && hasLineBreak(gap)) this.breakOwed = gap;
  }

  /** Copies a command of the author's if it means the same here; else does nothing and returns false. */
  copy(index: number): boolean {
    const command = this.source.commands[index];
    const meaning = this.source.absolute[index];
    if (!command || !meaning || !this.meansTheSame(command, meaning)) return false;
    this.append(index, command);
    this.letter = command.letter;
    this.lastCopied = index;
    this.current = meaning.after.current;
    this.start = command.letter.toUpperCase() === 'M' ? this.current : this.start;
    this.control = meaning.after.control;
    return true;
  }

  /** Copies a `Z`: it means the same wherever the subpath has the same start. */
  copyClose(index: number): void {
    const command = this.source.commands[index];
    if (!command) return;
    this.append(index, command);
    this.lastCopied = index;
    this.closed(command.letter);
  }

  close(letter: 'Z' | 'z'): void {
    this.pushText(letter, [], undefined);
    this.closed(letter);
  }

  /**
   * Level and upright lines become `H` and `V`, where the author has such.
   * @param origin the author's command that it stands for
   */
  line(to: CommandEnd, relative: boolean, origin?: number): void {
    const level = this.aligned(to, 'y');
    const upright = this.aligned(to, 'x');
    if (level && upright) return;
    if ((!level && !upright) || !this.source.style.shortLines) {
      return this.command('L', [], to, relative, origin);
    }
    const axis = level ? 'x' : 'y';
    const number = this.number(to, axis, relative);
    this.pushText(withCase(level ? 'H' : 'V', relative), [number], origin);
    const value = Number(number) + (relative ? this.current[axis] : 0);
    this.moveCurrentPoint(withCase(level ? 'H' : 'V', relative), { ...this.current, [axis]: value }, to);
  }

  /**
   * @param before what stands before the end point: control points or the numbers of an arc
   * @param origin the author's command that it stands for
   */
  command(
    letter: DrawingLetter,
    before: readonly (CommandEnd | string)[],
    to: CommandEnd,
    relative: boolean,
    origin?: number,
  ): void {
    const lead = before.flatMap((part) => (typeof part === 'string' ? [part] : this.pair(part, relative)));
    const end = this.pair(to, relative);
    this.pushText(withCase(letter, relative), [...lead, ...end], origin);
    const base = relative ? this.current : { x: 0, y: 0 };
    this.moveCurrentPoint(withCase(letter, relative), { x: base.x + Number(end[0]), y: base.y + Number(end[1]) }, to);
    if (letter === 'M') this.start = this.current;
    const last = before.at(-1);
    if (typeof last === 'object' && letter !== 'A') {
      this.control = { kind: letter === 'C' ? 'cubic' : 'quadratic', point: last.point };
    }
  }

  private meansTheSame(command: PathCommand, { before }: AbsoluteCommand): boolean {
    const kind = command.letter.toUpperCase();
    if (kind === 'Z') return false;
    if (command.letter === 'M') return true;
    if (!isNear(this.current, before.current)) return false;
    return (kind !== 'S' && kind !== 'T') || sameControl(this.control, before.control, kind);
  }

  private append(index: number, command: PathCommand): void {
    const last = this.pieces.at(-1);
    if (last?.kind === 'copy' && this.lastCopied === index - 1 && this.breakOwed === undefined) {
      this.pieces[this.pieces.length - 1] = { kind: 'copy', span: { from: last.span.from, to: command.span.to } };
      return;
    }
    const implied = !command.written && impliedAfter(this.letter) === command.letter;
    const letter = command.written || implied ? '' : command.letter;
    this.pushNew(
      this.gapFor(command.letter, index, implied ? this.source.data[command.span.from] : undefined) + letter,
    );
    this.pieces.push({ kind: 'copy', span: command.span });
  }

  private pushText(letter: PathLetter, numbers: readonly string[], origin: number | undefined): void {
    const { style, commands } = this.source;
    const implied = style.impliesRepeats && numbers.length > 0 && impliedAfter(this.letter) === letter;
    const text = implied ? parametersText(letter, numbers, style) : commandText(letter, numbers, style);
    this.pushNew(this.gapFor(letter, origin, implied ? numbers[0] : undefined));
    const insteadOf = origin === undefined ? undefined : commands[origin]?.span;
    this.pieces.push({ kind: 'new', text, ...(insteadOf && { insteadOf }) });
    this.lastCopied = undefined;
  }

  private pushNew(text: string): void {
    if (text !== '') this.pieces.push({ kind: 'new', text });
  }

  /**
   * What stands before a command: what stood before the author's own, line breaks once.
   * @param first what it begins with, where its letter is left out
   */
  private gapFor(letter: PathLetter, origin: number | undefined, first: string | undefined): string {
    const owed = this.breakOwed;
    this.breakOwed = undefined;
    if (this.pieces.length === 0) return '';
    const { style } = this.source;
    const own = origin === undefined || this.brokenBefore.has(origin) ? undefined : this.ownGap(origin);
    if (origin !== undefined && own !== undefined && hasLineBreak(own)) {
      this.brokenBefore.add(origin);
      return own;
    }
    if (owed !== undefined) return owed;
    if (first !== undefined) return gapBefore(first, style.betweenSets || ' ', style);
    if (own !== undefined && this.source.commands[origin ?? -1]?.written) return own;
    return letter.toUpperCase() === 'M' ? style.beforeMove : style.beforeLetter;
  }

  /** The blanks before a command of the author's; undefined for the first. */
  private ownGap(index: number): string | undefined {
    const { data, commands } = this.source;
    const [before, command] = [commands[index - 1], commands[index]];
    return before && command && data.slice(before.span.to, command.span.from).replace(',', '');
  }

  private moveCurrentPoint(letter: PathLetter, written: Point, to: CommandEnd): void {
    this.current = to.exact && isNear(written, to.point) ? to.point : written;
    this.letter = letter;
    this.control = undefined;
  }

  private closed(letter: PathLetter): void {
    this.current = this.start;
    this.letter = letter;
    this.control = undefined;
  }

  private aligned(to: CommandEnd, axis: 'x' | 'y'): boolean {
    const gap = Math.abs(to.point[axis] - this.current[axis]);
    return to.exact ? gap <= RELATIVE_ROUNDING * (1 + Math.abs(to.point[axis])) : gap < 0.5 * 10 ** -to.decimals;
  }

  private pair(target: CommandEnd, relative: boolean): [string, string] {
    return [this.number(target, 'x', relative), this.number(target, 'y', relative)];
  }

  private number(target: CommandEnd, axis: 'x' | 'y', relative: boolean): string {
    const value = target.point[axis] - (relative ? this.current[axis] : 0);
    let digits = target.decimals;
    const enough = RELATIVE_ROUNDING * (1 + Math.abs(target.point[axis]));
    const isRough = (): boolean => Math.abs(Number(value.toFixed(digits)) - value) > enough;
    while (target.exact && digits < MAX_DIGITS && isRough()) digits += 1;
    return formatNumber(value, digits, this.source.style.leadingZero);
  }
}

function withCase(letter: DrawingLetter | 'H' | 'V', relative: boolean): PathLetter {
  return relative ? (letter.toLowerCase() as PathLetter) : letter;
}

/** The command that numbers without a letter give after `letter`. */
function impliedAfter(letter: PathLetter | undefined): PathLetter | undefined {
  if (letter === 'M') return 'L';
  return letter === 'm' ? 'l' : letter;
}

function isNear(a: Point, b: Point): boolean {
  const enough = RELATIVE_ROUNDING * (1 + Math.max(Math.abs(a.x), Math.abs(a.y)));
  return Math.abs(a.x - b.x) <= enough && Math.abs(a.y - b.y) <= enough;
}

function sameControl(
  a: AbsoluteCommand['before']['control'],
  b: AbsoluteCommand['before']['control'],
  kind: 'S' | 'T',
): boolean {
  const wanted = kind === 'S' ? 'cubic' : 'quadratic';
  const [first, second] = [a?.kind === wanted ? a.point : undefined, b?.kind === wanted ? b.point : undefined];
  return first && second ? isNear(first, second) : first === second;
}
