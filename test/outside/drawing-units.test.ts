/**
 * Source: SVG 2, "Coordinate Systems, Transformations and Units" (https://www.w3.org/TR/SVG2/coords.html#Units), which
 * takes absolute units from CSS Values and Units 4 (https://drafts.csswg.org/css-values-4/#absolute-lengths).
 */
import { describe, expect, it } from 'vitest';
import { parseSvgLength, toMillimetres, toUserUnits } from '../../src/drawing/viewport/units';
import { boxes, draw, inMillimetres } from '../drawing/draw';

const VIEWPORT = { width: 4000, height: 2000 };

function userUnits(text: string, axis: 'x' | 'y' | 'diagonal' = 'x'): number {
  const length = parseSvgLength(text);
  if (!length) throw new Error(`${text} is no length`);
  return toUserUnits(length, axis, VIEWPORT, 16);
}

describe('CSS Values and Units 4, "Absolute Lengths"', () => {
  it.each([
    ['1in', 96],
    ['2.54cm', 96],
    ['25.4mm', 96],
    ['101.6Q', 96],
    ['72pt', 96],
    ['6pc', 96],
    ['1pc', 16],
    ['1pt', 4 / 3],
    ['1cm', 96 / 2.54],
    ['1mm', 96 / 25.4],
    ['1Q', 96 / 101.6],
  ])('%s is %d user units', (text, expected) => {
    expect(userUnits(text)).toBeCloseTo(expected, 12);
  });

  it('40 Q make a centimetre', () => {
    expect(toMillimetres({ value: 40, unit: 'q' })).toBeCloseTo(10, 12);
  });
});

describe('SVG 2, example Units.svg', () => {
  it.each([
    ['4in', 384],
    ['2in', 192],
    ['.4in', 38.4],
  ])('%s is %d user units', (text, expected) => {
    expect(userUnits(text)).toBeCloseTo(expected, 12);
  });

  it('percentages are of width, height and mean diagonal', () => {
    expect(userUnits('10%', 'x')).toBeCloseTo(400, 12);
    expect(userUnits('10%', 'y')).toBeCloseTo(200, 12);
    // Printed as 31.62 in the specification.
    expect(userUnits('1%', 'diagonal')).toBeCloseTo(31.6228, 4);
  });

  it('a stroke of 1 % in a viewBox of 4000 × 2000 is 31.62 user units wide', () => {
    const drawing = draw(
      '<svg xmlns="http://www.w3.org/2000/svg" width="4000mm" height="2000mm" viewBox="0 0 4000 2000">' +
        '<path d="M0 0H100" stroke="red" stroke-width="1%"/></svg>',
    );
    expect(drawing.shapes.at(-1)?.strokeWidth).toBeCloseTo(31.6228, 4);
  });
});

describe('sizes of sheets', () => {
  // Bureau of Engraving and Printing, "What is the size of a currency note?": 6.14 × 2.61 inches. Only the size is
  // used.
  it('6.14in × 2.61in is 155.956 mm × 66.294 mm', () => {
    const drawing = draw('<svg xmlns="http://www.w3.org/2000/svg" width="6.14in" height="2.61in"/>');
    expect(drawing.width).toBeCloseTo(155.956, 9);
    expect(drawing.height).toBeCloseTo(66.294, 9);
    expect(drawing.width * drawing.height).toBeCloseTo(10338.947064, 6);
    expect(drawing.sizeStated).toBe(true);
  });

  it('a rectangle stated in inches measures the same in millimetres', () => {
    expect(
      boxes(
        draw(
          '<svg xmlns="http://www.w3.org/2000/svg" width="4in" height="4in">' +
            '<rect x="1in" y="25.4mm" width="72pt" height="6pc"/></svg>',
        ),
      ),
    ).toEqual([[25.4, 25.4, 25.4, 25.4]]);
    expect(boxes(draw(inMillimetres('<rect width="10%" height="20%"/>')))).toEqual([[0, 0, 10, 20]]);
  });
});
