import { expect, test } from 'vitest';
import { applyEdits, check, type Fix } from '../../src/engine/index';
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

test.each(['0 40', '0 0 0 40', 'none'])('with viewBox="%s" a renderer draws in a frame of its own', (viewBox) => {
  expect(faultsOf(viewBox, MARSH)).toBeUndefined();
});
