import { expect, test } from 'vitest';
import { nearestWord } from '../../src/text/nearest-word';

test.each([
  ['cuter', ['size', 'cutter', 'limits'], 'cutter'],
  ['card-0.33', ['paper-0.1', 'card-0.3', 'card-0.5'], 'card-0.3'],
  ['opnings', ['openings', 'sheet'], 'openings'],
  ['sheets', ['openings', 'sheet'], 'sheet'],
  ['plywood', ['paper-0.1', 'card-0.3'], undefined],
  ['', ['off'], undefined],
  ['x', [], undefined],
])('%s', (written, words, meant) => expect(nearestWord(written, words)).toBe(meant));
