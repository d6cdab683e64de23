/**
 * Source: SVG 2, "Computing the equivalent transform of an SVG viewport" and "The viewBox attribute"
 * (https://www.w3.org/TR/SVG2/coords.html#ComputingAViewportsTransform); numbers reckoned with that algorithm.
 */
import { describe, expect, it } from 'vitest';
import { parseAspectRatio, parseViewBoxAttribute, viewportTransform } from '../../src/drawing/viewport/viewport';
import { boxes, draw, filledArea } from '../drawing/draw';

function fitted(viewBox: string, width: number, height: number, ratio: string): number[] {
  const box = parseViewBoxAttribute(viewBox);
  const aspect = parseAspectRatio(ratio);
  if (!box || !aspect) throw new Error('unreadable');
  const { a, d, e, f } = viewportTransform(box, { width, height }, aspect);
  return [a, d, e, f];
}

describe('SVG 2, "The viewBox attribute"', () => {
  it('300 × 200 on 1500 × 1000 is scale(0.2), 150 × 200 is scale(0.1 0.2)', () => {
    expect(fitted('0 0 1500 1000', 300, 200, 'none')).toEqual([0.2, 0.2, 0, 0]);
    expect(fitted('0 0 1500 1000', 150, 200, 'none')).toEqual([0.1, 0.2, 0, 0]);
  });
});

describe('SVG 2, example PreserveAspectRatio.svg', () => {
  it.each([
    ['xMinYMin meet', 50, 30, 0.75, 0, 0],
    ['xMidYMid meet', 50, 30, 0.75, 13.75, 0],
    ['xMaxYMax meet', 50, 30, 0.75, 27.5, 0],
    ['xMinYMin meet', 30, 60, 1, 0, 0],
    ['xMidYMid meet', 30, 60, 1, 0, 10],
    ['xMaxYMax meet', 30, 60, 1, 0, 20],
    ['xMinYMin slice', 30, 60, 1.5, 0, 0],
    ['xMidYMid slice', 30, 60, 1.5, -7.5, 0],
    ['xMaxYMax slice', 30, 60, 1.5, -15, 0],
    ['xMinYMin slice', 50, 30, 5 / 3, 0, 0],
    ['xMidYMid slice', 50, 30, 5 / 3, 0, -18.3333],
    ['xMaxYMax slice', 50, 30, 5 / 3, 0, -36.6667],
  ])('%s in %d × %d', (ratio, width, height, scale, x, y) => {
    const [a, d, e, f] = fitted('0 0 30 40', width, height, ratio);
    expect(a).toBeCloseTo(scale, 6);
    expect(d).toBeCloseTo(scale, 6);
    expect(e).toBeCloseTo(x, 4);
    expect(f).toBeCloseTo(y, 4);
  });
});

describe('SVG 2, its own example files at true size', () => {
  it('triangle01.svg: 4 cm for 400 units, the triangle is 200 mm²', () => {
    const drawing = draw(
      '<svg width="4cm" height="4cm" viewBox="0 0 400 400" xmlns="http://www.w3.org/2000/svg">' +
        '<path d="M 100 100 L 300 100 L 200 300 z" fill="red"/></svg>',
    );
    expect(filledArea(drawing.shapes[0]!)).toBeCloseTo(200, 6);
  });

  it('arcs01.svg: 12cm × 5.25cm on 1200 × 400 is shifted down by 6.25 mm', () => {
    const drawing = draw(
      '<svg width="12cm" height="5.25cm" viewBox="0 0 1200 400" xmlns="http://www.w3.org/2000/svg">' +
        '<rect width="10" height="10"/></svg>',
    );
    expect(drawing.toMm.a).toBeCloseTo(0.1, 12);
    expect(boxes(drawing)).toEqual([[0, 6.25, 1, 1]]);
  });
});

describe('invalid boxes', () => {
  it('a negative size makes the attribute void, a zero size disables rendering', () => {
    const file = (viewBox: string): string =>
      `<svg xmlns="http://www.w3.org/2000/svg" width="96" height="96" viewBox="${viewBox}">` +
      `<rect width="96" height="96"/></svg>`;
    expect(boxes(draw(file('0 0 -10 10')))).toEqual([[0, 0, 25.4, 25.4]]);
    expect(draw(file('0 0 0 10')).shapes).toEqual([]);
  });
});
