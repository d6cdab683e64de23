/** Random stacks whose colours overlap, touch, or leave gaps, in mm. */
import fc from 'fast-check';
import type { Box, Region, Ring } from '../../src/geometry/base/polygon-types';
import { clipToBox, regionFromRings } from '../../src/geometry/boolean/index';

export const FRAME: Box = { minX: 0, minY: 0, maxX: 24, maxY: 20 };

const wobble = fc.double({ min: -1, max: 1, noNaN: true });

const region = (ring: number[]): Region =>
  clipToBox(regionFromRings([Float64Array.from(ring) as Ring], 'nonzero'), FRAME);

/** Two fields on both sides of a crooked seam; the left one is drawn on by `least` to `least + more` mm. */
const fields = fc
  .record({
    turns: fc.array(wobble, { minLength: 3, maxLength: 7 }),
    laps: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 7, maxLength: 7 }),
    least: fc.constantFrom(-0.05, 0, 0.1, 0.25, 0.45),
    more: fc.constantFrom(0, 0.2, 0.6),
  })
  .map(({ turns, laps, least, more }) => {
    const at = (i: number) => ({ x: 12 + 3 * (turns[i] as number), y: 1 + (18 * i) / (turns.length - 1) });
    const left: number[] = [1, 1];
    const right: number[] = [23, 19, 23, 1];
    turns.forEach((_, i) => {
      const { x, y } = at(i);
      left.push(x + least + more * (laps[i] as number), y);
      right.push(x, y);
    });
    return [region([...left, 1, 19]), region(right)];
  });

/** A star or blob somewhere. */
const patch = fc
  .record({
    x: fc.double({ min: 6, max: 18, noNaN: true }),
    y: fc.double({ min: 6, max: 14, noNaN: true }),
    size: fc.double({ min: 1, max: 4, noNaN: true }),
    radii: fc.array(wobble, { minLength: 5, maxLength: 24 }),
  })
  .map(({ x, y, size, radii }) =>
    region(
      radii.flatMap((radius, i) => {
        const [angle, r] = [(2 * Math.PI * i) / radii.length, size * (1 + 0.5 * radius)];
        return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
      }),
    ),
  );

/** In painting order. */
export const randomStack: fc.Arbitrary<Region[]> = fc.oneof(
  fields,
  fc.tuple(fields, patch).map(([two, one]) => [...two, one]),
  fc.tuple(fields, patch, patch).map(([two, one, other]) => [one, ...two, other]),
  fc.array(patch, { minLength: 3, maxLength: 5 }),
);
