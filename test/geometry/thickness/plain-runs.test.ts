/**
 * Runs of the boundary where only tips of corners are thin are passed over. What is found then is what a search of all
 * places finds; and such a search is made where every tip is wanted, however short.
 */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/geometry/base/curve-types';
import type { Region, Ring } from '../../../src/geometry/base/polygon-types';
import { distance, interpolate } from '../../../src/geometry/base/vector';
import { offset, regionFromRings } from '../../../src/geometry/boolean/index';
import { findThinParts } from '../../../src/geometry/thickness/index';
import type { ThinPart } from '../../../src/geometry/thickness/types';
import { cases } from '../../thorough';
import { randomRegion } from './random-regions';
import { type Draw, drawFrom } from './shapes';

const WIDTHS = [0.2, 0.8, 2.1];

/**
 * As traced from a picture: closed waves of points about 0.15 mm from each other, each some hundredths beside its
 * course.
 */
function tracedRegion(seed: number): Region {
  const draw = drawFrom(seed);
  const [spread, roughness] = [6 + 6 * draw(), 0.02 + 0.3 * draw() ** 2];
  const rings = Array.from({ length: 5 }, () => tracedRing(draw, 20 * draw(), 20 * draw(), spread, roughness));
  return regionFromRings(rings, 'evenodd');
}

function tracedRing(draw: Draw, x: number, y: number, size: number, roughness: number): Ring {
  const count = Math.ceil((2 * Math.PI * size) / 0.15);
  const waves = Array.from({ length: 9 }, (_, k) => ({
    often: k + 2,
    far: (0.8 * draw()) / (k + 2),
    from: 6.3 * draw(),
  }));
  const points = Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    const wavy = waves.reduce((sum, { often, far, from }) => sum + far * Math.cos(often * angle + from), 1);
    const radius = size * wavy + roughness * (draw() - 0.5);
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  return Float64Array.from(points.flat());
}

/**
 * Blunt and sharp teeth all round, drawn in short edges; some are sharper than the 39° from which a corner is a tip.
 */
function toothedRegion(seed: number): Region {
  const draw = drawFrom(seed);
  const count = 2 * Math.round(12 + 40 * draw());
  const corners = Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.3 * draw())) / count;
    const radius = i % 2 === 0 ? 10 : 10 - 6 * draw() ** 2;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
  const points = corners.flatMap((from, i) => {
    const to = corners[(i + 1) % count] as Point;
    const steps = Math.ceil(distance(from, to) / 0.15);
    return Array.from({ length: steps }, (_, step) => {
      const { x, y } = interpolate(from, to, step / steps);
      return [x + 1e-4 * draw(), y + 1e-4 * draw()];
    });
  });
  return [{ outer: Float64Array.from(points.flat()), holes: [] }];
}

/** Round fingers on a disc, drawn in short edges, with fillets where they begin. */
function fingeredRegion(seed: number): Region {
  const draw = drawFrom(seed);
  const fingers = Array.from({ length: 8 }, (_, i) => finger((2 * Math.PI * i) / 8, 7 + 4 * draw(), 0.05 + draw()));
  const sharp = regionFromRings([finger(0, 0, 6), ...fingers], 'nonzero');
  return offset(offset(sharp, 1, 'round', 0.001), -1, 'round', 0.001);
}

/** What a disc of the radius covers, about, that goes from the origin so far; the flanks are never quite straight. */
function finger(angle: number, far: number, radius: number): Ring {
  const points: (readonly [number, number])[] = [];
  const half = (along: number) => radius * (1 + 0.005 * Math.cos(9 * along));
  for (let along = 0; along <= far; along += 0.15) points.push([along, -half(along)]);
  for (let turn = 0; turn < Math.PI; turn += 0.15)
    points.push([far + radius * Math.sin(turn), -radius * Math.cos(turn)]);
  for (let along = far; along >= 0; along -= 0.15) points.push([along, half(along)]);
  for (let turn = 0; turn < Math.PI; turn += 0.15) points.push([-radius * Math.sin(turn), radius * Math.cos(turn)]);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return Float64Array.from(points.flatMap(([x, y]) => [x * cos - y * sin, x * sin + y * cos]));
}

/** To a thousandth of a nanometre: neighbours are looked at in another order, and sums may differ in the last digit. */
function described(parts: readonly ThinPart[], least: number): string[] {
  const at = ({ x, y }: { x: number; y: number }) => `${x.toFixed(9)} ${y.toFixed(9)}`;
  return parts
    .filter(({ kind, reach }) => kind !== 'tip' || reach > least)
    .map(({ kind, width, length, reach, sides, polygon, from, to, holds }) =>
      [
        kind,
        width.toFixed(9),
        length.toFixed(9),
        reach.toFixed(9),
        sides,
        polygon,
        at(from),
        at(to),
        holds?.area.toFixed(6),
      ].join(' '),
    )
    .sort();
}

function expectAll(region: Region): number {
  return WIDTHS.reduce((found, width) => {
    const parts = described(findThinParts(region, width), width);
    expect(parts).toEqual(described(findThinParts(region, width, { leastReach: 0 }), width));
    return found + parts.length;
  }, 0);
}

describe('passing over plain runs', () => {
  it('misses nothing in smooth regions', () => {
    const found = Array.from({ length: cases(25, 8) }, (_, i) => expectAll(randomRegion(900 + i)));
    expect(found.reduce((sum, count) => sum + count)).toBeGreaterThan(cases(100, 30));
  });

  it('misses nothing in traced regions', () => {
    const found = Array.from({ length: cases(12, 4) }, (_, i) => expectAll(tracedRegion(900 + i)));
    expect(found.reduce((sum, count) => sum + count)).toBeGreaterThan(cases(100, 30));
  });

  it('misses no finger', () => {
    const found = Array.from({ length: cases(15, 5) }, (_, i) => expectAll(fingeredRegion(900 + i)));
    expect(found.reduce((sum, count) => sum + count)).toBeGreaterThan(cases(100, 30));
  });

  it('misses no sharp tooth', () => {
    const found = Array.from({ length: cases(40, 12) }, (_, i) => expectAll(toothedRegion(900 + i)));
    expect(found.reduce((sum, count) => sum + count)).toBeGreaterThan(cases(100, 30));
  });
});
