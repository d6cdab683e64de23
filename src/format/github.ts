/**
 * One workflow command for each finding: build services that know them show it at its line.
 * Source: GitHub Docs, "Workflow commands for GitHub Actions", `error`, `warning` and `notice`.
 */
import type { CheckedFile, PlacedFinding } from './checked-file';
import type { Format } from './format';
import { oneLine } from './plain-text';

const COMMANDS = { error: 'error', warning: 'warning', info: 'notice', hint: 'notice' } as const;

export const formatGithub: Format = ({ files }) =>
  files.flatMap((file) => file.findings.map((finding) => commandOf(file, finding))).join('');

/** Lines and columns count from one; columns are only told where the line is one. */
function commandOf({ path }: CheckedFile, { check, severity, message, range }: PlacedFinding): string {
  const { start, end } = range;
  const properties = {
    file: path,
    line: start.line + 1,
    endLine: end.line + 1,
    ...(start.line === end.line && { col: start.character + 1, endColumn: end.character + 1 }),
    title: check,
  };
  const told = Object.entries(properties).map(([key, value]) => `${key}=${property(oneLine(String(value)))}`);
  return `::${COMMANDS[severity]} ${told.join(',')}::${data(oneLine(message))}\n`;
}

function data(text: string): string {
  return text.replace(/%/g, '%25').replace(/\r/g, '%0D').replace(/\n/g, '%0A');
}

function property(text: string): string {
  return data(text).replace(/:/g, '%3A').replace(/,/g, '%2C');
}
