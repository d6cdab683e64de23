/**
 * Source: SVG 2, "Winding rule: the fill-rule property", figures fillrule-nonzero.svg and fillrule-evenodd.svg
 * (https://www.w3.org/TR/SVG2/painting.html#WindingRule). Areas reckoned from the coordinates.
 */
import { describe, expect, it } from 'vitest';
import { draw, filledArea } from '../drawing/draw';

const STAR = 'M 250,75 L 323,301 131,161 369,161 177,301 z';
const DISC = (radius: number, sweep: 0 | 1): string =>
  `M ${600 + radius},200 a ${radius},${radius} 0 1 ${sweep} ${-2 * radius},0 ` +
  `a ${radius},${radius} 0 1 ${sweep} ${2 * radius},0 z`;

function area(data: string, rule: 'nonzero' | 'evenodd'): number {
  const drawing = draw(
    '<svg xmlns="http://www.w3.org/2000/svg" width="1200mm" height="400mm" viewBox="0 0 1200 400">' +
      `<path d="${data}" fill-rule="${rule}"/></svg>`,
  );
  return filledArea(drawing.shapes[0]!);
}

describe('fill-rule', () => {
  it('the star: nonzero 17523.2309, evenodd 12108.4617', () => {
    expect(area(STAR, 'nonzero')).toBeCloseTo(17523.2309, 2);
    expect(area(STAR, 'evenodd')).toBeCloseTo(12108.4617, 2);
  });

  it('two discs of one direction: a full disc, or a ring', () => {
    expect(area(DISC(107, 1) + DISC(49, 1), 'nonzero')).toBeCloseTo(35968.0943, 0);
    expect(area(DISC(107, 1) + DISC(49, 1), 'evenodd')).toBeCloseTo(28425.1303, 0);
  });

  it('the inner disc turned round: a ring by both rules', () => {
    expect(area(DISC(107, 1) + DISC(49, 0), 'nonzero')).toBeCloseTo(28425.1303, 0);
    expect(area(DISC(107, 1) + DISC(49, 0), 'evenodd')).toBeCloseTo(28425.1303, 0);
  });
});
