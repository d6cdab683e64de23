import { describe, expect, it } from 'vitest';
import { reverseRing, ringOfBox } from '../../../src/geometry/base/ring';
import { regionContains, regionFromRings } from '../../../src/geometry/boolean/index';
import { inscribedDisc } from '../../../src/geometry/polygon/inscribed-circle';

const bar = { outer: ringOfBox({ minX: 0, minY: 0, maxX: 40, maxY: 3 }), holes: [] };

describe('inscribedDisc', () => {
  it('fills a bar from side to side', () => {
    const disc = inscribedDisc(bar, 0.001);
    expect(disc.radius).toBeCloseTo(1.5, 3);
    expect(disc.centre.y).toBeCloseTo(1.5, 3);
  });

  it('keeps out of holes', () => {
    const hole = ringOfBox({ minX: 4, minY: 4, maxX: 16, maxY: 16 });
    const frame = regionFromRings([ringOfBox({ minX: 0, minY: 0, maxX: 20, maxY: 20 }), reverseRing(hole)], 'nonzero');
    const disc = frame[0] && inscribedDisc(frame[0], 0.001);
    // In the corner, between two outer sides and the hole's corner: r = (4√2)/(1 + √2).
    expect(disc?.radius).toBeCloseTo((4 * Math.SQRT2) / (1 + Math.SQRT2), 2);
    expect(disc && regionContains(frame, disc.centre)).toBe(true);
  });

  it('takes no longer for a sliver ten metres long', () => {
    const sliver = ringOfBox({ minX: 0, minY: 0, maxX: 0.0002, maxY: 10_000 });
    expect(inscribedDisc({ outer: sliver, holes: [] }, 0.01).radius).toBeCloseTo(0.0001, 6);
    const hole = reverseRing(ringOfBox({ minX: 0.00005, minY: 4000, maxX: 0.00015, maxY: 6000 }));
    expect(inscribedDisc({ outer: sliver, holes: [hole] }, 0.01).radius).toBe(0);
  });

  it('answers for polygons without inside', () => {
    expect(inscribedDisc({ outer: Float64Array.of(0, 0, 4, 0, 9, 0), holes: [] }, 0.01)).toEqual({
      centre: { x: 4.5, y: 0 },
      radius: 0,
    });
    expect(inscribedDisc({ outer: new Float64Array(0), holes: [] }, 0.01).radius).toBe(0);
    expect(inscribedDisc({ outer: Float64Array.of(0, 0, 5, 5, 9, 9), holes: [] }, 0.01).radius).toBeLessThan(0.01);
  });

  it('finds small polygons also when the precision asked for is coarse', () => {
    const small = { outer: ringOfBox({ minX: 0, minY: 0, maxX: 0.1, maxY: 0.1 }), holes: [] };
    expect(inscribedDisc(small, 5).radius).toBeCloseTo(0.05, 3);
  });
});
