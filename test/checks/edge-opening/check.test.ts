import { describe, expect, it } from 'vitest';
import { readConfig } from '../../../src/engine/check/known-checks';
import { findingsOf, sheetOf } from '../stencils';

const edges = (svg: string, settings = {}) => findingsOf('edge-opening', svg, settings);

describe('edge-opening', () => {
  it.each([
    ['left', '<rect x="0.5" y="20" width="20" height="20"/>'],
    ['right', '<rect x="79.5" y="20" width="20" height="20"/>'],
    ['upper', '<rect x="20" y="0.5" width="20" height="20"/>'],
    ['lower', '<rect x="20" y="79.5" width="20" height="20"/>'],
  ])('measures the rim at the %s edge', (_, rect) => {
    expect(edges(sheetOf(rect))).toMatchObject([{ text: rect, severity: 'error', measure: '0.50 mm' }]);
  });

  it('says when an opening runs across', () => {
    const [across] = edges(sheetOf('<circle cx="50" cy="2" r="10"/>'));
    expect(across?.measure).toBe('0.00 mm');
    expect(across?.message).toMatch(/^Opening crosses the sheet's edge .*: the sheet will come apart there/);
  });

  it('is mended by a margin', () => {
    const { config } = readConfig('{"margin": "5mm"}');
    expect(edges(sheetOf('<rect x="0.5" y="20" width="20" height="20"/>'), { config })).toEqual([]);
  });

  it('lets openings well inside go', () => {
    expect(edges(sheetOf('<rect x="0.9" y="0.9" width="98.2" height="98.2"/>'))).toEqual([]);
  });
});
