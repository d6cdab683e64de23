import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/base/polygon-types';
import { polygonOfBox } from '../../src/geometry/base/ring';
import { difference, offset } from '../../src/geometry/boolean/index';
import { isCoveredByLater } from '../../src/stack/covered-by-later';

const SLIP = 0.5;
const rect = (minX: number, minY: number, maxX: number, maxY: number): Region => [
  polygonOfBox({ minX, minY, maxX, maxY }),
];
const disc = (x: number, y: number, radius: number): Region =>
  offset(rect(x - 0.01, y - 0.01, x + 0.01, y + 0.01), radius);

describe('a place that is bare in one layer', () => {
  const place = disc(10, 10, 4);

  it.each<[string, Region]>([
    ['exactly there', place],
    ['over its edge', disc(10, 10, 5)],
    ['by two layers together', [...rect(0, 0, 10, 20), ...rect(10, 0, 20, 20)]],
    ['by two layers that overlap', [...rect(0, 0, 11, 20), ...rect(9, 0, 20, 20)]],
    ['but for a gap narrower than the slip', disc(10, 10, 3.6)],
    ['but for a gap on one side', disc(10.4, 10, 4)],
  ])('is covered when later paint lies %s', (_, later) => {
    expect(isCoveredByLater(place, later, SLIP)).toBe(true);
  });

  it.each<[string, Region]>([
    ['is not there', []],
    ['lies elsewhere', disc(30, 10, 5)],
    ['only touches it', difference(rect(0, 0, 20, 20), place)],
    ['leaves a gap wider than the slip', disc(10, 10, 3.4)],
    ['covers half of it', rect(0, 0, 10, 20)],
    ['leaves a bridge of 0.8 mm across it', [...rect(0, 0, 9.6, 20), ...rect(10.4, 0, 20, 20)]],
    ['leaves a line of 0.3 mm across it', [...rect(0, 0, 9.85, 20), ...rect(10.15, 0, 20, 20)]],
    ['has a hole within it', difference(disc(10, 10, 5), disc(10, 10, 0.3))],
  ])('is not covered when later paint %s', (_, later) => {
    expect(isCoveredByLater(place, later, SLIP)).toBe(false);
  });

  it('must be covered everywhere when sheets do not slip', () => {
    expect(isCoveredByLater(place, place, 0)).toBe(true);
    expect(isCoveredByLater(place, disc(10, 10, 3.95), 0)).toBe(false);
  });

  it('is not covered by paint beside it, however small it is', () => {
    const dot = disc(10, 10, 0.2);
    expect(isCoveredByLater(dot, rect(10.2, 0, 20, 20), SLIP)).toBe(false);
    expect(isCoveredByLater(rect(0, 10, 10, 10.3), rect(5, 0, 20, 20), SLIP)).toBe(false);
  });
});
