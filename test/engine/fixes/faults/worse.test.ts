/** What is new after a change, and what is only an old fault parted, moved or made smaller. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Extent } from '../../../../src/engine/fixes/faults/extent';
import { type Fault, newOrWorse } from '../../../../src/engine/fixes/faults/worse';
import type { Box, Region } from '../../../../src/geometry/base/polygon-types';
import { polygonOfBox } from '../../../../src/geometry/base/ring';
import { areaOf, difference, union } from '../../../../src/geometry/boolean/index';

const fault = (extent: Extent): Fault => ({ group: 'slot a', rank: 2, extent });
const box = (minX: number, minY: number, width: number, height: number): Box => ({
  minX,
  minY,
  maxX: minX + width,
  maxY: minY + height,
});
const thin = (region: Region, depth = 0.3): Fault =>
  fault({ place: { kind: 'area', region }, amount: areaOf(region), depth });
const thinBox = (at: Box, depth?: number) => thin([polygonOfBox(at)], depth);
const seam = (fromX: number, toX: number, y = 0, depth = 0.5): Fault =>
  fault({
    place: { kind: 'course', segments: [{ ax: fromX, ay: y, bx: toX, by: y }] },
    amount: toX - fromX,
    depth,
  });
const worse = (old: readonly Fault[], now: readonly Fault[], sound: Region = []) =>
  newOrWorse({ faults: old, sound: () => sound }, now).length;

/** Each takes some milliseconds of polygon algebra. */
const FEW = { numRuns: 40 };

const length = fc.double({ min: 2, max: 20, noNaN: true });
const share = fc.double({ min: 0.2, max: 0.8, noNaN: true });
const step = fc.double({ min: -0.4, max: 0.4, noNaN: true });

/** A fault that fails the test where its place is asked for. */
const unasked = (at: Box, depth: number): Fault =>
  fault({
    box: at,
    depth,
    get place(): never {
      throw new Error('The place was worked out.');
    },
    get amount(): never {
      throw new Error('The amount was worked out.');
    },
  });

describe('a box', () => {
  it('tells what is new without its place', () => {
    expect(worse([], [unasked(box(0, 0, 3, 1), 0.3)])).toBe(1);
    expect(worse([unasked(box(9, 0, 3, 1), 0.3)], [unasked(box(0, 0, 3, 1), 0.3)])).toBe(1);
  });

  it('tells what is deeper than all that may be near', () => {
    expect(worse([unasked(box(1, 0, 3, 1), 0.2)], [unasked(box(0, 0, 3, 1), 0.3)])).toBe(1);
  });

  it('does not hide an old fault', () => {
    const old = { ...thinBox(box(0, 0, 3, 0.4)).extent, box: box(0, 0, 3, 0.4) };
    expect(worse([fault(old)], [thinBox(box(0, 0, 2, 0.4))])).toBe(0);
  });
});

describe('an old fault', () => {
  it('is not new where it was parted, whether a place or a course', () => {
    fc.assert(
      fc.property(length, share, (long, at) => {
        const [one, other] = [at * (long - 0.8), long - 0.8 - at * (long - 0.8)];
        const parts = [thinBox(box(0, 0, one, 0.4)), thinBox(box(one + 0.8, 0, other, 0.4))];
        expect(worse([thinBox(box(0, 0, long, 0.4))], parts)).toBe(0);
        expect(worse([seam(0, long)], [seam(0, one), seam(one + 0.8, long)])).toBe(0);
      }),
      FEW,
    );
  });

  it('is not new where it was moved a little, or made smaller', () => {
    fc.assert(
      fc.property(length, step, step, share, (long, x, y, less) => {
        expect(worse([thinBox(box(0, 0, long, 0.4))], [thinBox(box(x / 2, y / 2, long, 0.4))])).toBe(0);
        expect(worse([thinBox(box(0, 0, long, 0.4))], [thinBox(box(0.1, 0, less * long, 0.4), 0.2)])).toBe(0);
        expect(worse([seam(0, long)], [seam(0.1, less * long, y)])).toBe(0);
      }),
      FEW,
    );
  });

  it('is worse where it became deeper, longer or more serious', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 0.02, max: 0.3, noNaN: true }), (long, more) => {
        expect(worse([thinBox(box(0, 0, long, 0.4))], [thinBox(box(0, 0, long, 0.4), 0.3 + more)])).toBe(1);
        expect(worse([seam(0, long)], [seam(0, long + 1.2)])).toBe(1);
        expect(worse([thinBox(box(0, 0, long, 0.4))], [thinBox(box(0, 0, long + 1, 0.4))])).toBe(1);
        expect(worse([seam(0, long)], [{ ...seam(0, long), rank: 3 }])).toBe(1);
      }),
      FEW,
    );
  });

  it('is not new where a part is cut off that ends before its widest place, but is where all of it is drawn narrower', () => {
    const whole = (region: Region, depth: number): Fault =>
      fault({ place: { kind: 'area', region }, amount: areaOf(region), depth, isWhole: true });
    const crossed = union([[polygonOfBox(box(0, 0, 20, 0.2))], [polygonOfBox(box(9, -0.1, 2, 0.4))]]);
    const before = whole(crossed, 0.2);
    expect(worse([before], [whole([polygonOfBox(box(0, 0, 8, 0.2))], 0.4)])).toBe(0);
    expect(worse([before], [whole([polygonOfBox(box(0, 0.05, 20, 0.1))], 0.5)])).toBe(1);
    expect(worse([before], [thinBox(box(0, 0, 8, 0.2), 0.4)])).toBe(1);
  });

  it('does not pay for one of another kind, layer or place', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 0.6, max: 30, noNaN: true }), (long, away) => {
        expect(worse([thinBox(box(0, 0, long, 0.4))], [thinBox(box(0, 0.4 + away, 1, 0.4))])).toBe(1);
        expect(worse([seam(0, long)], [seam(0, 1, away)])).toBe(1);
        expect(worse([seam(0, long)], [{ ...seam(0, 1), group: 'slot b' }])).toBe(1);
        expect(worse([seam(0, long)], [thinBox(box(0, 0, 1, 0.4))])).toBe(1);
      }),
      FEW,
    );
  });
});

