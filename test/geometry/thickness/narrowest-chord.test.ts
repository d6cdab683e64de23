/** Of equally short chords the same one is told, whatever came first; that it is the shortest is tested in `test/outside`. */
import { describe, expect, it } from 'vitest';
import type { Region } from '../../../src/geometry/base/polygon-types';
import { ringOfBox } from '../../../src/geometry/base/ring';
import { findThinParts } from '../../../src/geometry/thickness/index';

/** A sheet with two square openings, clockwise, the corners of which come near to each other. */
function sheet(x: number, y: number): Region {
  const hole = (minX: number, minY: number) =>
    Float64Array.of(minX, minY, minX, minY + 10, minX + 10, minY + 10, minX + 10, minY);
  return [{ outer: ringOfBox({ minX: 0, minY: 0, maxX: 60, maxY: 60 }), holes: [hole(20, 20), hole(x, y)] }];
}

const ends = (region: Region) => findThinParts(region, 0.8).map(({ kind, from, to }) => [kind, from, to]);
const turned = (region: Region): Region => region.map(({ outer, holes }) => ({ outer, holes: holes.toReversed() }));

describe('a chord that is seen from both of its ends', () => {
  it.each([
    ['above the other', 30, 30.5, { x: 30, y: 30 }, { x: 30, y: 30.5 }],
    ['left of the other', 30.5, 30, { x: 30, y: 30 }, { x: 30.5, y: 30 }],
    ['left of the other, but lower', 30.3, 9.6, { x: 30, y: 20 }, { x: 30.3, y: 19.6 }],
  ])('begins at the end that lies %s, in whichever order the holes come', (_, x, y, from, to) => {
    const region = sheet(x, y);
    expect(ends(region)).toEqual([['neck', from, to]]);
    expect(ends(turned(region))).toEqual(ends(region));
  });
});
