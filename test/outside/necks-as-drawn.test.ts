/**
 * Closed forms of necks, slots and tips, from SVG text to findings: each in several notations, turned, mirrored,
 * shifted, in several units and nestings. The formulas follow from the definitions of circle, ellipse and distance.
 * Widths must be right to 0.01 mm or 0.1 %, whichever is larger.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { check } from '../../src/engine/check/check-file';
import { cases } from '../thorough';
import { AS_IT_IS, circleWays, ellipseWays, type Pose, polygonWays, posed, poses, rectWays, type Ways } from './pose';

/** Poses that each form is tried in. */
const RUNS = cases(15, 5);

const THIN = ['thin-bridge', 'narrow-opening', 'small-opening'] as const;
type Thin = (typeof THIN)[number];

interface Limits {
  readonly bridge?: number;
  readonly opening?: number;
}

/** What is looked for; nothing else about thin places may be found. */
interface Expected extends Limits {
  readonly check: Thin;
  readonly width: number;
  readonly count?: number;
  /** mm */
  readonly side?: number;
  readonly attributes?: string;
}

function thinFindings(svg: string, { bridge = 0.02, opening = 0.02 }: Limits) {
  const { complete } = check(svg, { config: { ...DEFAULT_CONFIG, limits: { bridge, opening } }, budget: Infinity });
  return complete.filter((finding) => THIN.some((id) => id === finding.check));
}

function expectThin(shapes: readonly Ways[], expected: Expected, runs = RUNS): void {
  const run = (pose: Pose) => {
    const found = thinFindings(posed(shapes, pose, expected.side ?? 120, expected.attributes), expected);
    expect(found.map((finding) => finding.check)).toEqual(Array(expected.count ?? 1).fill(expected.check));
    for (const { measure } of found) {
      expect(Math.abs(measure!.value - expected.width)).toBeLessThanOrEqual(Math.max(0.01, 0.001 * expected.width));
    }
  };
  run(AS_IT_IS);
  fc.assert(fc.property(poses, run), { numRuns: runs });
}

function expectNone(shapes: readonly Ways[], limits: Limits): void {
  const run = (pose: Pose) => {
    expect(thinFindings(posed(shapes, pose, 120), limits)).toEqual([]);
  };
  fc.assert(fc.property(poses, run), { numRuns: RUNS });
}

describe('the web between two round holes', () => {
  it.each([
    [8, 5, 0.5],
    [3, 17, 0.05],
    [0.6, 8, 0.74],
  ])('of radius %d and %d is what lies between them: %d', (a, b, gap) => {
    expectThin([circleWays(-a, 0, a), circleWays(b + gap, 0, b)], { bridge: 0.8, check: 'thin-bridge', width: gap });
  });

  it('is none when it is as wide as the limit', () => {
    expectNone([circleWays(-8, 0, 8), circleWays(5.8, 0, 5)], { bridge: 0.8 });
  });
});

describe('two overlapping discs', () => {
  // Chord of intersection of equal circles, 2·sqrt(R² − c²), in whole-number triangles.
  it.each([
    [5, 3, 8],
    [10, 8, 12],
    [13, 12, 10],
    [25, 24, 14],
  ])('of radius %d, centres 2 × %d apart: a slot of %d', (r, c, neck) => {
    const discs = [circleWays(-c, 0, r), circleWays(c, 0, r)];
    expectThin(discs, { opening: neck + 0.5, check: 'narrow-opening', width: neck, side: 200 });
    expectNone([circleWays(-c / 2, 0, r / 2), circleWays(c / 2, 0, r / 2)], { opening: neck / 2 - 0.1 });
  });

  // The lens's chord of circles of the diameters a and b is its neck: where they barely overlap they cross at a small angle, and
  // what their chords cross at is hundredths of a millimetre beside.
  it.each([
    [6, 6, 0.12],
    [6, 12, 0.2],
    [12, 12, 0.12],
    [9, 7.5, 0.3],
    [12, 10, 0.56],
  ])('of %d and %d mm that barely overlap: a slot of %d', (a, b, neck) => {
    const reach = (diameter: number) => Math.sqrt((diameter / 2) ** 2 - (neck / 2) ** 2);
    const discs = [circleWays(-reach(a), 0, a / 2), circleWays(reach(b), 0, b / 2)];
    expectThin(discs, { opening: neck + 0.06, check: 'narrow-opening', width: neck }, 10);
    expectNone(discs, { opening: neck - 0.011 });
  });
});

