/** Gives commands of a path other courses, in place: everything else, their own letters and gaps included, stays. */
import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { RELATIVE_ROUNDING } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import type { PathCommand, PathLetter } from '../../markup/path-commands';
import { applyEdits, type TextEdit } from '../../text/text';
import { commandText, formatNumber, parametersText } from './path-style';
import type { PathSource } from './path-writer';
import { radiiOf, turnsClockwise } from './precision';

/** What becomes of a path, in its own user units. */
export interface Redrawn {
  /** By index of the move command: where its subpath begins from now on. */
  readonly starts: ReadonlyMap<number, Point>;
  /** By index of a drawing command: the curves in its place. What a `Z` drew is followed by a `Z` again. */
  readonly curves: ReadonlyMap<number, readonly Curve[]>;
}

/** Digits after the point beyond which a number tells no more. */
const MAX_DIGITS = 12;

/** Edits in offsets of the path's data. Commands that are not named keep their course, to the last digit. */
export function rewriteCommands(source: PathSource, redrawn: Redrawn): TextEdit[] {
  const writer = new Rewriter(source, redrawn);
  source.commands.forEach((_, index) => writer.take(index));
  return writer.edits;
}

class Rewriter {
  readonly edits: TextEdit[] = [];
  /** Where a reader of the new text stands, and where its subpath began. */
  private current: Point = { x: 0, y: 0 };
  private start: Point = { x: 0, y: 0 };
  /** The letter of the last command in the new text. */
  private letter: PathLetter | undefined;
  private readonly source: PathSource;
  private readonly redrawn: Redrawn;
  /** Whether the last curve was written anew: a smooth curve after it has lost its handle. */
  private handleMoved = false;

  constructor(source: PathSource, redrawn: Redrawn) {
    this.source = source;
    this.redrawn = redrawn;
  }

  take(index: number): void {
    const command = defined(this.source.commands[index]);
    const { after, before, curve } = defined(this.source.absolute[index]);
    const kind = command.letter.toUpperCase();
    const wanted = this.redrawn.curves.get(index);
    if (kind === 'M') return this.move(index, command, this.redrawn.starts.get(index) ?? after.current);
    if (kind === 'Z') return this.close(command, wanted ?? []);
    const displaced = !isSame(this.current, before.current);
    const smooth = (kind === 'S' || kind === 'T') && this.handleMoved;
    if (!wanted && !displaced && !smooth) return this.keep(command, after.current);
    this.replace(command, wanted ?? (curve ? [{ ...curve, start: this.current }] : []), after.current);
  }

  private keep(command: PathCommand, end: Point): void {
    // After another letter than before, one that was implied must be written.
    if (!command.written && impliedAfter(this.letter) !== command.letter) {
      this.edits.push({ span: { from: command.span.from, to: command.span.from }, text: command.letter });
    }
    this.letter = command.letter;
    this.current = end;
    this.handleMoved = false;
  }

  private move(index: number, command: PathCommand, to: Point): void {
    const relative = command.letter === 'm';
    const old = defined(this.source.absolute[index]);
    const from = index === 0 ? { x: 0, y: 0 } : this.current;
    const stays = isSame(to, old.after.current) && (!relative || index === 0 || isSame(from, old.before.current));
    if (stays) this.keep(command, to);
    else {
      const [numbers, end] = this.pairs([to], from, relative, this.redrawn.starts.has(index) ? 'new' : 'old');
      const text = this.text(command, command.letter, numbers);
      const own = numberEdits(this.source.data, command, { letter: command.letter, numbers, text });
      this.edits.push(...(own ?? [{ span: command.span, text }]));
      this.current = end;
      this.letter = command.letter;
    }
    this.start = this.current;
    this.handleMoved = false;
  }

  /** The closing line is drawn by the `Z` itself where it stays a line. */
  private close(command: PathCommand, curves: readonly Curve[]): void {
    const drawn = curves.at(-1)?.kind === 'line' ? curves.slice(0, -1) : curves;
    const texts = drawn.map((curve) => this.write(curve, command.letter === 'z', 'new', undefined).text);
    if (texts.length > 0) {
      const { from } = command.span;
      this.edits.push({
        span: { from, to: from },
        text: `${texts.join(this.source.style.beforeLetter)}${this.source.style.beforeLetter}`,
      });
    }
    this.current = this.start;
    this.letter = command.letter;
    this.handleMoved = false;
  }

  private replace(command: PathCommand, curves: readonly Curve[], oldEnd: Point): void {
    const relative = command.letter !== command.letter.toUpperCase();
    const before = this.letter;
    const last = curves.length - 1;
    const written = curves.map((curve, i) => {
      const precision = i === last && distance(curve.end, oldEnd) < SAME_END ? 'old' : 'new';
      return this.write(curve, relative, precision, i === 0 ? command : undefined);
    });
    const [only] = written;
    const same = last === 0 && (command.written || impliedAfter(before) === command.letter) ? only : undefined;
    const whole = { span: command.span, text: written.map(({ text }) => text).join(this.source.style.beforeLetter) };
    this.edits.push(...((same && numberEdits(this.source.data, command, same)) ?? [whole]));
    this.handleMoved = true;
  }

  private write(curve: Curve, relative: boolean, ends: Precision, command: PathCommand | undefined): WrittenCommand {
    const from = this.current;
    const [numbers, end] = this.pairs(pointsAfterStart(curve), from, relative, ends);
    const letter = letterFor(curve, relative, command);
    const kind = letter.toUpperCase();
    this.current = { x: kind === 'V' ? from.x : end.x, y: kind === 'H' ? from.y : end.y };
    const all = [...this.shapeOf(curve, command), ...axisNumbers(kind, numbers)];
    return { letter, numbers: all, text: this.text(command, letter, all) };
  }

