/** A snippet as lines of text: in a frame, with pointers to the place on two of its sides. */
import { shortNumber } from '../../config/values';
import { dotsIn } from './dots';
import type { Snippet } from './snippet';

/** What a terminal can show. */
export type SnippetStyle = 'braille' | 'plain';

const FRAMES = {
  braille: { corners: '╭╮╰╯', edge: '─', side: '│', right: '▸', up: '▴' },
  plain: { corners: '++++', edge: '-', side: '|', right: '>', up: '^' },
} as const;

/** Of a plain character, by how many dots it stands for. */
const PLAIN = [' ', '.', '.', '.', '+', '+', '#', '#', '#'] as const;

/** @param point colours the pointers @param dim the frame */
export function snippetLines(
  { lines, column, line, width }: Snippet,
  style: SnippetStyle,
  point: (words: string) => string,
  dim: (words: string) => string,
): string[] {
  const { corners, edge, side, right, up } = FRAMES[style];
  const [topLeft = '', topRight = '', bottomLeft = '', bottomRight = ''] = corners;
  const across = lines[0]?.length ?? 0;
  const rows = lines.map((cells, row) => {
    const drawn = style === 'braille' ? cells : [...cells].map((cell) => PLAIN[dotsIn(cell)] ?? ' ').join('');
    return `${row === line ? point(right) : ' '} ${dim(side)}${drawn}${dim(side)}`;
  });
  const before = `${bottomLeft}${edge.repeat(column)}`;
  const after = `${edge.repeat(across - column - 1)}${bottomRight}`;
  return [
    `  ${dim(`${topLeft}${edge.repeat(across)}${topRight}`)}`,
    ...rows,
    `  ${dim(before)}${point(up)}${dim(after)} ${dim(`${shortNumber(Number(width.toPrecision(2)))} mm`)}`,
  ];
}
