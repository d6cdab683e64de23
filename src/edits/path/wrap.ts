/** Wraps long path data: line breaks between commands, and nothing else, so that it draws what it drew. */
import { parsePathData } from '../../markup/path-data';
import type { TextEdit } from '../../text/text';
import { hasLineBreak } from './path-style';

export interface Wrapping {
  /** The longest line, in UTF-16 code units. */
  readonly width: number;
  /** How many code units stand before the data on its first line. */
  readonly column: number;
  /** A line end and the blanks that a further line begins with, where the data have none yet. */
  readonly lineBreak: string;
}

/** A command, and what stands between it and the one before. */
interface Word {
  readonly from: number;
  readonly to: number;
  readonly gap: string;
  /** Whether it begins a subpath. */
  readonly begins: boolean;
}

/**
 * Edits of white space, in offsets of `data`. Lines that are short enough stay as the author broke them; in a longer one
 * each subpath begins a line, and lines end before the command that would reach beyond the width. A single command is
 * never broken.
 */
export function wrapPathData(data: string, { width, column, lineBreak }: Wrapping): TextEdit[] {
  const words = wordsOf(data);
  const first = words.find(({ gap }) => hasLineBreak(gap));
  const broken = first ? first.gap.replace(',', '') : lineBreak;
  const indent = lengthOfLastLine(broken, 0);
  const edits: TextEdit[] = [];
  let start = column + (words[0]?.from ?? 0);
  for (const line of linesOf(words)) {
    const begin = line[0];
    if (!begin) continue;
    if (hasLineBreak(begin.gap)) start = lengthOfLastLine(begin.gap, 0);
    edits.push(...wrapLine(line, { start, width, indent }, broken));
  }
  return edits;
}

function wordsOf(data: string): Word[] {
  const { commands } = parsePathData(data);
  return commands.map(({ span: { from, to }, letter, written }, index) => ({
    from,
    to,
    gap: index === 0 ? '' : data.slice(commands[index - 1]?.span.to ?? from, from),
    begins: written && letter.toUpperCase() === 'M',
  }));
}

/** The words of each line; the gap of a line's first word holds the break. */
function linesOf(words: readonly Word[]): Word[][] {
  const lines: Word[][] = [];
  for (const word of words) {
    const line = lines.at(-1);
    if (line && !hasLineBreak(word.gap)) line.push(word);
    else lines.push([word]);
  }
  return lines;
}

interface Columns {
  /** Where the line's first command stands. */
  readonly start: number;
  readonly width: number;
  /** Where those of further lines stand. */
  readonly indent: number;
}

function wrapLine(line: readonly Word[], { start, width, indent }: Columns, broken: string): TextEdit[] {
  const long = line.reduce((sum, { from, to, gap }, index) => sum + to - from + (index === 0 ? 0 : gap.length), start);
  if (long <= width) return [];
  const edits: TextEdit[] = [];
  let at = start;
  line.forEach(({ from, to, gap, begins }, index) => {
    const end = at + gap.length + to - from;
    if (index > 0 && (begins || end > width)) {
      // A comma between two commands without letters stays where it is.
      const comma = gap.indexOf(',') + 1;
      const span = { from: from - gap.length + comma, to: from };
      edits.push({ span, text: broken });
      at = indent + to - from;
    } else at = index === 0 ? at + to - from : end;
  });
  return edits;
}

/** @param before how long the line was before the text */
export function lengthOfLastLine(text: string, before: number): number {
  const at = Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r'));
  return at < 0 ? before + text.length : text.length - at - 1;
}
