/**
 * What is kept of earlier thin parts, and what is not; that the whole is right is tested in test/sheet/measure-again.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box, Region } from '../../../src/geometry/base/polygon-types';
import { polygonOfBox } from '../../../src/geometry/base/ring';
import { complementInBox, regionFromRings } from '../../../src/geometry/boolean/index';
import { findThinPartsIncrementally } from '../../../src/geometry/thickness/incremental';
import { findThinParts } from '../../../src/geometry/thickness/index';
import type { ThinPart } from '../../../src/geometry/thickness/types';

const FRAME: Box = { minX: 0, minY: 0, maxX: 100, maxY: 100 };
const box = (minX: number, minY: number, size = 10) =>
  polygonOfBox({ minX, minY, maxX: minX + size, maxY: minY + size });

/** Two pairs of windows, each with a web between them; the webs are far from each other. */
const windows = (web: number): Region => [box(10, 10), box(20 + web, 10), box(10, 60), box(20.5, 60)];
const material = (openings: Region) => complementInBox(openings, FRAME);

/** Earlier parts with lengths that no search would give: what is kept shows them. */
const marked = (region: Region) => findThinParts(region, 0.8).map((part) => ({ ...part, length: part.length + 1000 }));
const lengths = (parts: readonly { length: number }[]) =>
  parts.map(({ length }) => Math.round(length)).sort((a, b) => a - b);

describe('findThinPartsIncrementally', () => {
  it('keeps what is out of reach of the change, and searches what is within', () => {
    const [before, after] = [material(windows(0.4)), material(windows(0.6))];
    expect(lengths(findThinPartsIncrementally(after, 0.8, { region: before, parts: marked(before) }))).toEqual([
      10, 1010,
    ]);
  });

  it('keeps polygons that are the same, under their new numbers', () => {
    const slots = (first: number): Region => [
      polygonOfBox({ minX: 0, minY: 0, maxX: first, maxY: 0.5 }),
      polygonOfBox({ minX: 0, minY: 5, maxX: 20, maxY: 5.5 }),
    ];
    const [before, after] = [slots(10), slots(12).toReversed()];
    const found = findThinPartsIncrementally(after, 0.8, { region: before, parts: marked(before) });
    expect(found.map(({ polygon, length }) => [polygon, length > 1000])).toEqual([
      [0, true],
      [1, false],
    ]);
  });

  // A window of 30 mm round a square that hangs on a tie of 0.4 mm; the square may have a hole.
  const held = Float64Array.of(
    60,
    10,
    90,
    10,
    90,
    40,
    75.2,
    40,
    75.2,
    35,
    85,
    35,
    85,
    15,
    65,
    15,
    65,
    35,
    74.8,
    35,
    74.8,
    40,
    60,
    40,
  );
  const withSquare = (web: number, hole: number) =>
    material([...windows(web), { outer: held, holes: [] }, box(70, 20, hole)]);

  it('keeps what a neck holds where nothing of that changed', () => {
    const [before, after] = [withSquare(0.4, 5), withSquare(0.6, 5)];
    const found = findThinPartsIncrementally(after, 0.8, { region: before, parts: marked(before) });
    expect(lengths(found)).toEqual([10, 1005, 1010]);
    expect(found.flatMap(({ holds }) => holds?.area ?? [])[0]).toBeCloseTo(400 - 25, 0);
  });

  it('takes what a neck holds anew where something of that changed', () => {
    const [before, after] = [withSquare(0.4, 5), withSquare(0.4, 8)];
    const found = findThinPartsIncrementally(after, 0.8, { region: before, parts: findThinParts(before, 0.8) });
    expect(found.flatMap(({ holds }) => holds?.area ?? [])[0]).toBeCloseTo(400 - 64, 0);
  });

  it('searches all of a region that shares nothing with the earlier one', () => {
    const parts = findThinPartsIncrementally(material(windows(0.4)), 0.8, { region: [], parts: [] });
    expect(parts).toEqual(findThinParts(material(windows(0.4)), 0.8));
  });

  it('finds what a search of all finds, edit after edit', () => {
    fc.assert(
      fc.property(
        fc.array(placed, { minLength: 20, maxLength: 60 }),
        fc.array(placed, { maxLength: 4 }),
        (start, edits) => {
          let shapes = start;
          let region = regionOf(shapes);
          let parts = findThinParts(region, 0.8);
          for (const each of edits) {
            shapes = shapes.toSpliced(each.column % shapes.length, each.row % 2, each);
            const next = regionOf(shapes);
            parts = findThinPartsIncrementally(next, 0.8, { region, parts });
            region = next;
            expect(facts(parts)).toEqual(facts(findThinParts(region, 0.8)));
          }
        },
      ),
      { numRuns: 60 },
    );
  }, 60_000);
});

interface Placed {
  readonly column: number;
  readonly row: number;
  readonly kind: 'box' | 'slot' | 'hook' | 'large hook';
  readonly size: number;
}

/** Around a grid of 4 mm: neighbours overlap, come within the width or keep apart; large hooks have others within. */
const placed: fc.Arbitrary<Placed> = fc.record({
  column: fc.integer({ min: 0, max: 23 }),
  row: fc.integer({ min: 0, max: 23 }),
  kind: fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom('box', 'slot', 'hook') },
    { weight: 1, arbitrary: fc.constant('large hook') },
  ),
  size: fc.double({ min: 2, max: 4.4, noNaN: true }),
} as const);

function ringsOf({ column, row, kind, size }: Placed): number[] {
  const [x, y] = [2 + 4 * column, 2 + 4 * row];
  if (kind === 'box') return [x, y, x + size, y, x + size, y + size, x, y + size];
  if (kind === 'slot') return [x, y, x + 3 * size, y + 0.3, x + 3 * size, y + 1.1, x, y + 0.7];
  const [far, wall] = kind === 'hook' ? [size, size / 5] : [4 * size, 1];
  return [
    x,
    y,
    x + far,
    y,
    x + far,
    y + far / 2 - 0.25,
    x + far - wall,
    y + far / 2 - 0.25,
    x + far - wall,
    y + wall,
    x + wall,
    y + wall,
    x + wall,
    y + far - wall,
    x + far - wall,
    y + far - wall,
    x + far - wall,
    y + far / 2 + 0.25,
    x + far,
    y + far / 2 + 0.25,
    x + far,
    y + far,
    x,
    y + far,
  ];
}

const regionOf = (shapes: readonly Placed[]) =>
  material(
    regionFromRings(
      shapes.map((shape) => Float64Array.from(ringsOf(shape))),
      'nonzero',
    ),
  );

function facts(parts: readonly ThinPart[]): string[] {
  const fixed = (value: number) => (Math.round(value * 1e5) / 1e5 + 0).toFixed(5);
  return parts
    .map(({ polygon, kind, width, length, reach, sides, from, to, holds }) => {
      const ends = [from, to].map(({ x, y }) => `${fixed(x)} ${fixed(y)}`).join(' to ');
      const held = holds ? `${fixed(holds.area)} at ${fixed(holds.at.x)} ${fixed(holds.at.y)}` : 'nothing';
      return `${polygon} ${kind} ${[width, length, reach, sides].map(fixed).join(' ')}, ${ends}, holds ${held}`;
    })
    .sort();
}
