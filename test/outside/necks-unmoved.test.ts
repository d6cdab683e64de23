/**
 * Findings about thin places do not move when the drawing is turned by quarters, mirrored or shifted, or when the same
 * curves are written with other commands; and nothing degenerate makes a neck where there is none.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/engine/check/check-file';
import { seededRandom } from '../benchmark/seeded';
import { cases } from '../thorough';

type Point = readonly [number, number];
type Cubic = readonly [Point, Point, Point, Point];

const SIDE = 60;
const THIN = ['thin-bridge', 'narrow-opening', 'small-opening'];

interface Place {
  readonly check: string;
  readonly value: number;
  readonly at: Point;
  /** mm over what it takes to count: of tips their reach, which is the limit; else whatever. */
  readonly excess: number;
}

function thinPlaces(body: string, frame = `0 0 ${SIDE} ${SIDE}`): Place[] {
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}mm" height="${SIDE}mm" viewBox="${frame}" ` +
    `data-tombolo-reading="openings">${body}</svg>`;
  return check(svg)
    .complete.filter(({ check: id }) => THIN.includes(id))
    .map(({ check: id, measure, at, subject }) => {
      const tip = subject?.kind === 'thin' && subject.part.kind === 'tip';
      const excess = tip ? subject.part.reach - measure!.limit : Infinity;
      return { check: id, value: measure!.value, at: [at!.x, at!.y] as const, excess };
    });
}

/** Wavering closed chains of eight cubics on a grid of 6 mm: gaps from nothing to 3 mm. */
function artwork(seed: number): Cubic[][] {
  const random = seededRandom(seed);
  return Array.from({ length: 36 }, (_, i) => {
    const [x, y] = [(i % 6) * 6 + 15 + random(), Math.floor(i / 6) * 6 + 15 + random()];
    const radius = 1.8 + 1.2 * random();
    const knots = Array.from({ length: 8 }, (__, k) => {
      const angle = (k * Math.PI) / 4 + 0.2 * random();
      const r = radius * (0.75 + 0.5 * random());
      return {
        x: x + r * Math.cos(angle),
        y: y + r * Math.sin(angle),
        dx: -0.27 * r * Math.sin(angle),
        dy: 0.27 * r * Math.cos(angle),
      };
    });
    return knots.map((a, k): Cubic => {
      const b = knots[(k + 1) % 8]!;
      return [
        [a.x, a.y],
        [a.x + a.dx, a.y + a.dy],
        [b.x - b.dx, b.y - b.dy],
        [b.x, b.y],
      ];
    });
  });
}

const pair = ([x, y]: Point) => `${x} ${y}`;
const absolute = (chain: readonly Cubic[]) =>
  `M${pair(chain[0]![0])}${chain.map(([, a, b, end]) => `C${pair(a)} ${pair(b)} ${pair(end)}`).join('')}Z`;
const drawn = (chains: readonly (readonly Cubic[])[], write = absolute) =>
  chains.map((chain) => `<path d="${write(chain)}"/>`).join('\n');

function relative(chain: readonly Cubic[]): string {
  const less = (point: Point, from: Point): Point => [point[0] - from[0], point[1] - from[1]];
  const steps = chain.map(([start, a, b, end]) => `c${[a, b, end].map((point) => pair(less(point, start))).join(' ')}`);
  return `m${pair(chain[0]![0])}${steps.join('')}z`;
}

/** Knots are smooth, so every second control point follows from the one before. */
function smooth(chain: readonly Cubic[]): string {
  const steps = chain.map(([, a, b, end], i) =>
    i === 0 ? `C${pair(a)} ${pair(b)} ${pair(end)}` : `S${pair(b)} ${pair(end)}`,
  );
  return `M${pair(chain[0]![0])}${steps.join('')}Z`;
}

const between = (a: Point, b: Point, t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];

/** De Casteljau. */
function split([p0, p1, p2, p3]: Cubic, t: number): [Cubic, Cubic] {
  const [a, b, c] = [between(p0, p1, t), between(p1, p2, t), between(p2, p3, t)];
  const [d, e] = [between(a, b, t), between(b, c, t)];
  const middle = between(d, e, t);
  return [
    [p0, a, d, middle],
    [middle, e, c, p3],
  ];
}

const reversed = (chain: readonly Cubic[]) => chain.map(([a, b, c, d]): Cubic => [d, c, b, a]).toReversed();
const later = (chain: readonly Cubic[]) => [...chain.slice(3), ...chain.slice(0, 3)];

/**
 * Each of the places has its fellow among the others, and none is left over. Those at the limit's edge may come and go.
 */
function expectSame(places: readonly Place[], others: readonly Place[], slack: { value: number; at: number }): void {
  const sure = ({ value, excess }: Place) => value < 0.785 && excess > 0.05;
  const fellow = (place: Place, among: readonly Place[]) =>
    among.some(
      (other) =>
        other.check === place.check &&
        Math.abs(other.value - place.value) <= slack.value &&
        Math.hypot(other.at[0] - place.at[0], other.at[1] - place.at[1]) <= slack.at,
    );
  expect(places.filter(sure).filter((place) => !fellow(place, others))).toEqual([]);
  expect(others.filter(sure).filter((place) => !fellow(place, places))).toEqual([]);
}

