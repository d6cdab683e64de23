/** How an author writes numbers and commands in path data, read from what is there, so that new commands look alike. */
import type { PathCommand } from '../../markup/path-commands';

export interface PathStyle {
  /** Between a letter and its first number. */
  readonly afterLetter: string;
  /** Between the last number and the next letter. */
  readonly beforeLetter: string;
  /** Between x and y. */
  readonly withinPair: string;
  /** Between one pair, or lone number, and the next. */
  readonly betweenPairs: string;
  /** `0.5` rather than `.5` */
  readonly leadingZero: boolean;
  /** `1-2` rather than `1 -2` */
  readonly tightSigns: boolean;
  /** Whether level and upright lines are `H` and `V`: not for authors who write them as `L`. */
  readonly shortLines: boolean;
  /** Whether the letter of a repeated command is left out. */
  readonly impliesRepeats: boolean;
  /** The most digits after the point that the author uses; 0 for integers. */
  readonly decimals: number;
}

/** For path data of our own. */
export const PLAIN_STYLE: PathStyle = {
  afterLetter: '',
  beforeLetter: '',
  withinPair: ' ',
  betweenPairs: ' ',
  leadingZero: true,
  tightSigns: false,
  shortLines: true,
  impliesRepeats: false,
  decimals: 0,
};

/** Digits beyond these say nothing about a drawing; they are left over from arithmetic. */
const MAX_DECIMALS = 9;

/** Reads the style of path data; what it leaves open is taken as blanks between numbers and none after letters. */
export function readStyle(text: string, commands: readonly PathCommand[]): PathStyle {
  const numbers = commands.flatMap((command) => plainNumbers(text, command));
  const gaps = readGaps(text, commands);
  const betweenPairs = mostCommon(gaps.betweenPairs) ?? ' ';
  return {
    afterLetter: mostCommon(gaps.afterLetter) ?? '',
    beforeLetter: mostCommon(gaps.beforeLetter) ?? '',
    withinPair: mostCommon(gaps.withinPair) ?? betweenPairs,
    betweenPairs,
    leadingZero: !numbers.some((number) => /^[-+]?\./.test(number)),
    tightSigns: gaps.beforeSign.tight > gaps.beforeSign.spaced,
    shortLines: uses(commands, 'HV') || !uses(commands, 'L'),
    impliesRepeats: commands.some(({ written }) => !written),
    decimals: Math.min(MAX_DECIMALS, Math.max(0, ...numbers.map(decimalsOf))),
  };
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
  return numbers
    .map((number, index) => {
      if (index === 0) return number;
      const gap = endsPair(letter, index) ? style.withinPair : style.betweenPairs;
      return gapBefore(number, gap || ' ', style) + number;
    })
    .join('');
}

/** Nothing before a minus sign where the author leaves it out. */
export function gapBefore(number: string | undefined, gap: string, { tightSigns }: PathStyle): string {
  return number === undefined || (tightSigns && number.startsWith('-')) ? '' : gap;
}

/** Whether parameter `index` is the y of a pair whose x comes before it. */
function endsPair(letter: string, index: number): boolean {
  const kind = letter.toUpperCase();
  if (kind === 'A') return index === 1 || index === 6;
  return kind !== 'H' && kind !== 'V' && index % 2 === 1;
}

interface Gaps {
  readonly afterLetter: string[];
  readonly beforeLetter: string[];
  readonly withinPair: string[];
  readonly betweenPairs: string[];
  readonly beforeSign: { tight: number; spaced: number };
}

function readGaps(text: string, commands: readonly PathCommand[]): Gaps {
  const gaps: Gaps = {
    afterLetter: [],
    beforeLetter: [],
    withinPair: [],
    betweenPairs: [],
    beforeSign: { tight: 0, spaced: 0 },
  };
  commands.forEach((command, at) => {
    const before = commands[at - 1];
    if (before) {
      const gap = text.slice(before.span.to, command.span.from);
      if (command.written) gaps.beforeLetter.push(gap);
      else countVariant(gaps, gaps.betweenPairs, gap, text[command.span.from]);
    }
    readInnerGaps(text, command, gaps);
  });
  return gaps;
}

function readInnerGaps(text: string, command: PathCommand, gaps: Gaps): void {
  command.valueSpans.forEach((span, index) => {
    const from = index === 0 ? command.span.from + 1 : (command.valueSpans[index - 1]?.to ?? span.from);
    const gap = text.slice(from, span.from);
    const kind = endsPair(command.letter, index) ? gaps.withinPair : gaps.betweenPairs;
    if (index > 0) countVariant(gaps, kind, gap, text[span.from]);
    else if (command.written) gaps.afterLetter.push(gap);
  });
}

/** A gap before a minus sign only tells whether it is left out there; elsewhere it tells what the author puts. */
function countVariant(gaps: Gaps, kind: string[], gap: string, next: string | undefined): void {
  if (next === '-') gaps.beforeSign[gap === '' ? 'tight' : 'spaced'] += 1;
  else if (gap !== '') kind.push(gap);
}

function plainNumbers(text: string, command: PathCommand): string[] {
  return command.valueSpans.map((span) => text.slice(span.from, span.to));
}

function mostCommon(values: readonly string[]): string | undefined {
  const counts = new Map<string, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}
