import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bridge, planBridges } from '../../../src/edits/plan/index';
import { polygonOfBox } from '../../../src/geometry/base/ring';
import { distance, interpolate } from '../../../src/geometry/base/vector';
import { regionContains } from '../../../src/geometry/boolean/index';
import type { Sheet } from '../../../src/sheet/types';
import { bridge, islandsOf, sheetsOf } from '../bridging';
import { svg } from '../drawings';

const WIDTH = 0.8;

function sheet(inside: string, config = {}): Sheet {
  return sheetsOf(svg(inside), config)[0] as Sheet;
}

function islands(of: Sheet): Sheet['pieces'] {
  return of.pieces.filter((piece) => piece.island);
}

function plan(of: Sheet, options = {}): readonly Bridge[] {
  return planBridges(of, islands(of), { width: WIDTH, ...options }).bridges;
}

const SQUARE_RING = '<path fill-rule="evenodd" d="M10 10H50V50H10zM20 20H40V40H20z"/>';
function circle(radius: number, x: number, y: number): string {
  const half = `a${radius} ${radius} 0 0 1`;
  return `M${x - radius} ${y}${half} ${2 * radius} 0${half} ${-2 * radius} 0z`;
}

/** A disc of paint with a round counter. */
function disc(outer: number, inner: number, x = 30, y = 30): string {
  return `<path fill-rule="evenodd" d="${circle(outer, x, y)}${circle(inner, x, y)}"/>`;
}

describe('how many bridges', () => {
  // common practice, no source
  it.each([
    [1.5, 1],
    [2, 1],
    [3.5, 2],
    [12, 2],
  ])('a disc of radius %d mm gets %d', (radius, count) => {
    expect(plan(sheet(disc(radius + 6, radius)))).toHaveLength(count);
  });
  it.each([
    ['three', 5, 3],
    ['four across a wide gap, where longer bridges bend more', 15, 4],
  ])('a large island gets %s', (_, gap, count) => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">' +
      `${disc(45 + gap, 45, 100, 100)}</svg>`;
    expect(plan(sheetsOf(text)[0] as Sheet)).toHaveLength(count);
  });
  it('as many as asked for', () => {
    expect(plan(sheet(SQUARE_RING), { count: 4 })).toHaveLength(4);
    expect(plan(sheet(SQUARE_RING), { count: 1 })).toHaveLength(1);
  });
});

