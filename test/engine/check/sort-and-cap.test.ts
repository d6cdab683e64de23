import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/checks/finding';
import { capFindings, sortFindings } from '../../../src/engine/check/sort-and-cap';
import { withIds } from '../../../src/report/finding-id';

const finding = (severity: Finding['severity'], from: number): Finding => ({
  check: 'thin-bridge',
  severity,
  message: `at ${from}`,
  span: { from, to: from + 1 },
  related: [],
});

const named = (findings: readonly Finding[]) => withIds(findings, '', () => '1');

describe('sortFindings', () => {
  it('puts the serious first, then follows the text', () => {
    const ordered = sortFindings([finding('info', 1), finding('error', 9), finding('warning', 3), finding('error', 2)]);
    expect(ordered.map(({ severity, span }) => `${severity} ${span.from}`)).toEqual([
      'error 2',
      'error 9',
      'warning 3',
      'info 1',
    ]);
  });
});

describe('capFindings', () => {
  it('keeps 200 of a check and counts the rest', () => {
    const capped = capFindings(named(Array.from({ length: 250 }, (_, i) => finding('warning', i))));
    expect(capped).toHaveLength(201);
    expect(new Set(capped.map(({ id }) => id)).size).toBe(201);
    expect(capped.at(-1)?.message).toBe('50 more findings of thin-bridge in this file are not listed.');
  });

  it('leaves fewer alone', () => {
    const few = named([finding('error', 1), finding('error', 2)]);
    expect(capFindings(few)).toEqual(few);
  });
});
