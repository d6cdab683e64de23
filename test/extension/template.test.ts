import { describe, expect, it } from 'vitest';
import { check } from '../../src/engine/index';
import { MOST_LAYERS, stencilTemplate } from '../../src/extension/setup/template';

const counts = Array.from({ length: MOST_LAYERS }, (_, index) => index + 1);

describe('a new stencil', () => {
  it.each(counts)('with %i layers has nothing wrong with it', (count) => {
    const report = check(stencilTemplate([148, 105], count), {});
    expect(report.findings.map(({ message }) => message)).toEqual([]);
    expect(report.sheets.map(({ layer }) => layer.name)).toEqual(['Reeds', 'Sun', 'Otter', 'Numeral'].slice(0, count));
    expect(report.sheets.every(({ openings }) => openings.length > 0)).toBe(true);
  });

  it.each([
    [60, 60],
    [105, 148.5],
    [1200, 300],
  ])('is as large as was asked for: %f × %f', (width, height) => {
    const { drawing, findings } = check(stencilTemplate([width, height], MOST_LAYERS), {});
    expect([drawing.width, drawing.height, drawing.sizeStated]).toEqual([width, height, true]);
    expect(findings).toEqual([]);
  });
});
