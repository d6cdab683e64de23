/**
 * What must not matter: where a region lies, which way it is turned, where its rings begin, how its edges are divided.
 */
import { describe, expect, it } from 'vitest';
import type { Region, Ring } from '../../../src/geometry/base/polygon-types';
import { findThinParts } from '../../../src/geometry/thickness/index';
import type { ThinPart } from '../../../src/geometry/thickness/types';
import { cases } from '../../thorough';
import { randomRegion } from './random-regions';
import { drawFrom, type Motion, mapRings, moveRegion, STILL } from './shapes';

const SEEDS = Array.from({ length: cases(12, 4) }, (_, at) => 500 + at);
const WIDTHS = [0.8, 2.1];

function summary(parts: readonly ThinPart[]): string[] {
  const areaOf = ({ holds }: ThinPart): string => (holds ? holds.area.toFixed(3) : 'nothing');
  const line = (part: ThinPart): string => {
    const { kind, width, reach, length, sides } = part;
    return [kind, width.toFixed(5), reach.toFixed(4), length.toFixed(3), sides, areaOf(part)].join(' ');
  };
  return parts.map(line).sort();
}

function expectSame(change: (region: Region) => Region) {
  for (const seed of SEEDS) {
    const region = randomRegion(seed);
    for (const width of WIDTHS) {
      expect(summary(findThinParts(change(region), width))).toEqual(summary(findThinParts(region, width)));
    }
  }
}

function movedBy(motion: Partial<Motion>): (region: Region) => Region {
  return (region) => moveRegion(region, { ...STILL, ...motion });
}

describe('thin parts stay the same', () => {
  it('when there are some at all', () => {
    expect(SEEDS.flatMap((seed) => findThinParts(randomRegion(seed), 2.1)).length).toBeGreaterThan(cases(20, 7));
  });

  it('turned by quarters', () => {
    for (const quarters of [1, 2, 3]) expectSame(movedBy({ angle: (quarters * Math.PI) / 2 }));
  });

  it('turned by any angle', () => expectSame(movedBy({ angle: 0.7123 })));

  it('mirrored', () => expectSame(movedBy({ mirrored: true })));

  it('shifted', () => expectSame(movedBy({ shiftX: 1234.5678, shiftY: -987.65 })));

  it('with other start vertices', () => {
    const draw = drawFrom(7);
    const restart = (ring: Ring): Ring => {
      const from = 2 * Math.floor((draw() * ring.length) / 2);
      return Float64Array.from([...ring.slice(from), ...ring.slice(0, from)]);
    };
    expectSame((region) => mapRings(region, restart));
  });

  it('with edges divided', () => {
    const divide = (ring: Ring): Ring => {
      const points: number[] = [];
      for (let at = 0; at < ring.length; at += 2) {
        const [x, y] = [ring[at]!, ring[at + 1]!];
        const [endX, endY] = [ring[(at + 2) % ring.length]!, ring[(at + 3) % ring.length]!];
        points.push(x, y, x + (endX - x) / 3, y + (endY - y) / 3, (x + endX) / 2, (y + endY) / 2);
      }
      return Float64Array.from(points);
    };
    expectSame((region) => mapRings(region, divide));
  });

  it('with polygons in another order', () => {
    expectSame((region) => [...region].reverse());
  });
});
