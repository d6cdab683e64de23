/** Closes a cut line in its own text. */
import type { Drawing } from '../../drawing/types';
import type { CutLine } from '../../sheet/cut-lines/index';
import type { TextEdit } from '../../text/text';
import { type LinePath, linePath } from '../element/line-path';
import type { EditResult } from '../element/result';
import { formatNumber } from '../path/path-style';

/** Adds a `Z` behind the line's last command; what follows stays where it is. */
export function closeSubpath(drawing: Drawing, line: CutLine): EditResult {
  if (line.curves.length < 2 && line.curves.every(({ kind }) => kind === 'line')) {
    return { refusal: 'A single straight line encloses nothing.' };
  }
  const source = linePath(drawing, line);
  if (typeof source === 'string') return { refusal: source };
  const last = source.paths[line.subpath]?.steps.at(-1)?.command;
  const command = last === undefined ? undefined : source.commands[last];
  if (last === undefined || !command) return { refusal: 'The end of the line is not in its text.' };
  const close = command.letter === command.letter.toUpperCase() ? 'Z' : 'z';
  const edits = [{ span: { from: command.span.to, to: command.span.to }, text: close }, ...keepNext(source, last + 1)];
  return { edits: source.geometry.editsFor(edits) };
}

/** A relative move would now count from where the closed line begins: it becomes an absolute one. */
function keepNext({ commands, absolute, style, decimals }: LinePath, index: number): TextEdit[] {
  const [next, target, after] = [commands[index], absolute[index]?.after.current, commands[index + 1]];
  if (next?.letter !== 'm' || !target) return [];
  const [x, y] = [target.x, target.y].map((value) => formatNumber(value, decimals, style.leadingZero));
  // Pairs that follow a move without a letter of their own would turn absolute with it.
  return [{ span: next.span, text: `M${x} ${y}${after && !after.written ? 'l' : ''}` }];
}
