/**
 * Source: SVG 2, "Painting: Filling, Stroking and Marker Symbols" (https://www.w3.org/TR/SVG2/painting.html), its
 * example files miter-limit.svg and linecap.svg, and closed forms: without folds a stroke's area is length × width.
 */
import { describe, expect, it } from 'vitest';
import { boxOf, draw, drawMm, filledArea } from '../drawing/draw';

/** The stroke of content in a root of 1000 mm, one user unit to the millimetre. */
function strokeOf(content: string): NonNullable<ReturnType<typeof draw>['shapes'][number]> {
  const drawing = draw(
    '<svg xmlns="http://www.w3.org/2000/svg" width="1000mm" height="1000mm" viewBox="0 0 1000 1000">' +
      `<g fill="none" stroke="black">${content}</g></svg>`,
  );
  const shape = drawing.shapes.at(-1);
  if (shape?.part !== 'stroke') throw new Error('no stroke');
  return shape;
}

function strokeArea(content: string): number {
  return filledArea(strokeOf(content));
}

describe('line caps: linecap.svg, a line of 120 with width 35', () => {
  it.each([
    ['butt', 4200],
    ['square', 5425],
    ['round', 5162.1128],
  ])('%s', (cap, area) => {
    expect(strokeArea(`<path d="M100 100h120" stroke-width="35" stroke-linecap="${cap}"/>`)).toBeCloseTo(area, 1);
  });

  it.each([
    ['round', Math.PI * 17.5 ** 2],
    ['square', 35 ** 2],
  ])('a subpath of zero length, %s', (cap, area) => {
    const path = (d: string): string => `<path d="${d}" stroke-width="35" stroke-linecap="${cap}"/>`;
    for (const d of ['M100 100z', 'M100 100h0', 'M100 100L100 100', 'M100 100c0 0 0 0 0 0']) {
      expect(strokeArea(path(d))).toBeCloseTo(area, 1);
    }
  });

  it('a subpath of zero length with butt caps, and a lone moveto, leave nothing', () => {
    expect(drawMm('<path d="M10 10z" stroke="red" fill="none" stroke-width="5"/>').shapes).toEqual([]);
    expect(drawMm('<path d="M10 10" stroke="red" fill="none" stroke-linecap="round"/>').shapes).toEqual([]);
  });
});

describe('line joins', () => {
  it('miter-limit.svg: bevel at the default limit, tip at 264.2328 with limit 10', () => {
    const path = (limit: string): string => `<path d="m 25,60 150,30 -150,30" stroke-width="35" ${limit}/>`;
    const right = (content: string): number => {
      const [x, , width] = boxOf(strokeOf(content).subpaths);
      return x + width;
    };
    expect(right(path('stroke-miterlimit="10"'))).toBeCloseTo(264.2328, 4);
    // The outer corners of the bevel: 17.5 across either line's direction (150, ±30).
    expect(right(path(''))).toBeCloseTo(175 + (17.5 * 30) / Math.hypot(150, 30), 6);
  });

  it.each([
    [4, 28.955],
    [10, 11.4783],
  ])('limit %d turns at %d°', (limit, degrees) => {
    const reach = (angle: number): number => {
      const [x, y] = [100 * Math.cos((angle * Math.PI) / 180), 100 * Math.sin((angle * Math.PI) / 180)];
      const [left] = boxOf(
        strokeOf(`<path d="M${500 + 100} 500L500 500l${x} ${y}" stroke-width="10" ` + `stroke-miterlimit="${limit}"/>`)
          .subpaths,
      );
      return 500 - left;
    };
    expect(reach(degrees + 0.01)).toBeGreaterThan(5 * limit * 0.9);
    expect(reach(degrees - 0.01)).toBeLessThan(5.01);
  });

  it('h 100 h 100 has no join, h 100 h -100 has one', () => {
    const round = 'stroke-width="10" stroke-linejoin="round"';
    expect(strokeArea(`<path d="M100 100h100h100" ${round}/>`)).toBeCloseTo(2000, 6);
    expect(strokeArea(`<path d="M100 100h100h-100" ${round}/>`)).toBeCloseTo(1000 + (Math.PI * 25) / 2, 2);
  });

  it('a square outline: closed it is joined four times, ended by a line it is capped', () => {
    const [side, width] = [100, 10];
    const closed = (side + width) ** 2 - (side - width) ** 2;
    const square = (end: string, join: string): string =>
      `<path d="M100 100h100v100h-100${end}" stroke-width="${width}" stroke-linejoin="${join}"/>`;
    expect(strokeArea(square('z', 'miter'))).toBeCloseTo(closed, 3);
    expect(strokeArea(square('z', 'bevel'))).toBeCloseTo(closed - 4 * (width ** 2 / 8), 3);
    expect(strokeArea(square('z', 'round'))).toBeCloseTo(closed - 4 * (1 - Math.PI / 4) * (width / 2) ** 2, 2);
    expect(strokeArea(square('v-100', 'miter'))).toBeCloseTo(closed - (width / 2) ** 2, 3);
    expect(strokeArea('<rect x="100" y="100" width="100" height="100" stroke-width="10"/>')).toBeCloseTo(closed, 3);
  });
});

