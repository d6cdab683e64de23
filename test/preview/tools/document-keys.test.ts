import { expect, it as test } from 'vitest';
import { wantsRedo, wantsSave } from '../../../src/preview/tools/document-keys';

const NONE = { key: 'z', ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };

test.each([
  [false, { ctrlKey: true }],
  [false, { metaKey: true }],
  [true, { ctrlKey: true, shiftKey: true, key: 'Z' }],
  [true, { metaKey: true, shiftKey: true, key: 'Z' }],
  [true, { ctrlKey: true, key: 'y' }],
  [undefined, {}],
  [undefined, { ctrlKey: true, altKey: true }],
  [undefined, { ctrlKey: true, key: 's' }],
])('%s for %o', (redo, pressed) => {
  expect(wantsRedo({ ...NONE, ...pressed })).toBe(redo);
});

test.each([
  [true, { key: 's', ctrlKey: true }],
  [true, { key: 'S', metaKey: true }],
  [false, { key: 's' }],
  [false, { key: 's', ctrlKey: true, shiftKey: true }],
  [false, { key: 's', ctrlKey: true, altKey: true }],
  [false, { key: 'z', ctrlKey: true }],
])('saves: %s for %o', (saves, pressed) => {
  expect(wantsSave({ ...NONE, ...pressed })).toBe(saves);
});
