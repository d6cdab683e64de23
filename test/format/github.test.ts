import { expect, it as test } from 'vitest';
import { formatGithub } from '../../src/format/github';
import { file, finding, input, range } from './made-files';

/** GitHub Docs, "Workflow commands for GitHub Actions": `::error file={name},line={line},endLine={endLine},title={title}::{message}` */
const COMMAND =
  /^::(error|warning|notice) file=([^,:]+),line=(\d+),endLine=(\d+)(?:,col=(\d+),endColumn=(\d+))?,title=([\w-]+)::(.*)$/;

test('one command a finding, at its line and columns', () => {
  const text = formatGithub(input([file([finding(), finding({ severity: 'hint' })])]));
  const [first, second] = text.trimEnd().split('\n');
  expect(COMMAND.exec(first!)?.slice(1)).toEqual([
    ...['warning', 'heron.svg', '5', '5', '13', '41', 'thin-bridge'],
    'Bridge 0.42 mm wide; 0.80 mm is the least.',
  ]);
  expect(COMMAND.exec(second!)?.[1]).toBe('notice');
});

test('columns are left out where a finding runs over several lines', () => {
  const long = { ...range(4, 12, 0, 210), end: { line: 6, character: 3 } };
  expect(formatGithub(input([file([finding({ range: long })])]))).toMatch(/line=5,endLine=7,title=/);
});

test('names and messages are escaped as the runner undoes it', () => {
  const odd = file([finding({ message: '100%::error::x' })], { path: 'a,b:c%.svg' });
  const text = formatGithub(input([odd]));
  expect(text).toContain('file=a%2Cb%3Ac%25.svg,');
  expect(text.trimEnd().endsWith('::100%25::error::x')).toBe(true);
  expect(text.match(/\n/g)).toHaveLength(1);
});
