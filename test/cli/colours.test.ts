import { expect, test } from 'vitest';
import { wantsColour } from '../../src/cli/colours';

test.each([
  ['a terminal', undefined, true, {}, true],
  ['a pipe', undefined, false, {}, false],
  ['a build server: still a pipe', undefined, false, { CI: 'true' }, false],
  ['a terminal that knows none', undefined, true, { TERM: 'dumb' }, false],
  ['NO_COLOR', undefined, true, { NO_COLOR: '1' }, false],
  ['an empty NO_COLOR says nothing (no-color.org)', undefined, true, { NO_COLOR: '' }, true],
  ['FORCE_COLOR', undefined, false, { FORCE_COLOR: '1' }, true],
  ['FORCE_COLOR=0', undefined, true, { FORCE_COLOR: '0' }, false],
  ['NO_COLOR before FORCE_COLOR', undefined, true, { NO_COLOR: '1', FORCE_COLOR: '1' }, false],
  ['--color before NO_COLOR', true, false, { NO_COLOR: '1' }, true],
  ['--no-color before FORCE_COLOR', false, true, { FORCE_COLOR: '1' }, false],
])('%s', (_, wanted, isTerminal, environment, expected) => {
  expect(wantsColour({ wanted, isTerminal, environment })).toBe(expected);
});
