/** Path data, ready to be written anew. */
import { parsePathData } from '../../markup/path-data';
import type { TextEdit } from '../../text/text';
import type { OrderedLoop } from './loop-order';
import { absoluteCommands, stepPaths } from './path-model';
import { type NumberStyle, readStyle } from './path-style';
import type { PathSource } from './path-writer';
import { spliceText } from './text-edits';
import { writeLoops } from './write-loops';

/** What new commands must be like. */
export interface Manner {
  /** Digits after the point that new points need. */
  readonly decimals: number;
  /** How numbers are written elsewhere in the file. */
  readonly numbers?: NumberStyle | undefined;
  /** Whether a line is drawn along the path, which ends square to it. */
  readonly lined?: boolean;
}

/** @param filled whether open subpaths get the closing line that a fill gives them */
export function pathSource(
  data: string,
  { decimals: least, numbers, lined = false }: Manner,
  filled: boolean,
): PathSource {
  const { commands } = parsePathData(data);
  const absolute = absoluteCommands(commands);
  const style = readStyle(data, commands, numbers);
  const paths = stepPaths(commands, absolute, filled);
  return { data, commands, absolute, paths, style, decimals: Math.max(style.decimals, least), lined };
}

/** Edits, in offsets of the data, that write these loops in place of all that the path holds. */
export function writeInstead(source: PathSource, loops: readonly OrderedLoop[]): TextEdit[] {
  const { data, commands } = source;
  return spliceText(data, { from: 0, to: commands.at(-1)?.span.to ?? 0 }, writeLoops(source, loops));
}
