import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/base/polygon-types';
import { polygonOfBox } from '../../src/geometry/base/ring';
import { regionFromRings } from '../../src/geometry/boolean/index';
import { findThinPlaces } from '../../src/sheet/thin-places';
import { LaterPaint } from '../../src/stack/later-paint';
import { shownThinPart } from '../../src/stack/shown-thin-part';

const LIMIT = 0.6;
const SLIP = 0.5;
const rect = (minX: number, minY: number, maxX: number, maxY: number): Region => [
  polygonOfBox({ minX, minY, maxX, maxY }),
];
const shape = (...points: number[]): Region => regionFromRings([Float64Array.from(points)], 'nonzero');

/** The only thin part of an opening, as it shows under later layers. */
function shown(opening: Region, later: readonly Region[], kerf = 0) {
  const sheet = { openings: opening, kerf };
  const parts = findThinPlaces(opening, LIMIT, -kerf);
  expect(parts).toHaveLength(1);
  const part = parts[0]!;
  const paint = new LaterPaint([sheet, ...later.map((openings) => ({ openings, kerf }))]);
  return { part, shown: shownThinPart(paint, 0, sheet, part, { slip: SLIP, opening: LIMIT }) };
}

/** Two fields of 10 mm, joined by a slot from x = 10 to x = 20 that is 0.2 mm wide at x = 15 and 0.5 mm at its ends. */
const SLOT = shape(
  ...[
    0, 0, 10, 0, 10, 4.75, 15, 4.9, 20, 4.75, 20, 0, 30, 0, 30, 10, 20, 10, 20, 5.25, 15, 5.1, 10, 5.25, 10, 10, 0, 10,
  ],
);
/** A wedge of 1 mm over 10 mm that comes to a point at x = 20. */
const TIP = shape(0, 0, 10, 0, 10, 4.5, 20, 5, 10, 5.5, 10, 10, 0, 10);

describe('a slot', () => {
  it.each<[string, Region[]]>([
    ['no later layer is near', [rect(40, 0, 50, 10)]],
    ['it is painted over beside its narrowest place', [rect(16, 3, 24, 7)]],
    ['the cover ends on it, for its sheet may slip', [rect(9, 3, 15, 7)]],
    ['the cover reaches over its narrowest place by less than the slip', [rect(9, 3, 15.4, 7)]],
    ['the cover leaves one of its sides bare', [rect(9, 3, 21, 5)]],
  ])('counts as it is where %s', (_, later) => {
    const { part, shown: seen } = shown(SLOT, later);
    expect(seen).toBe(part);
  });

  it('does not count where all of it is covered', () => {
    expect(shown(SLOT, [rect(9, 3, 21, 7)]).shown).toBeUndefined();
    expect(shown(SLOT, [rect(9, 3, 15.5, 7), rect(14.5, 3, 21, 7)]).shown).toBeUndefined();
  });

  it('does not count where all of it is covered, though only just', () => {
    expect(shown(SLOT, [rect(10, 4.75, 20, 5.25)]).shown).toBeUndefined();
    expect(shown(SLOT, [SLOT]).shown).toBeUndefined();
  });

  it('is measured at the narrowest place that shows', () => {
    // Covered from 12.5 to 17.5: at both its ends the slot is 0.35 mm wide.
    const { shown: seen } = shown(SLOT, [rect(12, 3, 18, 7)]);
    expect(seen?.drawnWidth).toBeCloseTo(0.35, 1);
    expect(Math.abs((seen?.drawnWidth ?? 0) - 0.35)).toBeLessThan(0.02);
    expect(Math.min(Math.abs((seen?.from.x ?? 0) - 12.5), Math.abs((seen?.from.x ?? 0) - 17.5))).toBeLessThan(0.5);
  });

  it('is so with the kerf, too', () => {
    const { part, shown: seen } = shown(SLOT, [rect(12.05, 3, 17.95, 7)], 0.1);
    expect(part.cutWidth - part.drawnWidth).toBeCloseTo(0.1, 9);
    expect(Math.abs((seen?.cutWidth ?? 0) - 0.45)).toBeLessThan(0.02);
  });
});

describe('a tip', () => {
  it('counts for what shows of it', () => {
    // The cover counts from x = 17: of the wedge a triangle of 3 mm is hidden.
    const { part, shown: seen } = shown(TIP, [rect(16.5, 3, 22, 7)]);
    expect(Math.abs((seen?.reach ?? 0) - (part.reach - 3))).toBeLessThan(0.02);
  });

  it('does not count where less shows than of a blunt corner', () => {
    expect(shown(TIP, [rect(14, 3, 22, 7)]).shown).toBeUndefined();
    expect(shown(TIP, [rect(13, 3, 22, 7)]).shown).toBeUndefined();
    expect(shown(TIP, [rect(15, 3, 22, 7)]).shown).toBeDefined();
  });

  it('counts as it is where nothing covers it', () => {
    const { part, shown: seen } = shown(TIP, [rect(0, 0, 9, 10)]);
    expect(seen).toBe(part);
  });
});

describe('an opening that is small as a whole', () => {
  const dot = rect(5, 5, 5.4, 5.4);

  it('counts where any of it shows', () => {
    expect(shown(dot, [rect(5.2, 0, 10, 10)]).shown).toBeDefined();
    expect(shown(dot, [dot]).shown).toBeUndefined();
    expect(shown(dot, [rect(0, 0, 10, 10)]).shown).toBeUndefined();
  });
});
