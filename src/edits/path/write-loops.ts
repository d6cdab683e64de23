/** Writes loops as path data: commands that were not touched are copied as they stand, new ones follow their style. */
import type { Arc, Curve, Point } from '../../geometry/base/curve-types';
import { reverseCurve, subCurve } from '../../geometry/curve/index';
import type { PathInterval } from './clip-subpaths';
import type { OrderedLoop } from './loop-order';
import type { StepPath } from './path-model';
import { formatNumber, hasLineBreak } from './path-style';
import { type CommandEnd, CommandWriter, type PathSource, type TextPiece } from './path-writer';
import { arcExtraDecimals, extraDecimals, radiiOf, turnsClockwise, wellPosed } from './precision';
import type { LoopItem } from './reconnect';

/** An item of a loop, ready to be written. */
interface Entry {
  /** Undefined for what is new: a line along a strip's side, a bank. */
  readonly stretch: PathInterval | undefined;
  readonly curve: Curve;
  /** The author's command that drew the curve. */
  readonly command: number | undefined;
  readonly end: CommandEnd;
}

export function writeLoops(source: PathSource, loops: readonly OrderedLoop[]): readonly TextPiece[] {
  const writer = new CommandWriter(source);
  const breaks = new SubpathBreaks(source, loops);
  for (const loop of loops) writeLoop(writer, source, loop, breaks);
  return writer.pieces;
}

function writeLoop(writer: CommandWriter, source: PathSource, loop: OrderedLoop, breaks: SubpathBreaks): void {
  const home = loop.home === undefined ? undefined : source.paths[loop.home];
  const entries = entriesOf(source, loop);
  breaks.begin(loop);
  beginLoop(writer, source, loop, home, entries);
  entries.forEach((entry, index) => {
    if (!loop.open && index === entries.length - 1 && drawnByClosing(source, entry)) return;
    const move = breaks.before(entry.stretch);
    if (move !== undefined) writer.breakAs(move);
    writeEntry(writer, source, entry);
  });
  if (!loop.open) finishLoop(writer, source, loop, home);
}

/**
 * Line breaks of subpaths that have become part of others: where there are fewer subpaths than before, the curves of the
 * joined ones still begin a line, so that the author finds as many lines as there were.
 */
class SubpathBreaks {
  private readonly begun = new Set<number>();
  private left: number;

  private readonly source: PathSource;

  constructor(source: PathSource, loops: readonly OrderedLoop[]) {
    this.source = source;
    const lines = source.paths.filter(({ move }) => move !== undefined && this.beginsLine(move)).length;
    this.left = lines - (loops.length - 1);
  }

  begin({ home, items }: OrderedLoop): void {
    const first = items.find((item) => item.kind === 'stretch');
    const subpath = home ?? (first?.kind === 'stretch' ? first.stretch.subpath : undefined);
    if (subpath !== undefined) this.begun.add(subpath);
  }

  /** The `M` whose line break belongs before this stretch, if one does. */
  before(stretch: PathInterval | undefined): number | undefined {
    if (!stretch || this.begun.has(stretch.subpath)) return undefined;
    this.begun.add(stretch.subpath);
    const move = this.source.paths[stretch.subpath]?.move;
    if (move === undefined || this.left <= 0 || !this.beginsLine(move)) return undefined;
    this.left -= 1;
    return move;
  }

  private beginsLine(move: number): boolean {
    const { data, commands } = this.source;
    const [before, command] = [commands[move - 1], commands[move]];
    return before !== undefined && command !== undefined && hasLineBreak(data.slice(before.span.to, command.span.from));
  }
}

function entriesOf(source: PathSource, { items, start }: OrderedLoop): Entry[] {
  let pen = start;
  const drawn = items.map((item) => {
    const curve = curveOf(source, item, pen);
    pen = curve.end;
    return { item, curve };
  });
  return drawn.map(({ item, curve }, index): Entry => {
    const stretch = item.kind === 'stretch' ? item.stretch : undefined;
    const next = drawn[(index + 1) % drawn.length]?.curve;
    const decimals = source.decimals + arcExtraDecimals([curve, next], source.lined);
    const own = stretch && !source.paths[stretch.subpath]?.foreign;
    const exact = own === true ? stretch.to === 0 || stretch.to === 1 : item.kind === 'curve' && item.exact === true;
    const command = stretch && source.paths[stretch.subpath]?.steps[stretch.step]?.command;
    return { stretch, curve, command, end: { point: curve.end, decimals, exact } };
  });
}

function curveOf({ paths }: PathSource, item: LoopItem, pen: Point): Curve {
  if (item.kind === 'line') return { kind: 'line', start: pen, end: item.to };
  if (item.kind === 'curve') return item.curve;
  const { subpath, step, from, to } = item.stretch;
  const whole = paths[subpath]?.steps[step]?.curve ?? { kind: 'line', start: pen, end: pen };
  const part = Math.abs(to - from) === 1 ? whole : subCurve(whole, Math.min(from, to), Math.max(from, to));
  return from < to ? part : reverseCurve(part);
}

