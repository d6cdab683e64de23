import { describe, expect, it } from 'vitest';
import {
  withAdded,
  withFixed,
  withLeftOut,
  withMerged,
  withMoved,
  withoutMerged,
  withPaint,
  withPaintedAgain,
} from '../../../src/preview/separating/palette';
import type { PictureDials } from '../../../src/protocol/separating';

const [SUN, WATER, REEDS, OTTER] = ['#e7c388', '#81a3ad', '#35493e', '#5b3a26'] as const;
const LAYERS = [SUN, WATER, REEDS].map((paint) => ({ paint }));
const DIALS: PictureDials = {
  width: 148,
  colours: 3,
  paints: [],
  leaveOut: [],
  outline: false,
  merged: [],
  order: [],
  bridges: true,
};

describe('a paint', () => {
  it('is fixed, and let go', () => {
    const fixed = withFixed(DIALS, SUN, true);
    expect(fixed.paints).toEqual([SUN]);
    expect(withFixed(fixed, SUN, true).paints).toEqual([SUN]);
    expect(withFixed(fixed, SUN, false)).toEqual(DIALS);
  });

  it('is replaced by one that the artist has, wherever it was named', () => {
    const before = { ...DIALS, paints: [SUN], order: [WATER, SUN], merged: [[REEDS, SUN]] as const };
    expect(withPaint(before, SUN, OTTER)).toMatchObject({
      paints: [OTTER],
      order: [WATER, OTTER],
      merged: [[REEDS, OTTER]],
      colours: 3,
    });
    expect(withPaint(DIALS, SUN, SUN)).toBe(DIALS);
  });

  it('is added once', () => {
    const more = withAdded(DIALS, OTTER);
    expect(more).toMatchObject({ colours: 4, paints: [OTTER] });
    expect(withAdded(more, OTTER)).toBe(more);
    const most = { ...DIALS, colours: 24 };
    expect(withAdded(most, OTTER)).toBe(most);
  });

  it('is merged, with what was merged into it before, and parted again', () => {
    const once = withMerged({ ...DIALS, paints: [WATER], order: [WATER, SUN] }, WATER, SUN);
    expect(once).toMatchObject({ colours: 2, paints: [SUN], order: [SUN], merged: [[WATER, SUN]] });
    const twice = withMerged(once, SUN, REEDS);
    expect(twice).toMatchObject({
      colours: 1,
      merged: [
        [WATER, REEDS],
        [SUN, REEDS],
      ],
    });
    expect(withoutMerged(once, WATER)).toMatchObject({ colours: 3, merged: [] });
  });

  it('is left unpainted, and painted again', () => {
    const bare = withLeftOut({ ...DIALS, paints: [SUN], order: [SUN] }, SUN);
    expect(bare).toMatchObject({ colours: 2, paints: [], order: [], leaveOut: [SUN] });
    expect(withPaintedAgain(bare, SUN)).toMatchObject({ colours: 3, leaveOut: [] });
    expect(withPaintedAgain({ ...DIALS, ground: SUN }, SUN).ground).toBeUndefined();
  });

  it('is moved in the spray order, no farther than its ends', () => {
    expect(withMoved(DIALS, LAYERS, REEDS, -1).order).toEqual([SUN, REEDS, WATER]);
    expect(withMoved(DIALS, LAYERS, SUN, 9).order).toEqual([WATER, REEDS, SUN]);
    expect(withMoved(DIALS, LAYERS, SUN, -1)).toBe(DIALS);
    expect(withMoved(DIALS, LAYERS, OTTER, 1)).toBe(DIALS);
  });
});
