import { expect, test } from 'vitest';
import { formatUnix } from '../../src/format/unix';
import { file, finding, input, range } from './made-files';

test('one line for each finding, counted from one', () => {
  const island = finding({ check: 'floating-island', severity: 'error', message: 'Falls out.' });
  expect(formatUnix(input([file([finding(), island])]))).toBe(
    'heron.svg:5:13: warning: Bridge 0.42 mm wide; 0.80 mm is the least. [thin-bridge]\n' +
      'heron.svg:5:13: error: Falls out. [floating-island]\n',
  );
});

test('a name or message with line ends or controls stays in its line', () => {
  const odd = finding({ message: 'Layer "a\nb\u001b[2Jc" slips.\u2028', range: range(0, 0, 0, 0) });
  expect(formatUnix(input([file([odd], { path: 'he\nron.svg' })]))).toBe(
    'he ron.svg:1:1: warning: Layer "a b [2Jc" slips. [thin-bridge]\n',
  );
});

test('nothing found prints nothing', () => {
  expect(formatUnix(input([file([])]))).toBe('');
});

test('what a program draws stands at its line, with the drawing behind it', () => {
  const at = { line: 6, character: 12 };
  const from = {
    path: 'gen.mjs',
    range: { start: at, end: at },
    drawn: 'reed2, number 2 of 5 drawn here',
    callers: [],
  };
  expect(formatUnix(input([file([finding({ from })])]))).toBe(
    'gen.mjs:7:13: warning: Bridge 0.42 mm wide; 0.80 mm is the least. (reed2, number 2 of 5 drawn here; heron.svg:5:13) [thin-bridge]\n',
  );
});