function beginLoop(
  writer: CommandWriter,
  source: PathSource,
  loop: OrderedLoop,
  home: StepPath | undefined,
  entries: readonly Entry[],
): void {
  if (home?.move !== undefined && writer.copy(home.move)) return;
  if (home && home.move === undefined && writer.continuesAt(loop.start)) return;
  const first = entries.find((entry) => entry.stretch)?.stretch;
  const origin = home ?? (first && source.paths[first.subpath]);
  const letter = origin?.move === undefined ? undefined : source.commands[origin.move]?.letter;
  const relative = letter === undefined ? writer.relative === true : letter === 'm';
  const decimals = entries.at(-1)?.end.decimals ?? source.decimals;
  writer.command('M', [], { point: loop.start, decimals, exact: home !== undefined }, relative, home?.move);
}

/** Straight lines to the start of a loop, when its closing draws them. */
function drawnByClosing(source: PathSource, { stretch, curve, command }: Entry): boolean {
  if (!stretch) return curve.kind === 'line';
  const closing = command === undefined || isClose(source, command);
  return curve.kind === 'line' && closing;
}

function isClose(source: PathSource, command: number): boolean {
  return source.commands[command]?.letter.toUpperCase() === 'Z';
}

/** An open subpath that ends where it ended before stays open; every other loop is closed. */
function finishLoop(writer: CommandWriter, source: PathSource, loop: OrderedLoop, home: StepPath | undefined): void {
  const last = loop.items.at(-1);
  const unbroken = home !== undefined && last?.kind === 'stretch' && last.stretch.subpath === loop.home;
  if (unbroken && home.close === undefined) return;
  if (home?.close !== undefined) return writer.copyClose(home.close);
  const letters = loop.items.flatMap((item) => {
    const close = item.kind === 'stretch' ? source.paths[item.stretch.subpath]?.close : undefined;
    return close === undefined ? [] : [source.commands[close]?.letter];
  });
  const upper = letters[0] ? letters[0] === 'Z' : writer.relative !== true;
  writer.close(upper ? 'Z' : 'z');
}

function writeEntry(writer: CommandWriter, source: PathSource, entry: Entry): void {
  const { stretch, curve, command, end } = entry;
  const whole = stretch?.from === 0 && stretch.to === 1;
  if (whole && command !== undefined && writer.copy(command)) return;
  const origin = command === undefined || isClose(source, command) ? undefined : command;
  const letter = origin === undefined ? undefined : source.commands[origin]?.letter;
  const relative = letter === undefined ? writer.relative === true : letter !== letter.toUpperCase();
  const control = (point: Point): CommandEnd => ({ point, decimals: source.decimals, exact: false });
  switch (curve.kind) {
    case 'line':
      return writer.line(end, relative, origin);
    case 'quadratic':
      return writer.command('Q', [control(curve.control)], end, relative, origin);
    case 'cubic':
      return writer.command('C', [control(curve.control1), control(curve.control2)], end, relative, origin);
    case 'arc':
      return writeArc(writer, source, curve, entry, relative);
  }
}

function writeArc(writer: CommandWriter, source: PathSource, curve: Arc, entry: Entry, relative: boolean): void {
  const pieces = wellPosed(curve);
  const shape = radiiText(source, curve, entry.command);
  pieces.forEach((piece, index) => {
    const flags = [Math.abs(piece.sweep) > Math.PI ? '1' : '0', turnsClockwise(piece) ? '1' : '0'];
    const middle = { point: piece.end, decimals: source.decimals + extraDecimals(piece, source.lined), exact: false };
    const end = index === pieces.length - 1 ? entry.end : middle;
    writer.command('A', [...shape, ...flags], end, relative, index === 0 ? entry.command : undefined);
  });
}

/** Radii and turn as the author wrote them, unless they had to be enlarged to reach. */
function radiiText(source: PathSource, curve: Arc, command: number | undefined): string[] {
  const original = command === undefined ? undefined : source.commands[command];
  const actual = radiiOf(curve);
  const [x = 0, y = 0] = original?.values ?? [];
  const [larger, smaller] = [Math.max(Math.abs(x), Math.abs(y)), Math.min(Math.abs(x), Math.abs(y))];
  const asWritten = Math.abs(larger - actual.x) < 1e-9 * actual.x && Math.abs(smaller - actual.y) < 1e-9 * actual.x;
  if (asWritten && original) {
    return original.valueSpans.slice(0, 3).map((span) => source.data.slice(span.from, span.to));
  }
  return [actual.x, actual.y, actual.turn].map((value) =>
    formatNumber(value, source.decimals + 3, source.style.leadingZero),
  );
}
