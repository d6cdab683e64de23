/** Regions for tests of thin parts, in mm: rings written down point by point, arcs within 2.5 µm of their chords. */
import fc from 'fast-check';
import type { Polygon, Region, Ring } from '../../../src/geometry/base/polygon-types';

const FLATNESS = 0.0025;

export interface Motion {
  readonly angle: number;
  readonly mirrored: boolean;
  readonly shiftX: number;
  readonly shiftY: number;
  readonly scale: number;
}

export const STILL: Motion = { angle: 0, mirrored: false, shiftX: 0, shiftY: 0, scale: 1 };

export const motions: fc.Arbitrary<Motion> = fc.record({
  angle: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
  mirrored: fc.boolean(),
  shiftX: fc.double({ min: -500, max: 500, noNaN: true }),
  shiftY: fc.double({ min: -500, max: 500, noNaN: true }),
  scale: fc.double({ min: 0.5, max: 4, noNaN: true }),
});

/** Mirrored rings are turned round, so that the region stays on the same side of them. */
export function moveRing(ring: Ring, { angle, mirrored, shiftX, shiftY, scale }: Motion): Ring {
  const moved = new Float64Array(ring.length);
  const [cos, sin] = [scale * Math.cos(angle), scale * Math.sin(angle)];
  for (let at = 0; at < ring.length; at += 2) {
    const [x, y] = [mirrored ? -ring[at]! : ring[at]!, ring[at + 1]!];
    const target = mirrored ? ring.length - 2 - at : at;
    moved[target] = cos * x - sin * y + shiftX;
    moved[target + 1] = sin * x + cos * y + shiftY;
  }
  return moved;
}

export function mapRings(region: Region, map: (ring: Ring) => Ring): Region {
  return region.map(({ outer, holes }) => ({ outer: map(outer), holes: holes.map(map) }));
}

export function moveRegion(region: Region, motion: Motion): Region {
  return mapRings(region, (ring) => moveRing(ring, motion));
}

export function ring(...points: readonly number[]): Ring {
  return Float64Array.from(points);
}

export function polygon(outer: Ring, ...holes: readonly Ring[]): Polygon {
  return { outer, holes };
}

export function reversed(points: Ring): Ring {
  const turned = new Float64Array(points.length);
  for (let at = 0; at < points.length; at += 2) {
    turned[at] = points[points.length - 2 - at]!;
    turned[at + 1] = points[points.length - 1 - at]!;
  }
  return turned;
}

export function rectangle(x0: number, y0: number, x1: number, y1: number): Ring {
  return ring(x0, y0, x1, y0, x1, y1, x0, y1);
}

/** Points of an arc, its end left out, as many as keep the chords flat when the arc is magnified fourfold. */
export function arc(x: number, y: number, radius: number, from: number, to: number): number[] {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / Math.sqrt((8 * FLATNESS) / (4 * radius))));
  return Array.from({ length: count }, (_, at) => {
    const angle = from + ((to - from) * at) / count;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }).flat();
}

export function circle(x: number, y: number, radius: number, from = 0): Ring {
  return Float64Array.from(arc(x, y, radius, from, from + 2 * Math.PI));
}

export function ellipse(a: number, b: number, count = 2000): Ring {
  const points: number[] = [];
  for (let at = 0; at < count; at += 1) {
    const angle = (2 * Math.PI * at) / count;
    points.push(a * Math.cos(angle), b * Math.sin(angle));
  }
  return Float64Array.from(points);
}

/** Two discs of the radius whose centres are 2·c apart, as one. */
export function overlappingDiscs(radius: number, c: number): Ring {
  const half = Math.acos(c / radius);
  return Float64Array.from([
    ...arc(-c, 0, radius, half, 2 * Math.PI - half),
    ...arc(c, 0, radius, Math.PI + half, 3 * Math.PI - half),
  ]);
}

/** Two squares of the given side joined by a straight web. */
export function dumbbell(side: number, web: number, width: number): Ring {
  const [low, high] = [(side - width) / 2, (side + width) / 2];
  const [a, b, c] = [side, side + web, 2 * side + web];
  return ring(0, 0, a, 0, a, low, b, low, b, 0, c, 0, c, side, b, side, b, high, a, high, a, side, 0, side);
}

/** A bar 5 mm high with teeth of the given width upon it. */
export function comb(teeth: number, pitch: number, width: number, height: number): Ring {
  const points = [0, 0, teeth * pitch, 0, teeth * pitch, 5];
  for (let tooth = teeth - 1; tooth >= 0; tooth -= 1) {
    const [right, left] = [tooth * pitch + (pitch + width) / 2, tooth * pitch + (pitch - width) / 2];
    points.push(right, 5, right, 5 + height, left, 5 + height, left, 5);
  }
  points.push(0, 5);
  return Float64Array.from(points);
}

/** Gives a number in [0, 1). */
export type Draw = () => number;

/** Mulberry32 by T. Ettinger, public domain: the same numbers for the same seed everywhere. */
export function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
