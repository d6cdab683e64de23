/** What is kept of earlier thin parts, and what is not; that the whole is right is tested in test/sheet/measure-again. */
import { describe, expect, it } from 'vitest';
import { findThinParts } from '../../src/geometry/find-thin-parts';
import { findThinPartsAgain } from '../../src/geometry/find-thin-parts-again';
import { complementInBox } from '../../src/geometry/polygons';
import type { Box, Region } from '../../src/geometry/region';
import { polygonOfBox } from '../../src/geometry/rings';

const FRAME: Box = { minX: 0, minY: 0, maxX: 100, maxY: 100 };
const box = (minX: number, minY: number, size = 10) => polygonOfBox({ minX, minY, maxX: minX + size, maxY: minY + size });

/** Two pairs of windows, each with a web between them; the webs are far from each other. */
const windows = (web: number): Region => [box(10, 10), box(20 + web, 10), box(10, 60), box(20.5, 60)];
const material = (openings: Region) => complementInBox(openings, FRAME);

/** Earlier parts with lengths that no search would give: what is kept shows them. */
const marked = (region: Region) => findThinParts(region, 0.8).map((part) => ({ ...part, length: part.length + 1000 }));
const lengths = (parts: readonly { length: number }[]) => parts.map(({ length }) => Math.round(length)).sort((a, b) => a - b);

describe('findThinPartsAgain', () => {
  it('keeps what is out of reach of the change, and searches what is within', () => {
    const [before, after] = [material(windows(0.4)), material(windows(0.6))];
    expect(lengths(findThinPartsAgain(after, 0.8, { region: before, parts: marked(before) }))).toEqual([10, 1010]);
  });

  it('keeps polygons that are the same, under their new numbers', () => {
    const slots = (first: number): Region => [
      polygonOfBox({ minX: 0, minY: 0, maxX: first, maxY: 0.5 }), polygonOfBox({ minX: 0, minY: 5, maxX: 20, maxY: 5.5 }),
    ];
    const [before, after] = [slots(10), slots(12).toReversed()];
    const found = findThinPartsAgain(after, 0.8, { region: before, parts: marked(before) });
    expect(found.map(({ polygon, length }) => [polygon, length > 1000])).toEqual([[0, true], [1, false]]);
  });

  it('searches the whole polygon where a neck holds something', () => {
    // A window round a square that hangs on a tie of 0.4 mm.
    const held = Float64Array.of(60, 10, 90, 10, 90, 40, 75.2, 40, 75.2, 35, 85, 35, 85, 15, 65, 15, 65, 35, 74.8, 35, 74.8, 40, 60, 40);
    const all = (web: number) => material([...windows(web), { outer: held, holes: [] }]);
    const [before, after] = [all(0.4), all(0.6)];
    expect(marked(before).some(({ holds }) => holds)).toBe(true);
    const found = findThinPartsAgain(after, 0.8, { region: before, parts: marked(before) });
    expect(Math.max(...lengths(found))).toBeLessThan(1000);
    expect(found).toEqual(findThinParts(after, 0.8));
  });

  it('searches all of a region that shares nothing with the earlier one', () => {
    const parts = findThinPartsAgain(material(windows(0.4)), 0.8, { region: [], parts: [] });
    expect(parts).toEqual(findThinParts(material(windows(0.4)), 0.8));
  });
});
