import { expect, test } from 'vitest';
import { nonsenseIn } from './nonsense';

test.each([
  ['Opening only 5e+307 mm wide (minimum 0.60 mm).', '5e+307'],
  ['Slot 148166666.67 mm wide.', '148166666.67'],
  ['Bridge NaN mm wide.', 'NaN'],
])('no sheet has what "%s" says', (message, measure) => {
  expect(nonsenseIn(message)).toBe(measure);
});

test.each([
  'Bridge 0.42 mm wide; minimum 0.80 mm.',
  'The attribute .887-2.227e-9-…381.462 has no value: .887-2.227e-9-…381.462="…" was expected.',
  'The value of filNaNl has no closing quote.',
  'The unit of width="1e-9q" is not known.',
  '<a1e-9> is not closed.',
  'iNaNld-outline" is given twice on this element: the first is used.',
  'The number -1e-308 cannot follow Z: a command letter was expected.',
  'SVG has no element de-1e-308Path: it and what it contains are left out.',
])('what stands in the text is no measure of ours: %s', (message) => {
  expect(nonsenseIn(message)).toBeUndefined();
});
