/** The same shape written in different ways gives the same geometry, to a nanometre. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Curve, Point } from '../../src/geometry/base/curve-types';
import { drawMm, sample } from './draw';

const TOLERANCE = 1e-6;

function curvesOf(content: string): Curve[] {
  return drawMm(content).shapes.flatMap(({ subpaths }) => subpaths.flatMap(({ curves }) => [...curves]));
}

/** Compares point by point along the outlines, each curve taken at equal steps. */
function expectSame(one: string, other: string): void {
  const [a, b] = [curvesOf(one), curvesOf(other)];
  expect(a.length, `${one}\n${other}`).toBe(b.length);
  a.forEach((curve, index) => {
    const match = b[index];
    if (!match) throw new Error('missing');
    const [points, others] = [sample(curve, 8), sample(match, 8)];
    points.forEach((point, at) => expect(gap(point, others[at])).toBeLessThan(TOLERANCE));
  });
}

function gap(a: Point, b: Point | undefined): number {
  return b ? Math.hypot(a.x - b.x, a.y - b.y) : Infinity;
}

const hundredths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: min * 100, max: max * 100 }).map((value) => value / 100);
const coordinate = hundredths(-50, 150);
const size = hundredths(1, 80);
const path = (d: string): string => `<path d="${d}"/>`;

describe('shapes as paths', () => {
  it('rect and polygon', () => {
    fc.assert(
      fc.property(coordinate, coordinate, size, size, (x, y, w, h) => {
        const rect = `<rect x="${x}" y="${y}" width="${w}" height="${h}"/>`;
        expectSame(rect, path(`M${x} ${y}h${w}v${h}h-${w}z`));
        expectSame(rect, path(`M${x} ${y}H${x + w}V${y + h}H${x}Z`));
        expectSame(rect, `<polygon points="${x},${y} ${x + w},${y} ${x + w},${y + h} ${x},${y + h}"/>`);
      }),
    );
  });

  it('rounded rect', () => {
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        size,
        size,
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (x, y, w, h, part) => {
          const [rx, ry] = [(part * w) / 2, ((1 - part) * h) / 2];
          const arc = (dx: number, dy: number): string => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
          expectSame(
            `<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="${rx}" ry="${ry}"/>`,
            path(
              `M${x + rx} ${y}h${w - 2 * rx}${arc(rx, ry)}v${h - 2 * ry}${arc(-rx, ry)}` +
                `h${2 * rx - w}${arc(-rx, -ry)}v${2 * ry - h}${arc(rx, -ry)}z`,
            ),
          );
        },
      ),
    );
  });

  it('circle and ellipse', () => {
    fc.assert(
      fc.property(coordinate, coordinate, size, size, (x, y, rx, ry) => {
        const arcs = (a: number, b: number): string =>
          path(
            `M${x + a} ${y}A${a} ${b} 0 0 1 ${x} ${y + b} ${a} ${b} 0 0 1 ${x - a} ${y} ` +
              `${a} ${b} 0 0 1 ${x} ${y - b} ${a} ${b} 0 0 1 ${x + a} ${y}z`,
          );
        expectSame(`<ellipse cx="${x}" cy="${y}" rx="${rx}" ry="${ry}"/>`, arcs(rx, ry));
        expectSame(`<circle cx="${x}" cy="${y}" r="${rx}"/>`, arcs(rx, rx));
        expectSame(
          `<circle cx="${x}" cy="${y}" r="${rx}"/>`,
          `<circle r="1" transform="translate(${x} ${y}) scale(${rx})"/>`,
        );
      }),
    );
  });
});

interface Command {
  readonly letter: string;
  /** Pairs of coordinates, absolute; for arcs only the end. */
  readonly points: readonly (readonly [number, number])[];
  readonly arc: string;
}

const pair = fc.tuple(coordinate, coordinate);
const command: fc.Arbitrary<Command> = fc.oneof(
  fc.record({ letter: fc.constant('L'), points: fc.tuple(pair), arc: fc.constant('') }),
  fc.record({ letter: fc.constant('C'), points: fc.tuple(pair, pair, pair), arc: fc.constant('') }),
  fc.record({ letter: fc.constant('Q'), points: fc.tuple(pair, pair), arc: fc.constant('') }),
  fc.record({ letter: fc.constant('S'), points: fc.tuple(pair, pair), arc: fc.constant('') }),
  fc.record({ letter: fc.constant('T'), points: fc.tuple(pair), arc: fc.constant('') }),
  fc.record({
    letter: fc.constant('A'),
    points: fc.tuple(pair),
    arc: fc
      .tuple(size, size, hundredths(-180, 180), fc.integer({ min: 0, max: 1 }), fc.integer({ min: 0, max: 1 }))
      .map((values) => `${values.join(' ')} `),
  }),
);

function absolute(commands: readonly Command[]): string {
  const written = commands.map(
    ({ letter, points, arc }) => letter + arc + points.map(([x, y]) => `${x} ${y}`).join(' '),
  );
  return `M50 50${written.join('')}z`;
}

function relative(commands: readonly Command[]): string {
  let [fromX, fromY] = [50, 50];
  const text = commands.map(({ letter, points, arc }) => {
    const body = points.map(([x, y]) => `${x - fromX} ${y - fromY}`).join(' ');
    [fromX = 0, fromY = 0] = points.at(-1) ?? [];
    return letter.toLowerCase() + arc + body;
  });
  return `m50 50${text.join('')}z`;
}

describe('spellings of a path', () => {
  it('absolute and relative', () => {
    fc.assert(
      fc.property(fc.array(command, { minLength: 1, maxLength: 8 }), (commands) => {
        expectSame(path(absolute(commands)), path(relative(commands)));
      }),
      { numRuns: 200 },
    );
  });

  const step = fc.oneof(
    pair.map(([x, y]) => `translate(${x} ${y})`),
    hundredths(-180, 180).map((angle) => `rotate(${angle})`),
    fc.tuple(hundredths(0.2, 2), hundredths(-2, -0.2)).map(([x, y]) => `scale(${x},${y})`),
    hundredths(-40, 40).map((angle) => `skewX(${angle})`),
    fc.tuple(hundredths(-90, 90), coordinate, coordinate).map((values) => `rotate(${values.join(' ')})`),
  );

  it('nested transforms and one list, attribute and style sheet, drawn and used', () => {
    fc.assert(
      fc.property(
        fc.array(command, { minLength: 1, maxLength: 4 }),
        fc.array(step, { minLength: 1, maxLength: 4 }),
        (commands, steps) => {
          const shape = path(absolute(commands));
          const list = `<g transform="${steps.join(' ')}">${shape}</g>`;
          const nested = steps.map((text) => `<g transform="${text}">`).join('') + shape + '</g>'.repeat(steps.length);
          expectSame(list, nested);
          expectSame(
            list,
            `<defs>${shape.replace('<path', '<path id="p"')}</defs><use href="#p" transform="${steps.join(',')}"/>`,
          );
          expectSame(list, `<style>.t{transform:${steps.join(' ')}}</style><g class="t">${shape}</g>`);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('in another unit of the root', () => {
    fc.assert(
      fc.property(coordinate, coordinate, size, (x, y, w) => {
        expectSame(
          `<rect x="${x}" y="${y}" width="${w}" height="1"/>`,
          `<svg width="100" height="100" overflow="visible" viewBox="0 0 1000 1000">` +
            `<rect x="${10 * x}" y="${10 * y}" width="${10 * w}" height="10"/></svg>`,
        );
      }),
    );
  });
});
