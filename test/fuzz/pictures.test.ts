import { expect, test } from 'vitest';
import { applyEdits, check, type Fix, fixesFor } from '../../src/engine/index';
import { pictureFaults } from './pictures';

const sheet = (viewBox: string, marsh: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="${viewBox}">${marsh}</svg>`;
const MARSH = '<path d="M5 5h9v9h-9z"/><path d="M20 20h9v9h-9z"/>';

/** What is said of a change that says of itself that it changes what it does. */
function faultsOf(viewBox: string, marsh: string) {
  const before = check(sheet(viewBox, MARSH));
  const change = { kind: 'made up', title: 'Make up', edits: [] } as unknown as Fix;
  return pictureFaults(before, change, check(applyEdits(sheet(viewBox, marsh), [])));
}

test('a picture that changes where openings do is right', () => {
  expect(faultsOf('0 0 40 40', MARSH.replace('h9v9h-9z"/><path', 'h6v9h-6z"/><path'))).toEqual([]);
});

test('one that changes elsewhere is wrong', () => {
  const [fault] = faultsOf('0 0 40 40', MARSH.replace('/>', ' fill="red"/>')) ?? [];
  expect(fault?.kind).toBe('picture changed');
});

test('a line that cuts nothing may go from the picture, and nothing else with it', () => {
  const lines = '<g fill="none" stroke="#000"><circle cx="12" cy="12" r="8"/><path d="M12 15V9"/></g>';
  const before = check(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24">${lines}</svg>`);
  const finding = before.findings.find(({ check: id }) => id === 'open-outline');
  const fix = finding && fixesFor(before, finding).fixes.find(({ kind }) => kind === 'remove-open-line');
  if (!fix) throw new Error('no fix to look at');
  const fixed = applyEdits(before.text, fix.edits);
  expect(pictureFaults(before, fix, check(fixed))).toEqual([]);
  const painted = check(fixed.replace('#000', '#e00'));
  expect(pictureFaults(before, fix, painted)?.[0]?.kind).toBe('picture changed');
});

test.each(['0 40', '0 0 0 40', 'none'])('with viewBox="%s" a renderer draws in a frame of its own', (viewBox) => {
  expect(faultsOf(viewBox, MARSH)).toBeUndefined();
});