describe('a tongue', () => {
  const tongue = (depth: number, ...boxes: Box[]): Fault =>
    fault({
      place: { kind: 'area', region: union([boxes.map(polygonOfBox)]) },
      depth,
      mayReach: 'root',
      depthTolerance: 0.5,
    });
  const old = tongue(10, box(0, 0, 20, 20), box(20, 2, 3, 1));

  it('is the same at a root elsewhere, and worse only where it became longer', () => {
    const moved = [box(0, 0, 20, 20), box(20, 15, 3, 2)];
    expect(worse([old], [tongue(10.4, ...moved)])).toBe(0);
    expect(worse([old], [tongue(10.6, ...moved)])).toBe(1);
  });

  it('is new where most of it held before, though it is shorter and beside an old one', () => {
    expect(worse([old], [tongue(2, box(18, 18, 20, 5))])).toBe(1);
    expect(worse([old], [tongue(2, box(30, 0, 20, 5))])).toBe(1);
  });
});

describe('a loose piece', () => {
  const piece = (...boxes: Box[]): Fault =>
    fault({ place: { kind: 'area', region: union([boxes.map(polygonOfBox)]) }, mayReach: 'loose' });

  it('may lose a part, be parted, or hang together with another one by what was an opening', () => {
    fc.assert(
      fc.property(length, share, (long, at) => {
        const [old, other] = [box(0, 0, long, 5), box(0, 6, long, 5)];
        const sound = [polygonOfBox(box(-20, -20, 80, 15))];
        const parts = [piece(box(0, 0, at * long - 0.2, 5)), piece(box(at * long + 0.2, 0, (1 - at) * long - 0.2, 5))];
        expect(worse([piece(old)], parts, sound)).toBe(0);
        expect(worse([piece(old), piece(other)], [piece(old, other, box(at, 5, 0.8, 1))], sound)).toBe(0);
      }),
      FEW,
    );
  });

  it('is new where it takes with it what hung safely, or was there in no part', () => {
    fc.assert(
      fc.property(length, share, (long, at) => {
        const old = box(0, 0, long, 5);
        const sound = [polygonOfBox(box(-20, 5, 80, 15))];
        expect(worse([piece(old)], [piece(old, box(0, 4, at * long, 3))], sound)).toBe(1);
        expect(worse([piece(old)], [piece(box(long + 0.1, 0, 1, 1))], sound)).toBe(1);
      }),
      FEW,
    );
  });
});

/** mm: pixels of the slower comparison; what is nearer to the limit than this is left open. */
const PIXEL = 0.2;
const SIDE = 40;
const NEAR = 0.5;
const UNSURE = 2 * PIXEL;

type Pixels = readonly (readonly [number, number])[];

function pixelsOf(boxes: readonly Box[]): Pixels {
  const pixels: [number, number][] = [];
  for (let i = 0; i < SIDE; i += 1) {
    for (let j = 0; j < SIDE; j += 1) {
      const [x, y] = [(i + 0.5) * PIXEL, (j + 0.5) * PIXEL];
      if (boxes.some(({ minX, minY, maxX, maxY }) => x > minX && x < maxX && y > minY && y < maxY)) pixels.push([x, y]);
    }
  }
  return pixels;
}

/** mm from the pixel of one set that is farthest from the other set. */
function farthest(now: Pixels, old: Pixels): number {
  const away = ([x, y]: readonly [number, number]) =>
    old.reduce((least, [u, v]) => Math.min(least, Math.hypot(x - u, y - v)), Infinity);
  return now.reduce((most, pixel) => Math.max(most, away(pixel)), 0);
}

describe('random shapes, as pixels see them', () => {
  // On pixels, so that both see the same areas.
  const onGrid = (most: number) => fc.integer({ min: 0, max: most }).map((value) => value * PIXEL);
  const anyBox = fc
    .tuple(onGrid(30), onGrid(30), fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }))
    .map(([x, y, width, height]) => box(x, y, width * PIXEL, height * PIXEL));
  const boxes = fc.array(anyBox, { minLength: 1, maxLength: 4 });
  const faultsOf = (region: Region) => region.map((polygon) => thin([polygon]));
  const regionOf = (some: readonly Box[]) => union([some.map(polygonOfBox)]);

  it('are new where a pixel is far from all that was, and not where all are near and none more', () => {
    const seen = { fresh: 0, old: 0 };
    fc.assert(
      fc.property(boxes, boxes, fc.boolean(), (before, drawn, isParted) => {
        const now = isParted ? [] : drawn;
        const left = isParted ? difference(regionOf(before), regionOf(drawn)) : regionOf(now);
        const hidden = isParted ? pixelsOf(drawn).map(String) : [];
        const old = pixelsOf(before);
        const after = isParted ? old.filter((pixel) => !hidden.includes(String(pixel))) : pixelsOf(now);
        const found = worse(faultsOf(regionOf(before)), faultsOf(left));
        const away = farthest(after, old);
        if (away > NEAR + UNSURE) {
          seen.fresh += 1;
          expect(found).toBeGreaterThan(0);
        } else if (away < NEAR - PIXEL && after.length <= old.length) {
          seen.old += 1;
          expect(found).toBe(0);
        }
      }),
      { numRuns: 150 },
    );
    expect(Math.min(seen.fresh, seen.old)).toBeGreaterThan(40);
  });
});
