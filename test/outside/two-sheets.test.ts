/** A few icon layers cut as two sheets; `test/wide/two-sheets.test.ts` has a hundred of them at three sizes. */
import { expect, it as test } from 'vitest';
import { iconLayers } from './icon-layers';
import { judgeTwoSheets } from './judge-two-sheets';

test.each([50])('covers all bridges of icons %s mm wide, at any slip', (size) => {
  for (const { name, text } of iconLayers(4)) {
    const { refusals, faults, islands, off } = judgeTwoSheets(text, size);
    expect({ name, refusals, faults }).toEqual({ name, refusals: [], faults: [] });
    expect(islands).toBeGreaterThan(0);
    expect(off).toBeLessThan(1e-6);
  }
});
