/**
 * Thin parts against closed forms, each shape turned, mirrored, shifted and scaled at random. Widths must be right to
 * 0.01 mm or 0.1 %, whichever is larger. The formulas follow from the definitions of circle, ellipse and distance;
 * where another source is named, it is that of the figures.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/base/polygon-types';
import { findThinParts } from '../../src/geometry/thickness/index';
import type { ThinPart } from '../../src/geometry/thickness/types';
import {
  arc,
  circle,
  comb,
  dumbbell,
  ellipse,
  type Motion,
  motions,
  moveRegion,
  overlappingDiscs,
  polygon,
  rectangle,
  reversed,
  ring,
  STILL,
} from '../geometry/thickness/shapes';

/** Runs the check on the shape as it is and moved at random; `scale` is what lengths were multiplied by. */
function underMotion(
  region: Region,
  width: number,
  check: (parts: ThinPart[], scale: number) => void,
  leastReach?: number,
) {
  const run = (motion: Motion) => {
    const options = leastReach === undefined ? {} : { leastReach: leastReach * motion.scale };
    check(findThinParts(moveRegion(region, motion), width * motion.scale, options), motion.scale);
  };
  run(STILL);
  fc.assert(fc.property(motions, run), { numRuns: 12 });
}

function expectWidth(part: ThinPart | undefined, expected: number) {
  expect(part).toBeDefined();
  expect(Math.abs(part!.width - expected)).toBeLessThanOrEqual(Math.max(0.01, 0.001 * expected));
  expect(Math.hypot(part!.to.x - part!.from.x, part!.to.y - part!.from.y)).toBeCloseTo(part!.width, 9);
}

function expectOne(region: Region, width: number, kind: ThinPart['kind'], expected: number) {
  underMotion(region, width, (parts, scale) => {
    expect(parts.map((part) => part.kind)).toEqual([kind]);
    expectWidth(parts[0], expected * scale);
  });
}

describe('the web between two round holes', () => {
  it.each([
    [10, 10, 0.5],
    [3, 17, 0.02],
    [8, 0.6, 0.74],
  ])('of radius %d and %d is their distance less both radii: %d', (first, second, gap) => {
    const holes = [reversed(circle(0, 0, first)), reversed(circle(first + second + gap, 0, second, 0.3))];
    expectOne([polygon(rectangle(-60, -60, 90, 60), ...holes)], 0.8, 'neck', gap);
  });

  it('is no neck when it is as wide as the limit', () => {
    const holes = [reversed(circle(0, 0, 10)), reversed(circle(20.8, 0, 10, 0.3))];
    underMotion([polygon(rectangle(-60, -60, 90, 60), ...holes)], 0.8, (parts) => expect(parts).toEqual([]));
  });
});

describe('two overlapping discs', () => {
  // Chord of intersection of equal circles, 2·sqrt(R² − c²), in whole-number triangles.
  it.each([
    [5, 3, 8],
    [10, 8, 12],
    [13, 12, 10],
    [25, 24, 14],
  ])('of radius %d, centres 2 × %d apart, have a neck of %d between two corners', (radius, c, neck) => {
    underMotion([polygon(overlappingDiscs(radius, c))], neck + 0.5, (parts, scale) => {
      expect(parts.map((part) => part.kind)).toEqual(['neck']);
      expectWidth(parts[0], neck * scale);
      const area = Math.PI * radius ** 2 - (radius ** 2 * Math.acos(c / radius) - c * Math.sqrt(radius ** 2 - c ** 2));
      expect(Math.abs(parts[0]!.holds!.area / scale ** 2 / area - 1)).toBeLessThan(0.001);
    });
    underMotion([polygon(overlappingDiscs(radius, c))], neck - 0.1, (parts) => expect(parts).toEqual([]));
  });
});

const ARMS = ring(0, 0, 30, 0, 30, 2, 2, 2, 2, 30, 0, 30);
const APOTHEM = 3 ** 0.5;
const HEXAGON = ring(2, 0, 1, APOTHEM, -1, APOTHEM, -2, 0, -1, -APOTHEM, 1, -APOTHEM);

