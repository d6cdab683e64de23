/**
 * One line for each finding, as compilers write them: `file:line:column: severity: message [check]`. What a program draws
 * is told at the program's line, and the drawing behind it.
 */
import type { PlacedFinding } from './checked-file';
import type { Format } from './format';
import { placeText } from './place-text';
import { oneLine } from './plain-text';

export const formatUnix: Format = ({ files }) =>
  files.flatMap(({ path, findings }) => findings.map((finding) => line(path, finding))).join('');

function line(path: string, { range, severity, message, check, from }: PlacedFinding): string {
  const own = `${oneLine(path)}:${placeText(range)}`;
  if (!from) return `${own}: ${severity}: ${oneLine(message)} [${check}]\n`;
  const words = `${oneLine(message)} (${oneLine(from.drawn)}; ${own})`;
  return `${oneLine(from.path)}:${placeText(from.range)}: ${severity}: ${words} [${check}]\n`;
}
