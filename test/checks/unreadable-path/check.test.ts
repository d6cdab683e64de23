import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const broken = (data: string) => findingsOf('unreadable-path', sheetOf(`<path d="${data}"/>`));

describe('unreadable-path', () => {
  // SVG 2, "Error handling in path data": drawn up to the command with the error, then reported.
  it.each([
    ['M20 20H40V40H20X', 'X'],
    ['M20 20H40V40a5 5 0 7 1 5 5', '7'],
    ['M20 20L40 20 60', ''],
    ['20 20L40 40', '20'],
  ])('points at the error in %s', (data, text) => {
    const found = broken(data);
    expect(found).toHaveLength(1);
    if (text !== '') expect(found[0]?.text).toBe(text);
  });

  it.each(['M20 20H40V40H20Z', 'M20 20h20v20h-20z m30 30a5 5 0 0110 0z', '', 'none'])('takes %j', (data) => {
    expect(broken(data)).toEqual([]);
  });
});
