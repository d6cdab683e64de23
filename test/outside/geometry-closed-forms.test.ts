/** Figures that others published, or that follow from a cited formula in closed form. */
import { describe, expect, it } from 'vitest';
import type { Curve, Matrix } from '../../src/geometry/base/curve-types';
import { multiply, rotation, scaling, translation } from '../../src/geometry/base/matrix';
import type { Region, Ring } from '../../src/geometry/base/polygon-types';
import { reverseRing, ringOfBox } from '../../src/geometry/base/ring';
import {
  areaOf,
  complementInBox,
  offset,
  perimeterOf,
  regionFromRings,
  splitAtPinchPoints,
} from '../../src/geometry/boolean/index';
import { flattenSubpath } from '../../src/geometry/curve/flatten';
import { lengthOf, signedAreaOf, transformCurve } from '../../src/geometry/curve/index';
import { inscribedDisc } from '../../src/geometry/polygon/inscribed-circle';
import { arcFrom } from '../geometry/arbitraries';

function ellipse(x: number, y: number, a: number, b: number): Curve[] {
  return [0, 1, 2, 3].map((quarter) =>
    arcFrom({ x, y }, { x: a, y: 0 }, { x: 0, y: b }, (quarter * Math.PI) / 2, Math.PI / 2),
  );
}

/** Inscribed chords at this tolerance (mm) lose at most its product with the perimeter. */
const FINE = 1e-6;

function disc(x: number, y: number, radius: number, tolerance = FINE): Ring {
  return flattenSubpath(ellipse(x, y, radius, radius), tolerance);
}

function largestDisc(region: Region): number {
  return Math.max(...region.map((polygon) => inscribedDisc(polygon, 1e-4).radius));
}

// Shoelace formula and r = 2A/P, textbook; figures computed from it.
describe('triangles', () => {
  it.each([
    [Float64Array.of(100, 100, 300, 100, 200, 300), 20000, 647.213595, 61.803399],
    [Float64Array.of(0, 0, 4, 0, 0, 3), 6, 12, 1],
  ])('have the known area, perimeter and incircle', (ring, area, around, radius) => {
    const region = regionFromRings([ring], 'nonzero');
    expect(areaOf(region)).toBeCloseTo(area, 6);
    expect(perimeterOf(region)).toBeCloseTo(around, 6);
    expect(largestDisc(region)).toBeCloseTo(radius, 3);
  });
});

// W3C SVG 2, chapter "Painting", heading "Winding rule: the fill-rule property": the figures' own coordinates; areas
// computed from the definition (and by a second library when the table was made).
describe('the figures of the fill-rule property', () => {
  const star = Float64Array.of(250, 75, 323, 301, 131, 161, 369, 161, 177, 301);
  const frame = { minX: 0, minY: 0, maxX: 1200, maxY: 400 };

  it('star', () => {
    expect(Math.abs(areaOf(regionFromRings([star], 'nonzero')) - 17523.2309)).toBeLessThan(0.01);
    expect(Math.abs(areaOf(regionFromRings([star], 'evenodd')) - 12108.4617)).toBeLessThan(0.01);
  });

  it('star: under evenodd the pentagon, held by five points, is a piece of its own', () => {
    const material = splitAtPinchPoints(complementInBox(regionFromRings([star], 'evenodd'), frame));
    expect(material.length).toBe(2);
    expect(Math.abs(Math.min(...material.map(areaOf)) - 5414.7691)).toBeLessThan(0.05);
    expect(splitAtPinchPoints(complementInBox(regionFromRings([star], 'nonzero'), frame)).length).toBe(1);
  });

  it('annulus: R = 107, r = 49', () => {
    const rings = [disc(0, 0, 107), disc(0, 0, 49)];
    const opposed = rings.map((ring, index) => (index === 0 ? ring : reverseRing(ring)));
    expect(Math.abs(areaOf(regionFromRings(rings, 'nonzero')) - 35968.0943)).toBeLessThan(0.01);
    expect(Math.abs(areaOf(regionFromRings(rings, 'evenodd')) - 28425.1303)).toBeLessThan(0.01);
    expect(Math.abs(areaOf(regionFromRings(opposed, 'nonzero')) - 28425.1303)).toBeLessThan(0.01);
    expect(regionFromRings(opposed, 'nonzero')[0]?.holes.length).toBe(1);
    const chords = [disc(0, 0, 107, 1e-3), reverseRing(disc(0, 0, 49, 1e-3))];
    expect(Math.abs(largestDisc(regionFromRings(chords, 'nonzero')) - 29)).toBeLessThan(2e-3);
  });
});

