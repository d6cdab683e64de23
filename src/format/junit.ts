/**
 * One test suite for each file, for build services that show test results: errors and warnings are failures, what could
 * not be read is an error. There is no standard of the format; the names are those that readers agree on (testsuites,
 * testsuite, testcase, failure, error, with `tests`, `failures` and `errors`).
 */
import type { CheckedFile, PlacedFinding } from './checked-file';
import type { Format } from './format';
import { placeText } from './place-text';
import { oneLine } from './plain-text';

export const formatJunit: Format = ({ files, failures }) => {
  const suites = files.map(suiteOf);
  if (failures.length > 0) suites.push(suite('could not run', failures.map(brokenCase), 0, failures.length));
  return `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites>\n${suites.join('')}</testsuites>\n`;
};

function suiteOf({ path, findings }: CheckedFile): string {
  const failing = findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
  const cases = failing.length > 0 ? failing.map((finding) => failedCase(path, finding)) : [passedCase(path)];
  return suite(path, cases, failing.length, 0);
}

function suite(name: string, cases: readonly string[], failures: number, errors: number): string {
  const counts = `tests="${cases.length}" failures="${failures}" errors="${errors}"`;
  return `  <testsuite name="${attribute(name)}" ${counts}>\n${cases.join('')}  </testsuite>\n`;
}

function failedCase(path: string, { check, severity, message, detail = '', range }: PlacedFinding): string {
  const name = attribute(`${check} ${placeText(range)}`);
  const words = `${path}:${placeText(range)}: ${severity}: ${message}${detail === '' ? '' : ` ${detail}`}`;
  return (
    `    <testcase classname="${attribute(path)}" name="${name}">` +
    `<failure type="${attribute(check)}" message="${attribute(message)}">${content(words)}</failure></testcase>\n`
  );
}

function passedCase(path: string): string {
  return `    <testcase classname="${attribute(path)}" name="check"/>\n`;
}

function brokenCase(message: string): string {
  return `    <testcase classname="tombolo" name="could not run"><error message="${attribute(message)}"/></testcase>\n`;
}

/** Characters that XML 1.0 cannot hold (production 2, Char) become the one that stands for what is unknown. */
function content(text: string): string {
  const held = oneLine(text).replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu, '\ufffd');
  return held.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

function attribute(text: string): string {
  return content(text).replace(/"/g, '&quot;');
}
