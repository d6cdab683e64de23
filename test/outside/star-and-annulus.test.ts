/**
 * The star and the annulus of SVG 2, "Winding rule: the fill-rule property" (images fillrule-nonzero.svg and
 * fillrule-evenodd.svg). Areas computed from the vertices and radii; the nonzero and even-odd areas of the star were
 * cross-checked with a polygon library.
 */
import { describe, expect, it } from 'vitest';
import { check } from '../../src/engine/check/check-file';

const STAR = 'M 250,75 L 323,301 131,161 369,161 177,301 z';
const ring = (inner: string) => `M 357,200 A 107,107 0 0 1 143,200 A 107,107 0 0 1 357,200 Z ${inner}`;
const SAME_WAY = ring('M 299,200 A 49,49 0 0 1 201,200 A 49,49 0 0 1 299,200 Z');
const REVERSED = ring('M 299,200 A 49,49 0 0 0 201,200 A 49,49 0 0 0 299,200 Z');

function measure(data: string, rule: string): { area: number; islands: number[] } {
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="500mm" height="400mm" viewBox="0 0 500 400">` +
    `<path fill-rule="${rule}" d="${data}"/></svg>`;
  const [sheet] = check(svg).sheets;
  const material = sheet?.pieces.reduce((sum, piece) => sum + piece.area, 0) ?? 0;
  const islands = sheet?.pieces.filter((piece) => piece.island).map((piece) => piece.area) ?? [];
  return { area: 500 * 400 - material, islands };
}

/** 1e-4 relative. */
function near(actual: number | undefined, expected: number): void {
  expect(Math.abs((actual ?? NaN) / expected - 1)).toBeLessThan(1e-4);
}

describe('the star', () => {
  it('is one opening by nonzero', () => {
    const { area, islands } = measure(STAR, 'nonzero');
    near(area, 17523.2309);
    expect(islands).toEqual([]);
  });

  it('by evenodd drops its pentagon, which touches the rest at five points only', () => {
    const { area, islands } = measure(STAR, 'evenodd');
    near(area, 12108.4617);
    expect(islands).toHaveLength(1);
    near(islands[0], 5414.7691);
  });
});

describe('the annulus', () => {
  it('with circles drawn the same way is a full disc by nonzero', () => {
    const { area, islands } = measure(SAME_WAY, 'nonzero');
    near(area, 35968.0943);
    expect(islands).toEqual([]);
  });

  it.each([
    [SAME_WAY, 'evenodd'],
    [REVERSED, 'nonzero'],
    [REVERSED, 'evenodd'],
  ])('else holds an island: %s %s', (d, rule) => {
    const { area, islands } = measure(d, rule);
    near(area, 28425.1303);
    expect(islands).toHaveLength(1);
    near(islands[0], 7542.964);
  });
});
