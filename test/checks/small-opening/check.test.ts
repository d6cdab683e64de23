import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const small = (svg: string, settings = {}) => findingsOf('small-opening', svg, settings);

describe('small-opening', () => {
  it.each([
    ['<circle cx="50" cy="50" r="0.25"/>', '0.50 mm'],
    ['<rect x="50" y="50" width="0.4" height="0.5"/>', '0.40 mm'],
    ['<path d="M20 20H80V20.3H20Z"/>', '0.30 mm'],
  ])('measures the largest disc in %s', (shape, measure) => {
    expect(small(sheetOf(shape))).toMatchObject([{ severity: 'warning', measure, related: [] }]);
  });

  it('underlines the outline that makes it', () => {
    const svg = sheetOf('<path d="M20 20h20v20h-20z M50 50h.3v.3h-.3z"/>');
    expect(small(svg).map(({ text }) => text)).toEqual(['h.3v.3h-.3z']);
  });

  it('lets larger ones go, the kerf counted', () => {
    expect(small(sheetOf('<circle cx="50" cy="50" r="0.31"/>'))).toEqual([]);
    expect(small(sheetOf('<circle cx="50" cy="50" r="0.25"/>'), { kerf: 0.15 })).toEqual([]);
  });
});
