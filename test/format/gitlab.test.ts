import { expect, it as test } from 'vitest';
import { formatGitlab } from '../../src/format/gitlab';
import { file, finding, input } from './made-files';

/** GitLab Docs, "Code Quality report format": the keys that a report must have, and the severities that there are. */
test('has the keys that merge requests read', () => {
  const report = JSON.parse(formatGitlab(input([file([finding(), finding({ severity: 'error' })])])));
  expect(report[0]).toEqual({
    description: 'Bridge 0.42 mm wide; 0.80 mm is the least.',
    check_name: 'thin-bridge',
    fingerprint: expect.stringMatching(/^\w+$/),
    severity: 'major',
    location: { path: 'heron.svg', lines: { begin: 5, end: 5 } },
  });
  expect(report[1].severity).toBe('critical');
  expect(report[1].fingerprint).not.toBe(report[0].fingerprint);
});

test('is an empty list where nothing was found', () => {
  expect(formatGitlab(input([file([])]))).toBe('[]\n');
});
