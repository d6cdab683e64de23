import { describe, expect, it } from 'vitest';
import { type Dials, separate } from '../../src/separate/index';
import { DIALS, painted } from './pictures';

const SIDE = 200;

/** A disc that ends two pixels before the frame on every side: much less than the least detail. */
const DISC = painted(SIDE, SIDE, (x, y) =>
  Math.hypot(x - SIDE / 2 + 0.5, y - SIDE / 2 + 0.5) < SIDE / 2 - 2 ? [224, 144, 44] : [255, 255, 255],
);

function paintOnFrame(dials: Partial<Dials>): number {
  const { pixels, layers } = separate(DISC, { ...DIALS, width: 40, ...dials });
  const { labels } = pixels!;
  const orange = layers.find(({ paint }) => paint === '#e0902c')!.label;
  return labels.filter((label, at) => label === orange && isOnFrame(at)).length;
}

const isOnFrame = (at: number): boolean =>
  [at % SIDE, Math.floor(at / SIDE)].some((place) => place === 0 || place === SIDE - 1);

describe('areas beside the frame', () => {
  it('end where they were drawn where the ground beyond is left unpainted: the sheet has a margin', () => {
    expect(paintOnFrame({ ground: '#ffffff' })).toBe(0);
  });

  it('take a strip of paint that is too thin to be cut', () => {
    expect(paintOnFrame({})).toBeGreaterThan(0);
  });
});
