import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Shape } from '../../../src/drawing/types';
import { signedArea } from '../../../src/geometry/base/ring';
import { flattenSubpath } from '../../../src/geometry/curve/flatten';
import { signedAreaOf } from '../../../src/geometry/curve/index';
import { cases } from '../../thorough';
import { drawMm, filledArea } from '../draw';

function strokeOf(content: string): Shape {
  const shape = drawMm(content).shapes.find(({ part }) => part === 'stroke');
  if (!shape) throw new Error('no stroke');
  return shape;
}

/** A line without length and without caps leaves no stroke. */
function figuresOf(content: string): Shape['subpaths'] {
  return drawMm(content)
    .shapes.filter(({ part }) => part === 'stroke')
    .flatMap(({ subpaths }) => subpaths);
}

const coordinate = fc.integer({ min: 0, max: 1000 }).map((value) => value / 10);
const point = fc.tuple(coordinate, coordinate).map(([x, y]) => `${x} ${y}`);
const command = fc.oneof(
  point.map((to) => `L${to}`),
  fc.tuple(point, point, point).map((points) => `C${points.join(' ')}`),
  fc.tuple(point, point).map((points) => `Q${points.join(' ')}`),
  fc
    .tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }), fc.boolean(), point)
    .map(([rx, ry, sweep, to]) => `A${rx} ${ry} 30 0 ${sweep ? 1 : 0} ${to}`),
);
const stroke = fc.record({
  d: fc
    .tuple(point, fc.array(command, { minLength: 1, maxLength: 5 }), fc.constantFrom('', 'z'))
    .map(([start, rest, end]) => `M${start}${rest.join('')}${end}`),
  width: fc.constantFrom(0.1, 1, 5, 20),
  cap: fc.constantFrom('butt', 'round', 'square'),
  join: fc.constantFrom('miter', 'round', 'bevel'),
  transform: fc.constantFrom(
    '',
    'scale(-1 1) translate(-100)',
    'scale(1 .4)',
    'matrix(.5 .3 -.4 .6 30 10)',
    'matrix(.5 .3 .4 -.6 30 70)',
    'rotate(20)',
  ),
  dashes: fc.constantFrom('', 'stroke-dasharray="7 3"', 'stroke-dasharray="0 4 2"'),
});

function write({
  d,
  width,
  cap,
  join,
  transform,
  dashes,
}: {
  d: string;
  width: number;
  cap: string;
  join: string;
  transform: string;
  dashes: string;
}): string {
  return (
    `<path d="${d}" fill="none" stroke="red" stroke-width="${width}" stroke-linecap="${cap}" ` +
    `stroke-linejoin="${join}" transform="${transform}" ${dashes}/>`
  );
}

