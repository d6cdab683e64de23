/** How an author writes numbers and commands in path data, read from what is there, so that new commands look alike. */
import type { PathCommand } from '../../markup/path-commands';

/** How numbers are written, which is much the same in all paths of a file. */
export interface NumberStyle {
  /** `0.5` rather than `.5` */
  readonly leadingZero: boolean;
  /** `1-2` rather than `1 -2` */
  readonly tightSigns: boolean;
  /** `.8.8` rather than `.8 .8` */
  readonly tightPoints: boolean;
  /** Nothing after the flags of an arc: `0 016 0` rather than `0 0 1 6 0`. */
  readonly tightFlags: boolean;
}

export interface PathStyle extends NumberStyle {
  /** Between a letter and its first number. */
  readonly afterLetter: string;
  /** Between the last number and the next letter. */
  readonly beforeLetter: string;
  /** Before the `M` of a further subpath: with a line break where the author begins subpaths, or at least lines, so. */
  readonly beforeMove: string;
  /** Between x and y. */
  readonly withinPair: string;
  /** Between one pair, or lone number, and the next of the same command. */
  readonly betweenPairs: string;
  /** Before the numbers of a command whose letter is left out. */
  readonly betweenSets: string;
  /** Whether level and upright lines are `H` and `V`: not for authors who write them as `L`. */
  readonly shortLines: boolean;
  /** Whether the letter of a repeated command is left out. */
  readonly impliesRepeats: boolean;
  /** Digits after the point, as most numbers that have any are written; 0 for integers. */
  readonly decimals: number;
}

/** For path data of our own. */
export const PLAIN_STYLE: PathStyle = {
  afterLetter: '',
  beforeLetter: '',
  beforeMove: '',
  withinPair: ' ',
  betweenPairs: ' ',
  betweenSets: ' ',
  leadingZero: true,
  tightSigns: false,
  tightPoints: false,
  tightFlags: false,
  shortLines: true,
  impliesRepeats: false,
  decimals: 0,
};

/** Digits beyond these say nothing about a drawing; they are left over from arithmetic. */
const MAX_DECIMALS = 9;

/**
 * Reads the style of path data.
 * @param usual how numbers are written elsewhere in the file, for what the data leave open
 */
export function readStyle(text: string, commands: readonly PathCommand[], usual: NumberStyle = PLAIN_STYLE): PathStyle {
  const numbers = commands.flatMap((command) => plainNumbers(text, command));
  const gaps = readGaps(text, commands);
  const withinLines = gaps.betweenPairs.filter((gap) => !hasLineBreak(gap));
  const betweenPairs = mostCommon(withinLines) ?? mostCommon(gaps.betweenSets) ?? ' ';
  const beforeLetter = mostCommon(gaps.beforeLetter) ?? '';
  return {
    afterLetter: mostCommon(gaps.afterLetter) ?? '',
    beforeLetter,
    beforeMove: mostCommon(gaps.beforeMove) ?? mostCommon(gaps.beforeLetter.filter(hasLineBreak)) ?? beforeLetter,
    withinPair: mostCommon(gaps.withinPair) ?? betweenPairs,
    betweenPairs,
    betweenSets: mostCommon(gaps.betweenSets) ?? betweenPairs,
    ...numberStyle(numbers, gaps, usual),
    shortLines: uses(commands, 'HV') || !uses(commands, 'L'),
    impliesRepeats: commands.some(({ written }) => !written),
    decimals: Math.min(MAX_DECIMALS, usualDecimals(numbers)),
  };
}

function numberStyle(numbers: readonly string[], gaps: Gaps, usual: NumberStyle): NumberStyle {
  const small = numbers.filter((number) => /^[-+]?0?\.\d/.test(number));
  const isTight = ({ tight, spaced }: Spacing, otherwise: boolean): boolean =>
    tight + spaced === 0 ? otherwise : tight > spaced;
  return {
    leadingZero: small.length === 0 ? usual.leadingZero : !small.some((number) => /^[-+]?\./.test(number)),
    tightSigns: isTight(gaps.beforeSign, usual.tightSigns),
    tightPoints: isTight(gaps.beforePoint, usual.tightPoints),
    tightFlags: isTight(gaps.afterFlag, usual.tightFlags),
  };
}

/** Of two that are as common, the finer. */
function usualDecimals(numbers: readonly string[]): number {
  const digits = numbers.map(decimalsOf).filter((count) => count > 0);
  return mostCommon(digits.sort((a, b) => b - a)) ?? 0;
}

export function hasLineBreak(gap: string): boolean {
  return gap.includes('\n') || gap.includes('\r');
}

function uses(commands: readonly PathCommand[], letters: string): boolean {
  return commands.some(({ letter }) => letters.includes(letter.toUpperCase()));
}

/** Digits after the point of a number as written. */
export function decimalsOf(number: string): number {
  const match = /^[-+]?\d*(?:\.(\d*))?(?:[eE]([-+]?\d+))?$/.exec(number);
  if (!match) return 0;
  return Math.max(0, (match[1]?.length ?? 0) - Number(match[2] ?? 0));
}

