import { expect, it as test } from 'vitest';
import { wantsRedo } from '../../../src/preview/tools/undo-keys';

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