describe('figures of a stroke', () => {
  it('are closed chains that all turn the positive way', () => {
    fc.assert(
      fc.property(stroke, (item) => {
        for (const { curves, closed, spans } of figuresOf(write(item))) {
          expect(closed).toBe(true);
          expect(spans.length).toBe(curves.length);
          curves.forEach((curve, index) => {
            const before = curves.at(index - 1);
            expect(
              Math.hypot(curve.start.x - (before?.end.x ?? NaN), curve.start.y - (before?.end.y ?? NaN)),
            ).toBeLessThan(1e-9);
          });
          expect(curves.reduce((sum, curve) => sum + signedAreaOf(curve), 0)).toBeGreaterThan(-1e-6);
          expect(signedArea(flattenSubpath(curves, 1e-3))).toBeGreaterThan(-1e-3);
        }
      }),
      { numRuns: cases(300, 80) },
    );
  });

  it('turned and mirrored strokes cover the same area', () => {
    fc.assert(
      fc.property(stroke, (item) => {
        const areaAt = (transform: string) =>
          filledArea({ subpaths: figuresOf(write({ ...item, transform })), fillRule: 'nonzero' }, 1e-3);
        const area = areaAt('');
        for (const [transform, factor] of [
          ['rotate(33)', 1],
          ['scale(-1 1)', 1],
          ['scale(.5)', 0.25],
          ['matrix(0 2 -.5 0 0 0)', 1],
        ] as const) {
          expect(Math.abs(areaAt(transform) - factor * area)).toBeLessThan(0.05 + 0.002 * area);
        }
      }),
      { numRuns: 4 },
    );
  });

  it.each([
    ['a hook at the start', 'M14 60C14.0003 59.9997 24 140 80 120C150 80 150 20 150 20'],
    ['a hook at the end', 'M14 60C24 140 80.0005 120.0003 80 120'],
    ['a cusp in the middle', 'M20 80C110 20 10 20 100 80'],
  ])('a pen that turns on the spot leaves few of them: %s', (_, d) => {
    const pen = `d="${d}" fill="none" stroke="red" stroke-width="12" stroke-linecap="round"`;
    expect(figuresOf(`<path ${pen}/>`).length).toBeLessThan(60);
    // With round caps and joins the stroke is what a disc sweeps: discs along the line all lie within it.
    const stroke = figuresOf(`<path ${pen}/>`);
    const discs = figuresOf(`<path ${pen} stroke-dasharray="0 2"/>`);
    const area = (subpaths: Shape['subpaths']) => filledArea({ subpaths, fillRule: 'nonzero' }, 1e-3);
    expect(area([...stroke, ...discs]) - area(stroke)).toBeLessThan(1e-4 * area(stroke));
    expect(area(stroke) - area(discs)).toBeLessThan(0.02 * area(stroke));
  });

  it('the direction of drawing does not count', () => {
    const there = strokeOf(
      '<path d="M10 10C40 -20 60 90 90 20L50 80" fill="none" stroke="red" stroke-width="7" stroke-linejoin="round"/>',
    );
    const back = strokeOf(
      '<path d="M50 80L90 20C60 90 40 -20 10 10" fill="none" stroke="red" stroke-width="7" stroke-linejoin="round"/>',
    );
    expect(filledArea(there)).toBeCloseTo(filledArea(back), 2);
  });
});

describe('dashes', () => {
  it.each(['M20 80C80 20 20 20.5 80 80', 'M20 20Q50 90 80 20L20 60'])(
    'and what lies in their gaps make up the line: %s',
    (d) => {
      const wide = (dashes: string): Shape =>
        strokeOf(`<path d="${d}" fill="none" stroke="red" stroke-width="24" ${dashes}/>`);
      const [dashes, gaps, whole] = [wide('stroke-dasharray="7 3"'), wide('stroke-dasharray="0 7 3 0"'), wide('')];
      const together = { subpaths: [...dashes.subpaths, ...gaps.subpaths], fillRule: 'nonzero' as const };
      expect(filledArea(dashes, 1e-3)).toBeLessThan(filledArea(whole, 1e-3) - 1);
      // Joins at a corner belong to the dash that runs over it.
      expect(Math.abs(filledArea(together, 1e-3) - filledArea(whole, 1e-3))).toBeLessThan(
        0.002 * filledArea(whole, 1e-3),
      );
    },
  );
});

describe('what a stroke keeps', () => {
  it('its centreline, its width and the text of each figure', () => {
    const drawing = drawMm('<path d="M10 10H50V50" fill="none" stroke="red" stroke-width="4" transform="scale(.5)"/>');
    const [shape] = drawing.shapes;
    expect(shape?.strokeWidth).toBe(2);
    expect(shape?.centreline?.[0]?.curves.map(({ end }) => end)).toEqual([
      { x: 25, y: 5 },
      { x: 25, y: 25 },
    ]);
    const texts = new Set(
      shape?.subpaths.flatMap(({ spans }) => spans.map(({ from, to }) => drawing.document.text.slice(from, to))),
    );
    expect(texts).toEqual(new Set(['H50', 'V50']));
  });

  it('an uneven transform gives the geometric mean', () => {
    expect(strokeOf('<path d="M0 0h5" stroke="red" stroke-width="1" transform="scale(4 9)"/>').strokeWidth).toBeCloseTo(
      6,
      12,
    );
  });

  it('fill and centreline share their outline', () => {
    const { shapes } = drawMm('<circle r="5" stroke="red"/>');
    expect(shapes[1]?.centreline).toBe(shapes[0]?.subpaths);
  });
});
