import { describe, expect, it } from 'vitest';
import { readConfig } from '../../../src/engine/check/known-checks';
import { findingsOf } from '../stencils';

const oversize = (width: number, height: number, bed: string, more = '') => {
  const { config } = readConfig(`{"cutter": {"bed": ${bed}}${more}}`);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 9 9"/>`;
  return findingsOf('oversize-sheet', svg, { config });
};

describe('oversize-sheet', () => {
  it('says what does not fit, once', () => {
    expect(oversize(297, 210, '["200mm", "200mm"]')).toMatchObject([
      { text: 'svg', severity: 'error', measure: '297.00 mm' },
    ]);
    expect(oversize(297, 210, '["200mm", "200mm"]')[0]?.message).toMatch(
      /^Sheet of 297 × 210 mm does not fit the bed \(200 × 200 mm\) either way round/,
    );
  });

  it('says what fits turned only', () => {
    expect(oversize(250, 20, '["200mm", "200mm"]')).toMatchObject([{ severity: 'info' }]);
  });

  it('counts the margin', () => {
    expect(oversize(190, 100, '["200mm", "200mm"]')).toEqual([]);
    expect(oversize(190, 100, '["200mm", "200mm"]', ', "margin": "6mm"')).toHaveLength(1);
  });

  it('says nothing without a bed', () => {
    expect(findingsOf('oversize-sheet', '<svg xmlns="http://www.w3.org/2000/svg" width="9in" height="90in"/>')).toEqual(
      [],
    );
  });
});
