import { describe, expect, it } from 'vitest';
import type { Demand } from '../../../src/edits/opening/demands';
import { displaceCurve } from '../../../src/edits/opening/displace-curve';
import type { Cubic } from '../../../src/geometry/base/curve-types';
import { nearestOn, pointAt, tangentAt } from '../../../src/geometry/curve/index';

const NEED = 0.5;
/** How far it may go where it need not, mm. */
const MOST = 0.05;

function demandsOn(curve: Cubic): Demand[] {
  return Array.from({ length: 81 }, (_, i): Demand => {
    const along = tangentAt(curve, i / 80);
    return { t: i / 80, outward: { x: -along.y, y: along.x }, need: NEED };
  });
}

const moveOf = ({ outward }: Demand) => ({ x: NEED * (outward?.x ?? 0), y: NEED * (outward?.y ?? 0) });

describe('a curve that moves aside all over', () => {
  it.each<[string, Cubic, number]>([
    [
      'a gentle bend as one',
      {
        kind: 'cubic',
        start: { x: 0, y: 0 },
        control1: { x: 10, y: 3 },
        control2: { x: 20, y: 3 },
        end: { x: 30, y: 0 },
      },
      1,
    ],
    [
      'a tight one as a few',
      {
        kind: 'cubic',
        start: { x: 0, y: 0 },
        control1: { x: 0, y: 12 },
        control2: { x: 10, y: 12 },
        end: { x: 10, y: 0 },
      },
      4,
    ],
  ])('%s', (_, curve, most) => {
    const demands = demandsOn(curve);
    const [first, last] = [demands[0], demands.at(-1)].map((demand) => moveOf(demand as Demand));
    const moved = displaceCurve({ curve, demands }, first!, last!, MOST) ?? [];
    expect(moved.length).toBeGreaterThan(0);
    expect(moved.length).toBeLessThanOrEqual(most);
    moved.slice(1).forEach((part, i) => expect(part.start).toEqual(moved[i]?.end));
    for (const part of moved) {
      for (const t of [0, 0.2, 0.5, 0.7, 1]) {
        const { distance } = nearestOn(curve, pointAt(part, t));
        expect(distance).toBeGreaterThan(NEED - 0.01);
        expect(distance).toBeLessThan(NEED + MOST + 0.03);
      }
    }
  });
});