describe('findings stay where they are', () => {
  const seeds = fc.integer({ min: 1, max: 1e6 });
  const TURNS: [string, string, (at: Point) => Point][] = [
    ['turned by 90°', `translate(${SIDE} 0) rotate(90)`, ([x, y]) => [SIDE - y, x]],
    ['turned by 180°', `rotate(180 ${SIDE / 2} ${SIDE / 2})`, ([x, y]) => [SIDE - x, SIDE - y]],
    ['turned by 270°', `translate(0 ${SIDE}) rotate(-90)`, ([x, y]) => [y, SIDE - x]],
    ['mirrored', `translate(${SIDE} 0) scale(-1 1)`, ([x, y]) => [SIDE - x, y]],
    ['shifted', 'translate(3.25 -2.5)', ([x, y]) => [x + 3.25, y - 2.5]],
  ];

  it.each(TURNS)('%s', (_, transform, move) => {
    let places = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const body = drawn(artwork(seed));
        const before = thinPlaces(body);
        places += before.length;
        const expected = before.map((place) => ({ ...place, at: move(place.at) }));
        expectSame(thinPlaces(`<g transform="${transform}">${body}</g>`), expected, { value: 0.001, at: 0.01 });
      }),
      { numRuns: cases(8, 3) },
    );
    expect(places).toBeGreaterThan(cases(50, 20));
  });

  it.each<[string, (chain: readonly Cubic[]) => string]>([
    ['relative commands', relative],
    ['smooth commands', smooth],
    ['begun at another knot', (chain) => absolute(later(chain))],
    ['drawn the other way', (chain) => absolute(reversed(chain))],
  ])('when they are written as %s', (_, write) => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const chains = artwork(seed);
        // The narrowest place of a long slot may lie elsewhere along it when the curve is flattened at other places.
        expectSame(thinPlaces(drawn(chains)), thinPlaces(drawn(chains, write)), { value: 0.005, at: 1 });
      }),
      { numRuns: cases(8, 3) },
    );
  });
});

describe('curves cut in two', () => {
  it('leave webs as wide as before', () => {
    // Flattened at other places, shapes that barely overlap do so by another width: of them nothing is said.
    const webs = (chains: readonly (readonly Cubic[])[]) =>
      thinPlaces(drawn(chains)).filter(({ check: id, value }) => id === 'thin-bridge' && value > 0.1);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const chains = artwork(seed);
        const cut = chains.map((chain) => chain.flatMap((curve) => split(curve, 0.4)));
        expect(Math.abs(webs(cut).length - webs(chains).length)).toBeLessThanOrEqual(1);
      }),
      { numRuns: cases(6, 3), seed: 4 },
    );
  });
});

describe('nothing degenerate makes a thin place', () => {
  const square = (x: number, y: number, size: number) => `M${x} ${y}h${size}v${size}h${-size}z`;
  const path = (d: string, attributes = '') => `<path ${attributes} d="${d}"/>`;

  it.each([
    ['a shape that is drawn twice', path(square(10, 10, 20)) + path(square(10, 10, 20))],
    ['shapes with an edge in common', path(square(10, 10, 20)) + path(square(30, 10, 20))],
    ['shapes that overlap by a nanometre', path(square(10, 10, 20)) + path(square(30 - 1e-6, 10, 20))],
    ['a spike without area, outwards', path('M10 10H30V20L45 20L30 20V30H10Z')],
    ['a spike without area, inwards', path('M10 10H30V20L15 20L30 20V30H10Z')],
    ['a spike a nanometre wide', path('M10 10H30V20L15 20L30 20.000000001V30H10Z')],
    ['steps of a nanometre', path(`M10 10${'h.000000001v.000000001'.repeat(200)}H30V30H10Z`)],
    ['points that repeat', path('M10 10L10 10L30 10L30 10C30 10 30 10 30 10L30 30L30 30L10 30Z')],
    ['a rectangle without width', `${path(square(10, 10, 20))}<rect x="35" y="10" width="0" height="20"/>`],
    ['a circle without radius', `${path(square(10, 10, 20))}<circle cx="40" cy="20" r="0"/>`],
    ['an arc without radius', path('M10 10A0 0 0 0 1 30 10L30 30L10 30Z')],
    ['lines that go there and back', path('M10 10H30V30H10Z M20 5V40V5Z')],
    ['a hole that fills its opening', path(`${square(10, 10, 20)}${square(10, 10, 20)}`, 'fill-rule="evenodd"')],
    [
      'a shape scaled to a line',
      `${path(square(10, 10, 20))}<g transform="scale(1 0)">${path(square(10, 10, 20))}</g>`,
    ],
    ['a shape far too small to see', path(square(10, 10, 20)) + path(square(40, 40, 1e-7))],
    ['a shape far outside the sheet', path(square(10, 10, 20)) + path(square(1e7, 1e7, 20))],
  ])('%s', (_, body) => {
    expect(thinPlaces(body)).toEqual([]);
  });

  it.each([0.001, 1, 10_000])('on a sheet of 10 m, in user units of %d mm', (unit) => {
    const sheet = (gap: number) => {
      const size = 10_000 / unit;
      const [left, right] = [
        square(4000 / unit, 10 / unit, 1000 / unit),
        square((5000 + gap) / unit, 10 / unit, 1000 / unit),
      ];
      const svg =
        `<svg xmlns="http://www.w3.org/2000/svg" width="10000mm" height="10000mm" viewBox="0 0 ${size} ${size}" ` +
        `data-tombolo-reading="openings">${path(left)}${path(right)}</svg>`;
      return check(svg)
        .complete.filter(({ check: id }) => THIN.includes(id))
        .map(({ measure }) => measure!.value);
    };
    expect(sheet(0.9)).toEqual([]);
    expect(sheet(0.5)).toEqual([expect.closeTo(0.5, 3)]);
  });
});