  /** The numbers of an arc before its end: as the author wrote them where the ellipse is the same. */
  private shapeOf(curve: Curve, command: PathCommand | undefined): string[] {
    if (curve.kind !== 'arc') return [];
    const { data, decimals, style } = this.source;
    const { x, y, turn } = radiiOf(curve);
    const half = Math.abs(Math.abs(curve.sweep) - Math.PI) < 1e-6;
    const large = half ? command?.values[3] === 1 : Math.abs(curve.sweep) > Math.PI;
    const flags = [large ? '1' : '0', turnsClockwise(curve) ? '1' : '0'];
    const [own = 0, other = 0] = (command?.values ?? []).map(Math.abs);
    const asWritten =
      Math.abs(Math.max(own, other) - x) < SAME_END * x && Math.abs(Math.min(own, other) - y) < SAME_END * x;
    const written = (command?.valueSpans ?? []).slice(0, 3).map(({ from, to }) => data.slice(from, to));
    if (asWritten && written.length === 3) return [...written, ...flags];
    return [...[x, y, turn].map((value) => formatNumber(value, decimals + 1, style.leadingZero)), ...flags];
  }

  private text(command: PathCommand | undefined, letter: PathLetter, numbers: readonly string[]): string {
    const { style } = this.source;
    const implied = command !== undefined && !command.written && impliedAfter(this.letter) === letter;
    this.letter = letter;
    return implied ? parametersText(letter, numbers, style) : commandText(letter, numbers, style);
  }

  /** The numbers of points, and where a reader of them stands after the last. */
  private pairs(points: readonly Point[], from: Point, relative: boolean, ends: Precision): [string[], Point] {
    const { decimals, style } = this.source;
    const origin = relative ? from : { x: 0, y: 0 };
    const numbers: string[] = [];
    let end = from;
    points.forEach((point, i) => {
      const exact = i === points.length - 1 && ends === 'old';
      const [x, y] = (['x', 'y'] as const).map((axis) => {
        const value = point[axis] - origin[axis];
        return formatNumber(value, exact ? digitsFor(value, decimals) : decimals, style.leadingZero);
      }) as [string, string];
      numbers.push(x, y);
      end = { x: origin.x + Number(x), y: origin.y + Number(y) };
    });
    return [numbers, end];
  }
}

interface WrittenCommand {
  readonly letter: PathLetter;
  readonly numbers: readonly string[];
  readonly text: string;
}

/** One edit from the first to the last number that changes; undefined where the command has another letter, or its numbers lean on each other. */
function numberEdits(data: string, command: PathCommand, { letter, numbers }: WrittenCommand): TextEdit[] | undefined {
  const { valueSpans, values } = command;
  if (letter !== command.letter || numbers.length !== valueSpans.length) return undefined;
  const edits = valueSpans.flatMap((span, i): TextEdit[] => {
    const text = defined(numbers[i]);
    return Number(text) === values[i] ? [] : [{ span, text }];
  });
  const standsAlone = ({ span: { from, to }, text }: TextEdit) =>
    (text.startsWith('-') || !/[\d.]/.test(data[from - 1] ?? '')) && !/[\d.]/.test(data[to] ?? '');
  if (!edits.every(standsAlone)) return undefined;
  const [first, last] = [edits[0], edits.at(-1)];
  if (!first || !last) return [];
  const span = { from: first.span.from, to: last.span.to };
  return [
    {
      span,
      text: applyEdits(
        data.slice(span.from, span.to),
        edits.map((edit) => ({ ...edit, span: { from: edit.span.from - span.from, to: edit.span.to - span.from } })),
      ),
    },
  ];
}

/** User units: an end this near to where it was has not moved. */
const SAME_END = 1e-5;

/** Ends that stay where they were get as many digits as that takes. */
type Precision = 'old' | 'new';

function digitsFor(value: number, least: number): number {
  let digits = least;
  const enough = RELATIVE_ROUNDING * (1 + Math.abs(value));
  while (digits < MAX_DIGITS && Math.abs(Number(value.toFixed(digits)) - value) > enough) digits += 1;
  return digits;
}

const LETTERS = { cubic: 'C', quadratic: 'Q', arc: 'A' } as const;

function letterFor(curve: Curve, relative: boolean, command: PathCommand | undefined): PathLetter {
  const kept = command?.letter.toUpperCase();
  const letter = curve.kind === 'line' ? lineLetter(curve, kept) : LETTERS[curve.kind];
  return (relative ? letter.toLowerCase() : letter) as PathLetter;
}

/** A level or upright line that stays one keeps its short letter. */
function lineLetter({ start, end }: Curve, kept: string | undefined): 'L' | 'H' | 'V' {
  if (kept === 'H' && Math.abs(start.y - end.y) < 1e-9) return 'H';
  return kept === 'V' && Math.abs(start.x - end.x) < 1e-9 ? 'V' : 'L';
}

function axisNumbers(kind: string, numbers: readonly string[]): readonly string[] {
  return kind === 'H' ? numbers.slice(0, 1) : kind === 'V' ? numbers.slice(1, 2) : numbers;
}

function pointsAfterStart(curve: Curve): readonly Point[] {
  if (curve.kind === 'cubic') return [curve.control1, curve.control2, curve.end];
  return curve.kind === 'quadratic' ? [curve.control, curve.end] : [curve.end];
}

function impliedAfter(letter: PathLetter | undefined): PathLetter | undefined {
  if (letter === 'M') return 'L';
  return letter === 'm' ? 'l' : letter;
}

function isSame(a: Point, b: Point): boolean {
  return distance(a, b) <= RELATIVE_ROUNDING * (1 + Math.abs(a.x) + Math.abs(a.y));
}
