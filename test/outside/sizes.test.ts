/** Physical sizes of known things, read from the text. */
import { describe, expect, it } from 'vitest';
import { check } from '../../src/engine/check/check-file';

const svg = (attributes: string, body = '') => `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;

describe('stated size', () => {
  it('of a banknote is 155.956 × 66.294 mm', () => {
    // Bureau of Engraving and Printing, FAQ: 2.61 inches wide by 6.14 inches long.
    const { drawing } = check(svg('width="6.14in" height="2.61in"'));
    expect(drawing.width).toBeCloseTo(155.956, 9);
    expect(drawing.height).toBeCloseTo(66.294, 9);
    expect(drawing.sizeStated).toBe(true);
  });

  it('of arcs01 puts its shapes 6.25 mm lower than its viewBox says', () => {
    // SVG 2, images/paths/arcs01.svg: 12cm × 5.25cm with viewBox 0 0 1200 400, xMidYMid meet.
    const { sheets } = check(
      svg('width="12cm" height="5.25cm" viewBox="0 0 1200 400"', '<rect width="1200" height="400"/>'),
    );
    const ring = sheets[0]?.openings[0]?.outer ?? [];
    const ys = [...ring].filter((_, i) => i % 2 === 1);
    expect(Math.min(...ys)).toBeCloseTo(6.25, 4);
    expect(Math.max(...ys)).toBeCloseTo(46.25, 4);
  });

  it('in pixels is read at 96 to the inch, and said to be a guess', () => {
    const { drawing, findings } = check(svg('width="96" height="192"'));
    expect([drawing.width, drawing.height]).toEqual([25.4, 50.8]);
    expect(findings.map((finding) => finding.check)).toEqual(['unstated-size']);
  });
});