/** At most `decimals` digits after the point, without trailing zeros or exponent. */
export function formatNumber(value: number, decimals: number, leadingZero = true): string {
  const fixed = value.toFixed(Math.min(20, decimals));
  const trimmed = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  const text = trimmed === '-0' || trimmed === '' ? '0' : trimmed;
  return leadingZero ? text : text.replace(/^(-?)0\./, '$1.');
}

/** One command in the author's style: `numbers` are its parameters, already written out. */
export function commandText(letter: string, numbers: readonly string[], style: PathStyle): string {
  return letter + gapBefore(numbers[0], style.afterLetter, style) + parametersText(letter, numbers, style);
}

/** The parameters alone, as after a command whose letter need not be repeated. */
export function parametersText(letter: string, numbers: readonly string[], style: PathStyle): string {
  return numbers.map((number, index) => gapWithin(letter, numbers, index, style) + number).join('');
}

function gapWithin(letter: string, numbers: readonly string[], index: number, style: PathStyle): string {
  const before = numbers[index - 1];
  const number = numbers[index];
  if (before === undefined || number === undefined) return '';
  if (style.tightFlags && followsFlag(letter, index)) return '';
  if (style.tightPoints && number.startsWith('.') && before.includes('.')) return '';
  return gapBefore(number, (endsPair(letter, index) ? style.withinPair : style.betweenPairs) || ' ', style);
}

/** Nothing before a minus sign where the author leaves it out. */
export function gapBefore(number: string | undefined, gap: string, { tightSigns }: PathStyle): string {
  return number === undefined || (tightSigns && number.startsWith('-')) ? '' : gap;
}

/** Whether what stands before parameter `index` is a flag of an arc. */
function followsFlag(letter: string, index: number): boolean {
  return letter.toUpperCase() === 'A' && (index === 4 || index === 5);
}

/** Whether parameter `index` is the y of a pair whose x comes before it. */
function endsPair(letter: string, index: number): boolean {
  const kind = letter.toUpperCase();
  if (kind === 'A') return index === 1 || index === 6;
  return kind !== 'H' && kind !== 'V' && index % 2 === 1;
}

/** How often two numbers have nothing between them where nothing need be, and how often something. */
interface Spacing {
  tight: number;
  spaced: number;
}

interface Gaps {
  readonly afterLetter: string[];
  readonly beforeLetter: string[];
  readonly beforeMove: string[];
  readonly withinPair: string[];
  readonly betweenPairs: string[];
  readonly betweenSets: string[];
  readonly beforeSign: Spacing;
  readonly beforePoint: Spacing;
  readonly afterFlag: Spacing;
}

function readGaps(text: string, commands: readonly PathCommand[]): Gaps {
  const gaps: Gaps = {
    afterLetter: [],
    beforeLetter: [],
    beforeMove: [],
    withinPair: [],
    betweenPairs: [],
    betweenSets: [],
    beforeSign: { tight: 0, spaced: 0 },
    beforePoint: { tight: 0, spaced: 0 },
    afterFlag: { tight: 0, spaced: 0 },
  };
  commands.forEach((command, at) => {
    const before = commands[at - 1];
    if (before) {
      const gap = text.slice(before.span.to, command.span.from);
      if (!command.written) countBetween(gaps, gaps.betweenSets, gap, text[command.span.from]);
      else if (command.letter.toUpperCase() === 'M') gaps.beforeMove.push(gap);
      else gaps.beforeLetter.push(gap);
    }
    readInnerGaps(text, command, gaps);
  });
  return gaps;
}

function readInnerGaps(text: string, { letter, written, span, valueSpans }: PathCommand, gaps: Gaps): void {
  valueSpans.forEach((value, index) => {
    const before = valueSpans[index - 1];
    if (!before) {
      if (written) gaps.afterLetter.push(text.slice(span.from + 1, value.from));
      return;
    }
    const gap = text.slice(before.to, value.from);
    if (followsFlag(letter, index)) countSpacing(gaps.afterFlag, gap);
    const isPointFree = text[value.from] === '.' && text.slice(before.from, before.to).includes('.');
    if (isPointFree && !followsFlag(letter, index)) countSpacing(gaps.beforePoint, gap);
    countBetween(gaps, endsPair(letter, index) ? gaps.withinPair : gaps.betweenPairs, gap, text[value.from]);
  });
}

/** A gap before a minus sign only tells whether it is left out there; elsewhere it tells what the author puts. */
function countBetween(gaps: Gaps, kind: string[], gap: string, next: string | undefined): void {
  if (next === '-') countSpacing(gaps.beforeSign, gap);
  else if (gap !== '') kind.push(gap);
}

function countSpacing(spacing: Spacing, gap: string): void {
  spacing[gap === '' ? 'tight' : 'spaced'] += 1;
}

function plainNumbers(text: string, command: PathCommand): string[] {
  return command.valueSpans.map((span) => text.slice(span.from, span.to));
}

function mostCommon<T>(values: readonly T[]): T | undefined {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}
