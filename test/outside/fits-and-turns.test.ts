/** Sizes that standards state, whether they lie on a bed, and what a turn about a pin moves. */
import { describe, expect, it } from 'vitest';
import { check, readConfig } from '../../src/engine/index';
import { areaOf, difference, intersection } from '../../src/geometry/boolean/index';

const svg = (attributes: string, body = '') => `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;

/** ISO 216, series A, in mm (from a copy, not from the standard itself). */
const ISO_216: readonly (readonly [string, number, number])[] = [
  ['A0', 841, 1189],
  ['A1', 594, 841],
  ['A2', 420, 594],
  ['A3', 297, 420],
  ['A4', 210, 297],
  ['A5', 148, 210],
  ['A6', 105, 148],
  ['A7', 74, 105],
  ['A8', 52, 74],
];

/**
 * ISO/IEC 7810, in mm (from a copy). Metric and inch figures are each rounded: one is not to be worked out from the
 * other.
 */
const ISO_7810: readonly (readonly [string, number, number])[] = [
  ['ID-1', 85.6, 53.98],
  ['ID-2', 105, 74],
  ['ID-3', 125, 88],
  ['ID-000', 25, 15],
];

describe('standard sizes', () => {
  it.each([...ISO_216, ...ISO_7810])(
    '%s of %d × %d mm has them stated in mm, in cm and by the project',
    (_, width, height) => {
      for (const attributes of [
        `width="${width}mm" height="${height}mm"`,
        `width="${width / 10}cm" height="${height / 10}cm"`,
      ]) {
        const { drawing, sheets } = check(svg(attributes, '<path d="M0 0h1v1z"/>'));
        expect([drawing.width, drawing.height]).toEqual([expect.closeTo(width, 9), expect.closeTo(height, 9)]);
        expect(sheets[0]?.frame.maxX).toBeCloseTo(width, 9);
      }
      const { config } = readConfig(`{"size": {"width": "${width}mm"}}`);
      const { drawing } = check(svg(`viewBox="0 0 ${width * 3} ${height * 3}"`), { config });
      expect(drawing.height).toBeCloseTo(height, 9);
    },
  );

  it('halves each sheet of the series, rounded down to whole millimetres', () => {
    // ISO 216: the next size is half of the one before, its sides rounded down.
    for (let i = 1; i < ISO_216.length; i += 1) {
      const [[, width, height], [, narrower, shorter]] = [ISO_216[i - 1]!, ISO_216[i]!];
      expect([narrower, shorter]).toEqual([Math.floor(height / 2), width]);
    }
  });

  it('of ID-1 is its own in inches: 3.370 in is 85.598 mm, not 85.60', () => {
    const { drawing } = check(svg('width="3.370in" height="2.125in"'));
    expect(drawing.width).toBeCloseTo(85.598, 9);
    expect(drawing.height).toBeCloseTo(53.975, 9);
  });
});

describe('a bed of 200 × 200 mm', () => {
  // J. E. Wetzel, "Rectangles in rectangles", Mathematics Magazine (JSTOR 2691523), after Carver; the sizes as above,
  // the banknote's from the Bureau of Engraving and Printing. The bed itself: common practice, no source.
  const severities = (width: number, height: number, bed = '["200mm", "200mm"]') => {
    const { config } = readConfig(`{"cutter": {"bed": ${bed}}}`);
    return check(svg(`width="${width}mm" height="${height}mm"`), { config })
      .findings.filter((finding) => finding.check === 'oversize-sheet')
      .map(({ severity }) => severity);
  };

  it.each([
    [155.956, 66.294],
    [105, 148],
    [85.6, 53.98],
  ])('takes %d × %d mm upright', (width, height) => {
    expect(severities(width, height)).toEqual([]);
    expect(severities(height, width)).toEqual([]);
  });

  it.each([
    [250, 20],
    [210, 70],
    [70, 210],
  ])('takes %d × %d mm only turned', (width, height) => {
    expect(severities(width, height)).toEqual(['info']);
  });

  it.each([
    [210, 297],
    [215.9, 279.4],
    [148, 210],
    [250, 33],
  ])('does not take %d × %d mm', (width, height) => {
    expect(severities(width, height)).toEqual(['error']);
  });

  it('of 300 × 200 mm takes A5, not A4; of 8 × 8 mm not 10 × 10', () => {
    expect(severities(148, 210, '["300mm", "200mm"]')).toEqual([]);
    expect(severities(210, 297, '["300mm", "200mm"]')).toEqual(['error']);
    expect(severities(10, 10, '["8mm", "8mm"]')).toEqual(['error']);
  });
});

describe('a turn about a pin', () => {
  /** A dot of 1 mm, 363.7 mm from the corner that the sheet turns about: the diagonal of A4. */
  const RADIUS = 363.7;
  const dot = (degrees: number) => {
    const size = 'width="400mm" height="400mm" viewBox="0 0 400 400"';
    const along = RADIUS / Math.SQRT2;
    const drawing = `<circle transform="rotate(${degrees})" cx="${along}" cy="${along}" r="0.5"/>`;
    return check(svg(size, drawing)).sheets[0]?.openings ?? [];
  };
  const middle = (degrees: number) => {
    const [opening] = dot(degrees);
    const ring = [...(opening?.outer ?? [])];
    const [xs, ys] = [0, 1].map((axis) => ring.filter((_, i) => i % 2 === axis)) as [number[], number[]];
    const mean = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
    return [mean(xs), mean(ys)] as const;
  };

  it('by half a degree moves the far corner of A4 by 3.174 mm', () => {
    // The chord of the turn: 2·R·sin(a/2), elementary geometry.
    const [[x0, y0], [x1, y1]] = [middle(0), middle(0.5)];
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(2 * RADIUS * Math.sin((0.25 * Math.PI) / 180), 3);
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(3.174, 3);
    expect(areaOf(intersection(dot(0), dot(0.5)))).toBe(0);
  });

  it('keeps what it turns as large as it was', () => {
    expect(areaOf(dot(0.5))).toBeCloseTo(areaOf(dot(0)), 3);
    expect(areaOf(difference(dot(0.5), dot(0)))).toBeCloseTo(areaOf(dot(0)), 3);
  });
});