describe('where bridges go', () => {
  it('two are opposite each other', () => {
    const [first, second] = plan(sheet(disc(20, 10)));
    expect(first && second && distance(first.from, second.from)).toBeCloseTo(20, 1);
  });
  it('in the middle of straight sides, square to them', () => {
    const middles = [
      [20, 30],
      [40, 30],
      [30, 20],
      [30, 40],
    ];
    for (const { from, to, length } of plan(sheet(SQUARE_RING))) {
      expect(middles.some(([x = 0, y = 0]) => distance(from, { x, y }) < 0.01)).toBe(true);
      expect(length).toBeCloseTo(10, 2);
      expect(Math.min(Math.abs(from.x - to.x), Math.abs(from.y - to.y))).toBeLessThan(1e-6);
    }
  });
  it('where the opening is narrowest', () => {
    const [only] = plan(sheet('<path fill-rule="evenodd" d="M10 10H50V50H10zM18 28H22V32H18z"/>'));
    expect(only?.length).toBeCloseTo(8, 2);
    expect(only?.to.x).toBeCloseTo(10, 2);
  });
  it('near a place that the artist chose', () => {
    const [first] = plan(sheet(SQUARE_RING), { near: { x: 26, y: 45 }, count: 1 });
    expect(first && distance(interpolate(first.from, first.to, 0.5), { x: 26, y: 45 })).toBeLessThan(0.5);
  });
  it('upright where that is asked for', () => {
    for (const { from, to } of plan(sheet(SQUARE_RING), { align: 'vertical' })) expect(from.x).toBeCloseTo(to.x, 3);
  });
  it('under what later layers paint over', () => {
    const hidden = [
      polygonOfBox({ minX: 5, minY: 5, maxX: 55, maxY: 19 }),
      polygonOfBox({ minX: 5, minY: 41, maxX: 55, maxY: 55 }),
    ];
    const text = '<path fill-rule="evenodd" d="M10 8H50V52H10zM20 20H40V40H20z"/>';
    const planned = plan(sheet(text), { hidden });
    expect(planned.map(({ from, to }) => Math.abs(from.x - to.x) < 1e-3)).toEqual([true, true]);
    for (const { hiddenShare } of planned) expect(hiddenShare).toBeGreaterThan(0.8);
    expect(plan(sheet(text)).every(({ hiddenShare }) => hiddenShare === undefined)).toBe(true);
  });
  it('only across the opening, never through another island', () => {
    const text = '<path fill-rule="evenodd" d="M5 5H55V55H5zM12 24H24V36H12zM27 24H33V36H27zM36 24H48V36H36z"/>';
    const of = sheet(text);
    for (const { from, to } of plan(of)) {
      for (const t of [0.01, 0.25, 0.5, 0.75, 0.99])
        expect(regionContains(of.openings, interpolate(from, to, t))).toBe(true);
    }
    expect(islandsOf(bridge(svg(text)).after)).toBe(0);
  });
  it('an island in an island hangs on it, and asks for its bridges too', () => {
    const nested = '<path fill-rule="evenodd" d="M4 4H56V56H4zM10 10H50V50H10zM16 16H44V44H16zM24 24H36V36H24z"/>';
    const of = sheet(nested);
    const inner = islands(of).find(({ area }) => area < 200);
    expect(inner).toBeDefined();
    if (!inner) return;
    const { bridges } = planBridges(of, [inner], { width: WIDTH });
    expect(new Set(bridges.map(({ island }) => island))).toEqual(new Set(islands(of)));
  });
  it('across slits of any width', () => {
    for (const gap of [0.5, 0.05, 0.01, 0.002]) {
      const [near, far] = [10 + gap, 50 - gap];
      const counter = `M${near} ${near}H${far}V${far}H${near}z`;
      const text = svg(`<path fill-rule="evenodd" d="M10 10H50V50H10z${counter}"/>`);
      expect(islandsOf(bridge(text).after)).toBe(0);
    }
  });
  it('with the kerf, from drawn edge to drawn edge', () => {
    const of = sheet(SQUARE_RING, { kerf: 0.2, compensated: false });
    const bridges = planBridges(of, islands(of), { width: WIDTH + of.kerf }).bridges;
    expect(bridges.map(({ length }) => Number(length.toFixed(2)))).toEqual([10, 10]);
    const after = bridge(
      svg(SQUARE_RING),
      { width: WIDTH + 0.2 },
      { kerf: 0.2, compensated: false, limits: { bridge: WIDTH + 0.1 } },
    );
    expect(islandsOf(after.after)).toBe(0);
    const narrow = after.after.thinMaterial.filter(({ kind, cutWidth }) => kind === 'neck' && cutWidth < WIDTH);
    expect(narrow).toEqual([]);
  });
});

describe('properties', () => {
  const place = fc.integer({ min: 12, max: 40 });
  const counter = fc
    .tuple(place, place, fc.integer({ min: 2, max: 7 }))
    .map(([x, y, size]) => `M${x} ${y}h${size}v${size}h-${size}z`);
  const drawing = fc
    .array(counter, { minLength: 1, maxLength: 4 })
    .map((counters) => `<path fill-rule="evenodd" d="M5 5H55V55H5z${counters.join('')}"/>`);

  it('the same sheet gives the same plan', () => {
    fc.assert(
      fc.property(drawing, (inside) => {
        expect(plan(sheet(inside))).toEqual(plan(sheet(inside)));
      }),
      { numRuns: 15 },
    );
  });
  it('after bridging nothing is left hanging, wherever counters lie', () => {
    fc.assert(
      fc.property(drawing, (inside) => {
        const result = bridge(svg(inside));
        expect(islandsOf(result.after)).toBeLessThanOrEqual(result.unbridged);
        expect(result.error).toBeLessThan(result.allowance);
      }),
      { numRuns: 40 },
    );
  });
  it('a place is found for nearly every island', () => {
    const count = { islands: 0, unbridged: 0 };
    fc.assert(
      fc.property(drawing, (inside) => {
        const of = sheet(inside);
        count.islands += islands(of).length;
        count.unbridged += planBridges(of, islands(of), { width: WIDTH }).unbridged.length;
      }),
      { numRuns: 100 },
    );
    expect(count.unbridged).toBeLessThan(0.05 * count.islands);
  });
  it('bridges are no narrower than asked, as measured', () => {
    fc.assert(
      fc.property(drawing, (inside) => {
        const { after, before } = bridge(svg(inside), {}, { limits: { bridge: WIDTH + 0.1 } });
        const narrow = ({ thinMaterial }: Sheet): number =>
          thinMaterial.filter(({ kind, cutWidth }) => kind === 'neck' && cutWidth < WIDTH).length;
        expect(narrow(after)).toBeLessThanOrEqual(narrow(before));
      }),
      { numRuns: 25 },
    );
  });
});