describe('openings that are narrow as a whole have the width of their largest disc', () => {
  const stroked = (r: number, width: number) =>
    circleWays(0, 0, r)
      .slice(0, 2)
      .map((each) => each.replace('/>', ` fill="none" stroke="black" stroke-width="${width}"/>`));
  const arms = [0, 0, 30, 0, 30, 2, 2, 2, 2, 30, 0, 30];
  const hexagon = Array.from({ length: 6 }, (_, i) => [
    2 * Math.cos((i * Math.PI) / 3),
    2 * Math.sin((i * Math.PI) / 3),
  ]).flat();
  it.each<[string, Ways, number, number]>([
    ['a slot: its shorter side', rectWays(-30, -0.25, 60, 0.5), 0.8, 0.5],
    [
      'an annulus 10.7 / 4.9: 5.8',
      [
        '<path fill-rule="evenodd" d="M10.7 0A10.7 10.7 0 0 1-10.7 0A10.7 10.7 0 0 1 10.7 0Z' +
          'M4.9 0A4.9 4.9 0 0 1-4.9 0 4.9 4.9 0 0 1 4.9 0"/>',
        '<path d="M10.7 0A10.7 10.7 0 0 1-10.7 0A10.7 10.7 0 0 1 10.7 0Z' +
          'M4.9 0A4.9 4.9 0 0 0-4.9 0 4.9 4.9 0 0 0 4.9 0"/>',
        ...stroked(7.8, 5.8),
      ],
      6,
      5.8,
    ],
    ['an ellipse 5 × 3: its shorter axis', ellipseWays(0, 0, 5, 3), 6.2, 6],
    ['an L of arms 2: 2·2·(2 − √2), more than an arm', polygonWays(arms), 3, 4 * (2 - Math.SQRT2)],
    ['a 3-4-5 triangle: 2', polygonWays([0, 0, 4, 0, 4, 3]), 2.5, 2],
    ['a regular hexagon of side 2: 2·√3', polygonWays(hexagon), 4, 2 * Math.sqrt(3)],
    ['a pinhole: its diameter', circleWays(0, 0, 0.15), 0.5, 0.3],
  ])('%s', (_, ways, opening, width) => expectThin([ways], { opening, check: 'small-opening', width }));

  it('and are none when that is the limit', () => {
    expectNone([rectWays(-30, -0.4, 60, 0.8)], { opening: 0.8 });
    expectNone([circleWays(0, 0, 0.4)], { opening: 0.8 });
  });
});

describe('a dumbbell', () => {
  it.each([
    [
      'one outline',
      [
        polygonWays([
          -25, -5, -15, -5, -15, -0.2, 15, -0.2, 15, -5, 25, -5, 25, 5, 15, 5, 15, 0.2, -15, 0.2, -15, 5, -25, 5,
        ]),
      ],
    ],
    ['three shapes', [rectWays(-25, -5, 10, 10), rectWays(15, -5, 10, 10), rectWays(-15.5, -0.2, 31, 0.4)]],
  ])('of %s is one slot', (_, shapes) => expectThin(shapes, { opening: 0.8, check: 'narrow-opening', width: 0.4 }));
});