describe('polygons thin as a whole have the diameter of their largest inscribed disc', () => {
  it.each([
    ['a rectangle: its shorter side', [polygon(rectangle(0, 0, 60, 0.5))], 0.8, 0.5],
    ['a 3-4-5 triangle: 2 (area 6, perimeter 12)', [polygon(ring(0, 0, 4, 0, 4, 3))], 2.5, 2],
    ['an annulus 10.7 / 4.9: 5.8', [polygon(circle(0, 0, 10.7), reversed(circle(0, 0, 4.9)))], 6, 5.8],
    ['an ellipse 5 × 3: its shorter axis', [polygon(ellipse(5, 3))], 6.2, 6],
    ['an L of arms 2: 2·2·(2 − √2), more than an arm', [polygon(ARMS)], 3, 4 * (2 - Math.SQRT2)],
    ['a regular hexagon of side 2: 2·√3', [polygon(HEXAGON)], 4, 2 * APOTHEM],
  ])('%s', (_name, region, width, expected) => {
    expectOne(region, width, 'whole', expected);
  });

  it('and are not thin when that is the limit', () => {
    underMotion([polygon(circle(0, 0, 0.4))], 0.8, (parts) => expect(parts).toEqual([]));
    underMotion([polygon(rectangle(0, 0, 60, 0.8))], 0.8, (parts) => expect(parts).toEqual([]));
  });
});

describe('a straight web', () => {
  it('is one neck however long, with its length and what hangs on it', () => {
    underMotion([polygon(dumbbell(10, 60, 0.6))], 0.8, (parts, scale) => {
      expect(parts.map((part) => part.kind)).toEqual(['neck']);
      expectWidth(parts[0], 0.6 * scale);
      expect(parts[0]!.length / scale).toBeCloseTo(60, 3);
      expect(parts[0]!.holds!.area / scale ** 2 / 100).toBeGreaterThan(0.999);
      expect(parts[0]!.holds!.area / scale ** 2 / 136).toBeLessThan(1);
    });
  });

  it('is two necks where a disc of the width fits between its narrow places, one where none does', () => {
    const web = (waist: number) => {
      const upper = [13, 0.3, 15, waist / 2, 17, 0.3, 20, 0.3, 20, 5, 30, 5, 30, -5];
      const lower = [20, -5, 20, -0.3, 17, -0.3, 15, -waist / 2, 13, -0.3, 10, -0.3, 10, -5];
      return [polygon(reversed(ring(...upper, ...lower, 0, -5, 0, 5, 10, 5, 10, 0.3)))];
    };
    underMotion(web(1.5), 0.8, (parts, scale) => {
      expect(parts.map((part) => part.kind)).toEqual(['neck', 'neck']);
      parts.forEach((part) => expectWidth(part, 0.6 * scale));
    });
    expectOne(web(0.75), 0.8, 'neck', 0.6);
  });

  it('counts a thousand times where there are a thousand', () => {
    const holes = Array.from({ length: 1001 }, (_, at) => reversed(rectangle(at * 3, 0, at * 3 + 2.6, 30)));
    const parts = findThinParts([polygon(rectangle(-20, -20, 3020, 50), ...holes)], 0.8);
    expect(parts).toHaveLength(1000);
    parts.forEach((part) => {
      expect(part.kind).toBe('neck');
      expectWidth(part, 0.4);
      expect(part.length).toBeCloseTo(30, 3);
    });
  });
});

