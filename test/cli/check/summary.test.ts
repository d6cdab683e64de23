import { describe, expect, it, test } from 'vitest';
import { errorsOnly, exitCodeFor } from '../../../src/cli/check/summary';
import { summarize } from '../../../src/format/checked-file';
import { file, finding } from '../../format/made-files';

describe('exitCodeFor', () => {
  it.each([
    [{ error: 0, warning: 0, info: 9, hint: 9 }, 0, 0],
    [{ error: 1, warning: 0, info: 0, hint: 0 }, 0, 1],
    [{ error: 1, warning: 0, info: 0, hint: 0 }, 50, 1],
    [{ error: 0, warning: 1, info: 0, hint: 0 }, 0, 1],
    [{ error: 0, warning: 5, info: 0, hint: 0 }, 5, 0],
    [{ error: 0, warning: 6, info: 0, hint: 0 }, 5, 1],
  ])('%j with %i warnings allowed: %i', (summary, allowed, code) => {
    expect(exitCodeFor(summary, allowed)).toBe(code);
  });
});

test('summarize adds what each file counts, listed or not', () => {
  const capped = file([], { counts: { error: 2, warning: 300, info: 1, hint: 0 } });
  expect(summarize([capped, file([finding()])])).toEqual({ error: 2, warning: 301, info: 1, hint: 0 });
});

test('errorsOnly drops the rest from the lists and keeps the counts', () => {
  const [quiet] = errorsOnly([file([finding(), finding({ severity: 'error' })])]);
  expect(quiet?.findings.map(({ severity }) => severity)).toEqual(['error']);
  expect(quiet?.counts).toMatchObject({ error: 1, warning: 1 });
});