describe('points of openings', () => {
  // From a corner of angle α a disc of radius r stays r / sin(α/2) − r away: more than 2r when sin(α/2) < 1/3, 38.94°.
  const corner = (degrees: number) => {
    const half = (degrees * Math.PI) / 360;
    return polygonWays([0, 0, 40 * Math.cos(half), -40 * Math.sin(half), 40 * Math.cos(half), 40 * Math.sin(half)]);
  };

  it.each([10, 20, 30, 38.5])('of %d° run out too fine', (degrees) => {
    // The width is taken halfway from the last disc to the corner; see thin-closed-forms.
    const half = (degrees * Math.PI) / 360;
    const reach = 0.4 / Math.sin(half) - 0.4;
    const along = 0.4 / Math.tan(half) - Math.sqrt((0.4 + reach / 2) ** 2 - 0.4 ** 2);
    const expected = { opening: 0.8, check: 'narrow-opening', width: 2 * along * Math.sin(half) } as const;
    expectThin([corner(degrees)], expected);
  });

  it.each([39.5, 45, 60])('of %d° do not', (degrees) => expectNone([corner(degrees)], { opening: 0.8 }));

  it('are the 200 teeth of a comb, each once', () => {
    const teeth = Array.from({ length: 200 }, (_, i) => [
      1.5 * i - 149.5,
      0,
      1.5 * i - 149.5,
      20,
      1.5 * i - 149,
      20,
      1.5 * i - 149,
      0,
    ]);
    const outline = [-151, 0, ...teeth.flat(), 151, 0, 151, -12, -151, -12];
    expectThin(
      [polygonWays(outline)],
      { opening: 0.8, check: 'narrow-opening', width: 0.5, count: 200, side: 400 },
      cases(3, 1),
    );
  });
});

describe('ties across a ring', () => {
  const arcTo = (r: number, sweep: number, angle: number) =>
    `A${r} ${r} 0 0 ${sweep} ${r * Math.cos(angle)} ${r * Math.sin(angle)}`;
  const at = (r: number, angle: number) => `${r * Math.cos(angle)} ${r * Math.sin(angle)}`;
  const sector = (from: number, to: number, tie: number): Ways => {
    const [outer, inner] = [Math.asin(tie / 2 / 12), Math.asin(tie / 2 / 8)];
    const middle = (from + to) / 2;
    return [
      `<path d="M${at(12, from + outer)}${arcTo(12, 1, middle)}${arcTo(12, 1, to - outer)}L${at(8, to - inner)}` +
        `${arcTo(8, 0, middle)}${arcTo(8, 0, from + inner)}Z"/>`,
    ];
  };

  it.each([1, 2, 3, 5])('%d of them are as many bridges', (count) => {
    const turn = (2 * Math.PI) / count;
    const sectors = Array.from({ length: count }, (_, i) => sector(i * turn, (i + 1) * turn, 0.5));
    expectThin(sectors, { bridge: 0.8, check: 'thin-bridge', width: 0.5, count });
  });
});

describe('a spiral slot', () => {
  // Half turns about two centres by turns, half a pitch of 2 mm apart; the slot is the stroke along them.
  const spiral = (turns: number, width: number): Ways => {
    const half = Array.from({ length: 2 * turns }, (_, i) => {
      const [x, r] = [i % 2 === 0 ? 0 : 1, 5 + i];
      return `A${r} ${r} 0 0 1 ${i % 2 === 0 ? x - r : x + r} 0`;
    });
    return [`<path fill="none" stroke="black" stroke-width="${width}" d="M5 0${half.join('')}"/>`];
  };

  it('is narrow as a whole', () => {
    expectThin([spiral(6, 1.3)], { opening: 1.4, check: 'small-opening', width: 1.3 });
  });

  it('leaves one web between its turns', () => {
    expectThin([spiral(6, 1.5)], { bridge: 0.6, check: 'thin-bridge', width: 0.5 });
  });
});

describe('neighbours', () => {
  it('stay apart: a thousand webs are a thousand findings', () => {
    const bars = Array.from({ length: 1001 }, (_, i) => rectWays(i * 3 - 1502.8, -15, 2.6, 30));
    expectThin(bars, { bridge: 0.8, check: 'thin-bridge', width: 0.4, count: 1000, side: 4500 }, 1);
  });

  it('a web of 60 mm is one', () => {
    const windows = [rectWays(-30, -20.25, 60, 20), rectWays(-30, 0.25, 60, 20)];
    expectThin(windows, { bridge: 0.8, check: 'thin-bridge', width: 0.5 });
  });
});