/** 2π/M(a, b) · (a² − Σ 2ⁿ⁻¹ cₙ²), c₀² = a² − b²: arithmetic–geometric mean (Abramowitz and Stegun 17.6). */
function ellipsePerimeter(a: number, b: number): number {
  let [mean, geometric, weight] = [a, b, 0.5];
  let sum = a * a - weight * (a * a - b * b);
  while (mean - geometric > 1e-15 * mean) {
    const half = (mean - geometric) / 2;
    [mean, geometric, weight] = [mean - half, Math.sqrt(mean * geometric), 2 * weight];
    sum -= weight * half * half;
  }
  return (2 * Math.PI * sum) / mean;
}

/** Ramanujan's second approximation, 1914. */
function ramanujan(a: number, b: number): number {
  const h = ((a - b) / (a + b)) ** 2;
  return Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
}

describe('ellipses', () => {
  it.each([
    [250, 100, 1150.6556298],
    [2, 1, 9.6884482205],
    [5, 3, 25.5269988634],
  ])('of semi-axes %d and %d have the perimeter %d and the area πab', (a, b, perimeter) => {
    const curves = ellipse(300, 200, a, b);
    const around = curves.reduce((sum, curve) => sum + lengthOf(curve), 0);
    expect(Math.abs(around / perimeter - 1)).toBeLessThan(1e-9);
    expect(Math.abs(around / ellipsePerimeter(a, b) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(around / ramanujan(a, b) - 1)).toBeLessThan(1e-8);
    expect(curves.reduce((sum, curve) => sum + signedAreaOf(curve), 0)).toBeCloseTo(Math.PI * a * b, 6);
  });

  it('out of a skewed circle: the arcs stay exact', () => {
    const skew: Matrix = multiply(rotation(0.7), multiply(scaling(250, 100), rotation(-1.1)));
    const around = ellipse(0, 0, 1, 1)
      .map((curve) => transformCurve(curve, skew))
      .reduce((sum, curve) => sum + lengthOf(curve), 0);
    expect(Math.abs(around / 1150.6556298 - 1)).toBeLessThan(1e-9);
  });

  it('hold a disc of their smaller semi-axis', () => {
    expect(largestDisc(regionFromRings([flattenSubpath(ellipse(0, 0, 25, 10), FINE)], 'nonzero'))).toBeCloseTo(10, 3);
  });
});

// W3C SVG 2, chapter "Paths", files cubic01 and quad01; lengths cross-checked with bezier-js when the table was made.
describe('lengths of the path examples', () => {
  it('cubic01 and quad01', () => {
    const cubics: Curve[] = [
      {
        kind: 'cubic',
        start: { x: 100, y: 200 },
        control1: { x: 100, y: 100 },
        control2: { x: 250, y: 100 },
        end: { x: 250, y: 200 },
      },
      {
        kind: 'cubic',
        start: { x: 250, y: 200 },
        control1: { x: 250, y: 300 },
        control2: { x: 400, y: 300 },
        end: { x: 400, y: 200 },
      },
    ];
    expect(cubics.reduce((sum, curve) => sum + lengthOf(curve), 0)).toBeCloseTo(475.747299, 5);
    const quadratics: Curve[] = [
      { kind: 'quadratic', start: { x: 200, y: 300 }, control: { x: 400, y: 50 }, end: { x: 600, y: 300 } },
      { kind: 'quadratic', start: { x: 600, y: 300 }, control: { x: 800, y: 550 }, end: { x: 1000, y: 300 } },
    ];
    expect(quadratics.reduce((sum, curve) => sum + lengthOf(curve), 0)).toBeCloseTo(975.542188, 5);
  });
});

// Steiner's formula for parallel sets of convex figures: A + P·r + π·r², P + 2π·r. The note is the US banknote of
// 6.14 × 2.61 in (Bureau of Engraving and Printing).
describe('parallel sets', () => {
  const note = regionFromRings([ringOfBox({ minX: 0, minY: 0, maxX: 155.956, maxY: 66.294 })], 'nonzero');
  const square = regionFromRings([ringOfBox({ minX: 0, minY: 0, maxX: 10, maxY: 10 })], 'nonzero');

  it('of a note', () => {
    expect(areaOf(note)).toBeCloseTo(10338.947064, 4);
    expect(perimeterOf(note)).toBeCloseTo(444.5, 6);
    expect(Math.abs(areaOf(offset(note, 0.1, 'round', 1e-4)) - 10383.42848)).toBeLessThan(5e-4);
    expect(areaOf(offset(note, 0.1, 'miter'))).toBeCloseTo(10383.437064, 4);
    expect(areaOf(offset(note, -0.1))).toBeCloseTo(10294.537064, 4);
  });

  it('of a square, and its opening by a disc', () => {
    expect(areaOf(offset(square, 1, 'round', 1e-4))).toBeCloseTo(143.141593, 3);
    expect(perimeterOf(offset(square, 1, 'round', 1e-4))).toBeCloseTo(40 + 2 * Math.PI, 3);
    expect(areaOf(offset(square, 1, 'miter'))).toBeCloseTo(144, 6);
    expect(areaOf(offset(offset(square, -1), 1, 'round', 1e-4))).toBeCloseTo(99.141593, 3);
  });

  it('of triangles in any position', () => {
    for (const angle of [0.1, 1, 2.5]) {
      const turned = multiply(translation(40, 7), rotation(angle));
      const sides: Curve[] = [
        [0, 0, 9, 0],
        [9, 0, 2, 6],
        [2, 6, 0, 0],
      ].map(([x0 = 0, y0 = 0, x1 = 0, y1 = 0]) => {
        return transformCurve({ kind: 'line', start: { x: x0, y: y0 }, end: { x: x1, y: y1 } }, turned);
      });
      const triangle = regionFromRings([flattenSubpath(sides, FINE)], 'nonzero');
      const wanted = areaOf(triangle) + perimeterOf(triangle) * 0.8 + Math.PI * 0.64;
      expect(Math.abs(areaOf(offset(triangle, 0.8, 'round', 1e-4)) - wanted)).toBeLessThan(2e-3);
    }
  });
});

// Two discs of radius R whose centres lie 2c apart; area by the lens formula, 2πR² − lens.
describe('overlapping discs', () => {
  it.each([
    [5, 3, 134.714872],
    [10, 8, 595.618308],
    [13, 12, 1048.418918],
    [25, 24, 3908.24818],
  ])('of radius %d at ±%d cover %d', (radius, c, area) => {
    const union = regionFromRings([disc(-c, 0, radius), disc(c, 0, radius)], 'nonzero');
    expect(union.length).toBe(1);
    expect(Math.abs(areaOf(union) - area)).toBeLessThan(0.01);
  });
});

// Largest inscribed circles, from their definition.
describe('largest discs', () => {
  it('rectangle, regular polygon, L', () => {
    expect(largestDisc([{ outer: ringOfBox({ minX: 0, minY: 0, maxX: 30, maxY: 7 }), holes: [] }])).toBeCloseTo(3.5, 3);
    const hexagon = Float64Array.from(
      Array.from({ length: 6 }, (_, k) => [10 * Math.cos((k * Math.PI) / 3), 10 * Math.sin((k * Math.PI) / 3)]).flat(),
    );
    expect(largestDisc(regionFromRings([hexagon], 'nonzero'))).toBeCloseTo(10 * Math.cos(Math.PI / 6), 3);
    const arm = 4;
    const bracket = Float64Array.of(0, 0, 20, 0, 20, arm, arm, arm, arm, 20, 0, 20);
    expect(largestDisc(regionFromRings([bracket], 'nonzero'))).toBeCloseTo(arm * (2 - Math.SQRT2), 3);
  });
});

// Counted by hand: of the 32 closed cells of an 8 × 8 board, 18 lie inside and touch others in corners only, 14 lie on
// its border and hang on the sheet round it.
describe('checkerboard of openings', () => {
  const cells = Array.from({ length: 64 }, (_, cell) => [cell % 8, Math.floor(cell / 8)] as const);
  const rings = cells
    .filter(([x, y]) => (x + y) % 2 === 0)
    .map(([x, y]) => ringOfBox({ minX: 10 * x, minY: 10 * y, maxX: 10 * x + 10, maxY: 10 * y + 10 }));

  it('leaves 19 pieces of a sheet with a border, 32 of one without', () => {
    const openings = regionFromRings(rings, 'nonzero');
    expect(openings.length).toBe(32);
    const bordered = complementInBox(openings, { minX: -10, minY: -10, maxX: 90, maxY: 90 });
    expect(areaOf(bordered)).toBe(6800);
    expect(splitAtPinchPoints(bordered).length).toBe(19);
    expect(splitAtPinchPoints(complementInBox(openings, { minX: 0, minY: 0, maxX: 80, maxY: 80 })).length).toBe(32);
  });
});