describe('area is length × width', () => {
  it('a circle', () => {
    expect(strokeArea('<circle cx="200" cy="200" r="50" stroke-width="8"/>')).toBeCloseTo(2 * Math.PI * 50 * 8, 1);
  });

  it('a circle narrower than the pen is a disc', () => {
    expect(strokeArea('<circle cx="200" cy="200" r="5" stroke-width="40"/>')).toBeCloseTo(Math.PI * 25 ** 2, 1);
  });

  // Perimeter by the arithmetic-geometric mean. Largest curvature 1/40: no fold below a width of 80.
  it.each([1, 10, 70])('ellipse01.svg, 250 × 100, width %d', (width) => {
    const area = strokeArea(`<ellipse cx="500" cy="500" rx="250" ry="100" stroke-width="${width}"/>`);
    expect(Math.abs(area / (1150.6556298 * width) - 1)).toBeLessThan(2e-5);
  });

  // Lengths of the specification's cubic01.svg and quad01.svg.
  it.each([
    ['M100,200 C100,100 250,100 250,200 S400,300 400,200', 475.747299],
    ['M200,300 Q400,50 600,300 T1000,300', 975.542188],
  ])('%s', (d, length) => {
    expect(Math.abs(strokeArea(`<path d="${d}" stroke-width="3"/>`) / (3 * length) - 1)).toBeLessThan(1e-4);
  });

  it('an uneven transform multiplies the area by its determinant', () => {
    const path = '<path d="M100,200 C100,100 250,100 250,200 S400,300 400,200" stroke-width="3"/>';
    const area = strokeArea(`<g transform="matrix(-.5 .2 .1 1.2 300 20)">${path}</g>`);
    expect(Math.abs(area / (3 * 475.747299 * (0.5 * 1.2 + 0.2 * 0.1)) - 1)).toBeLessThan(1e-4);
  });
});

describe('widths', () => {
  it('zero paints nothing, a negative width is no value', () => {
    expect(() => strokeOf('<path d="M0 0h10" stroke-width="0"/>')).toThrow();
    expect(strokeArea('<path d="M0 0h10" stroke-width="-5"/>')).toBeCloseTo(10, 9);
  });

  it('non-scaling-stroke: px of the root, whatever the transform', () => {
    const shape = strokeOf(
      '<path d="M0 0h10" stroke-width="9.6" transform="scale(7 3)" vector-effect="non-scaling-stroke"/>',
    );
    expect(shape.strokeWidth).toBeCloseTo(2.54, 9);
    expect(filledArea(shape)).toBeCloseTo(70 * 2.54, 6);
  });
});

describe('dashes', () => {
  const dashed = (attributes: string): string => `<path d="M100 100h100" stroke-width="2" ${attributes}/>`;
  const starts = (content: string): number[][] =>
    strokeOf(content).subpaths.map((subpath) => {
      const [x, , width] = boxOf([subpath]);
      return [Math.round((x - 100) * 1e6) / 1e6, Math.round(width * 1e6) / 1e6];
    });

  it('an odd list counts twice', () => {
    expect(starts(dashed('stroke-dasharray="20 10 5"'))).toEqual([
      [0, 20],
      [30, 5],
      [55, 10],
      [70, 20],
    ]);
  });

  it('the offset moves the pattern back', () => {
    expect(starts(dashed('stroke-dasharray="30 20" stroke-dashoffset="10"'))).toEqual([
      [0, 20],
      [40, 30],
      [90, 10],
    ]);
    expect(starts(dashed('stroke-dasharray="30 20" stroke-dashoffset="-10"'))).toEqual([
      [10, 30],
      [60, 30],
    ]);
  });

  it('pathLength scales the pattern', () => {
    expect(starts(dashed('stroke-dasharray="5" pathLength="10"'))).toEqual([[0, 50]]);
  });

  it('dashes of no length are dots with round caps', () => {
    const area = strokeArea(dashed('stroke-dasharray="0 25" stroke-linecap="round"'));
    expect(area).toBeCloseTo(4 * Math.PI, 2);
  });

  it('round a circle: dash and gap in equal parts cover half of it', () => {
    const radius = 50;
    const dash = (2 * Math.PI * radius) / 8;
    const area = strokeArea(`<circle cx="200" cy="200" r="${radius}" stroke-width="4" stroke-dasharray="${dash}"/>`);
    expect(area).toBeCloseTo(4 * Math.PI * radius, 1);
  });

  it('all zeros are no dashes', () => {
    expect(strokeArea(dashed('stroke-dasharray="0 0"'))).toBeCloseTo(200, 6);
  });
});
