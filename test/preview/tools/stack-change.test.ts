/** Whether a planned bridge still fits what is shown. */
import { expect, test } from 'vitest';
import { stackChange } from '../../../src/preview/tools/stack-change';
import type { PreviewFinding, PreviewStack } from '../../../src/protocol/index';
import type { FindingId } from '../../../src/report/finding-id';
import { madeStack } from '../made-stack';

const uri = 'file:///heron.svg';
const finding = (message: string, number = 1): PreviewFinding => ({
  number,
  id: `@1/thin-bridge/${number}` as FindingId,
  uri,
  check: 'thin-bridge',
  severity: 'warning',
  layer: 0,
  at: undefined,
  measure: undefined,
  island: false,
  chord: undefined,
  from: 0,
  to: 1,
  message,
});
const told = (...findings: PreviewFinding[]): PreviewStack => ({ ...madeStack({ names: ['Heron'] }), findings });
const before = told(finding('0.45 mm (minimum 0.80 mm)'));
const same = { isOther: false, isChanged: false };

test('the same measures of the same text are no change, whatever the findings are called by', () => {
  expect(stackChange(before, told(finding('0.45 mm (minimum 0.80 mm)', 2)))).toEqual(same);
});

test.each([
  ['another text', { ...before, version: 2 }],
  ['another size', { ...before, width: 20 }],
  ['another limit', told(finding('0.45 mm (minimum 1.00 mm)'))],
  ['a finding less', told()],
])('%s is one', (_, now) => {
  expect(stackChange(before, now)).toEqual({ isOther: false, isChanged: true });
});

test('another drawing, and the first one, are others', () => {
  expect(stackChange(before, { ...before, uri: 'file:///otter.svg' })).toEqual({ isOther: true, isChanged: true });
  expect(stackChange(undefined, before)).toEqual({ isOther: true, isChanged: true });
});