describe('tips', () => {
  // From a corner of angle α a disc of radius r stays r / sin(α/2) − r away: more than 2r when sin(α/2) < 1/3.
  const corner = (degrees: number) => {
    const half = (degrees * Math.PI) / 360;
    return [polygon(ring(0, 0, 40 * Math.cos(half), -40 * Math.sin(half), 40 * Math.cos(half), 40 * Math.sin(half)))];
  };

  it.each([10, 20, 30, 38.9])('are corners of %d°: they reach beyond the width', (degrees) => {
    underMotion(corner(degrees), 0.8, (parts, scale) => {
      const tips = parts.filter((part) => part.kind === 'tip');
      expect(parts).toHaveLength(tips.length);
      expect(tips).toHaveLength(1);
      const reach = 0.4 / Math.sin((degrees * Math.PI) / 360) - 0.4;
      expect(tips[0]!.reach / scale).toBeCloseTo(reach, 5);
      // Its width is taken where its sides leave the circle of radius r + reach/2 about the last disc's centre, at
      // s = D·cos(α/2) − sqrt((r + reach/2)² − r²) from the corner, D = r / sin(α/2).
      const half = (degrees * Math.PI) / 360;
      const along = 0.4 / Math.tan(half) - Math.sqrt((0.4 + reach / 2) ** 2 - 0.4 ** 2);
      expectWidth(tips[0], 2 * scale * along * Math.sin(half));
    });
  });

  it.each([38.98, 45, 60])('are not corners of %d°', (degrees) => {
    underMotion(corner(degrees), 0.8, (parts) => expect(parts).toEqual([]));
  });

  it('are the ends of an ellipse where it bends more sharply than the disc', () => {
    // The disc of radius r inside x²/a² + y²/b² = 1 that touches it twice has its centre c from the middle,
    // c² = (1 − r²/b²)(a² − b²): derived from the ellipse's equation.
    const c = Math.sqrt((1 - 2.5 ** 2 / 9) * 16);
    underMotion(
      [polygon(ellipse(5, 3, 4000))],
      5,
      (parts, scale) => {
        expect(parts.map((part) => part.kind)).toEqual(['tip', 'tip']);
        parts.forEach((part) => expect(part.reach / scale).toBeCloseTo(5 - c - 2.5, 3));
      },
      0.05,
    );
  });

  it('are the 200 teeth of a comb, each once', () => {
    underMotion([polygon(comb(200, 3, 0.5, 20))], 0.8, (parts, scale) => {
      expect(parts).toHaveLength(200);
      const depth = Math.sqrt(0.4 ** 2 - 0.25 ** 2);
      parts.forEach((part) => {
        expect(part.kind).toBe('tip');
        expectWidth(part, 0.5 * scale);
        expect(part.reach / scale).toBeCloseTo(Math.hypot(0.25, 20 + depth) - 0.4, 5);
      });
    });
  });
});

describe('ties across a ring-shaped opening', () => {
  // Openings are the ring from 8 to 12 mm less straight ties of the width t: the ends of an opening's arcs are
  // parallel.
  const sector = (from: number, to: number, tie: number) => {
    const [outer, inner] = [Math.asin(tie / 2 / 12), Math.asin(tie / 2 / 8)];
    const on = (radius: number, angle: number) => [radius * Math.cos(angle), radius * Math.sin(angle)];
    const outside = [...arc(0, 0, 12, from + outer, to - outer), ...on(12, to - outer)];
    const inside = [...arc(0, 0, 8, to - inner, from + inner), ...on(8, from + inner)];
    return reversed(ring(...outside, ...inside));
  };
  const sheet = (ties: number, width: number) => {
    const turn = (2 * Math.PI) / ties;
    const sectors = Array.from({ length: ties }, (_, at) => sector(at * turn, (at + 1) * turn, width));
    return [polygon(rectangle(-20, -20, 20, 20), ...sectors)];
  };

  it.each([1, 2, 3, 5])('%d of them are as many necks of their width', (ties) => {
    underMotion(sheet(ties, 0.5), 0.8, (parts, scale) => {
      expect(parts.map((part) => part.kind)).toEqual(Array(ties).fill('neck'));
      parts.forEach((part) => expectWidth(part, 0.5 * scale));
      const held = parts.map((part) => part.holds?.area);
      if (ties > 1) expect(held).toEqual(Array(ties).fill(undefined));
      // The tie may be torn anywhere along its 4 mm.
      else expect(Math.abs(held[0]! / scale ** 2 - Math.PI * 64 - 1)).toBeLessThan(1.1);
    });
  });
});

describe('a spiral slot in a sheet', () => {
  // Half turns about two centres by turns, half a pitch apart: each turn lies one pitch outside the one before.
  const spiral = (turns: number, pitch: number, slot: number) => {
    const [outside, inside]: [number[], number[]] = [[], []];
    for (let half = 0; half < 2 * turns; half += 1) {
      const [x, radius] = [half % 2 === 0 ? 0 : pitch / 2, 5 + (half * pitch) / 2];
      outside.push(...arc(x, 0, radius + slot / 2, half * Math.PI, (half + 1) * Math.PI));
      inside.push(...arc(x, 0, radius - slot / 2, half * Math.PI, (half + 1) * Math.PI));
    }
    return Float64Array.from([...outside, ...reversed(Float64Array.from(inside))]);
  };

  it('is thin as a whole itself', () => {
    expectOne([polygon(spiral(6, 2, 1.3))], 1.4, 'whole', 1.3);
  });

  it('leaves one long neck between its turns', () => {
    const region = [polygon(rectangle(-60, -60, 60, 60), reversed(spiral(6, 2, 1.5)))];
    underMotion(region, 0.6, (parts, scale) => {
      expect(parts.map((part) => part.kind)).toEqual(['neck']);
      expectWidth(parts[0], 0.5 * scale);
    });
  });
});
