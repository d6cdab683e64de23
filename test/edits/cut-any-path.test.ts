/** Properties of cutting that hold for any path data and any strip. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutPathData } from '../../src/edits/path/subtract-strips';
import { type Strip, stripAlong } from '../../src/edits/strip/strip';
import { difference, perimeterOf } from '../../src/geometry/boolean/index';
import { parsePathData } from '../../src/markup/path-data';
import { applyEdits } from '../../src/text/text';
import { cases } from '../thorough';
import { areaBetween, type FillRule, pathRegion, stripRegion, totalArea } from './path-area';

const coordinate = fc.integer({ min: -400, max: 400 }).map((tenths) => (tenths / 10).toString());
const radius = fc.integer({ min: 10, max: 300 }).map((tenths) => (tenths / 10).toString());
const flag = fc.constantFrom('0', '1');
const pair = fc.tuple(coordinate, coordinate).map(([x, y]) => `${x},${y}`);

const command = fc.oneof(
  fc.tuple(fc.constantFrom('L', 'l', 'T', 't'), pair).map(([letter, end]) => letter + end),
  fc.tuple(fc.constantFrom('H', 'h', 'V', 'v'), coordinate).map(([letter, end]) => letter + end),
  fc.tuple(fc.constantFrom('S', 's', 'Q', 'q'), pair, pair).map(([letter, ...points]) => letter + points.join(' ')),
  fc.tuple(fc.constantFrom('C', 'c'), pair, pair, pair).map(([letter, ...points]) => letter + points.join(' ')),
  fc
    .tuple(fc.constantFrom('A', 'a'), radius, radius, coordinate, flag, flag, pair)
    .map(([letter, rx, ry, turn, large, sweep, end]) => `${letter}${rx} ${ry} ${turn} ${large} ${sweep} ${end}`),
);

const commandList = fc.array(command, { minLength: 2, maxLength: 7 });
const subpath = fc
  .tuple(fc.constantFrom('M', 'm'), pair, commandList, fc.constantFrom('Z', 'z', ''))
  .map(([letter, start, commands, close]) => letter + start + commands.join(' ') + close);

const pathData = fc.array(subpath, { minLength: 1, maxLength: 3 }).map((subpaths) => subpaths.join('\n'));
const number = fc.double({ min: -40, max: 40, noNaN: true });
const strip = fc
  .tuple(number, number, number, number, fc.double({ min: 1, max: 8, noNaN: true }))
  .filter(([x0, y0, x1, y1]) => Math.hypot(x1 - x0, y1 - y0) > 4)
  .map(([x0, y0, x1, y1, width]) => stripAlong({ x: x0, y: y0 }, { x: x1, y: y1 }, width, 0));
const fillRule = fc.constantFrom<FillRule>('nonzero', 'evenodd');

function cut(data: string, strips: readonly Strip[], rule: FillRule): string | undefined {
  const edits = cutPathData(data, { strips, fillRule: rule, decimals: 4 });
  return edits && applyEdits(data, edits);
}

describe('cutting any path', () => {
  it('takes the strip from the filled area and nothing else', () => {
    fc.assert(
      fc.property(pathData, strip, fillRule, (data, one, rule) => {
        const after = cut(data, [one], rule);
        fc.pre(after !== undefined);
        const before = pathRegion(data, rule, 1e-3);
        const wanted = difference(before, stripRegion(one));
        const around = before.reduce((sum, polygon) => sum + perimeterOf(polygon), 0) + 200;
        expect(areaBetween(pathRegion(after, rule, 1e-3), wanted)).toBeLessThan(4e-3 * around);
      }),
      { numRuns: cases(200, 60) },
    );
  });

  it('is seldom refused', () => {
    let refused = 0;
    fc.assert(
      fc.property(pathData, strip, fillRule, (data, one, rule) => {
        if (cut(data, [one], rule) === undefined) refused += 1;
      }),
      { numRuns: cases(400, 120) },
    );
    expect(refused).toBeLessThan(cases(8, 3));
  });

  it('leaves the data as they are where the strip meets nothing', () => {
    const away = stripAlong({ x: 5000, y: 5000 }, { x: 5010, y: 5000 }, 2, 0);
    fc.assert(
      fc.property(pathData, fillRule, (data, rule) => {
        expect(cut(data, [away], rule)).toBe(data);
      }),
      { numRuns: cases(100, 30) },
    );
  });

  it('takes nothing the second time', () => {
    fc.assert(
      fc.property(pathData, strip, (data, one) => {
        const once = cut(data, [one], 'nonzero');
        fc.pre(once !== undefined);
        const twice = cut(once, [one], 'nonzero');
        fc.pre(twice !== undefined);
        const first = pathRegion(once, 'nonzero', 1e-3);
        const allowance = 0.02 + 2e-3 * (totalArea(first) + totalArea(stripRegion(one)));
        expect(areaBetween(first, pathRegion(twice, 'nonzero', 1e-3))).toBeLessThan(allowance);
      }),
      { numRuns: cases(100, 30) },
    );
  });

  it('takes a strip whose sides lie on lines of the path', () => {
    const level = stripAlong({ x: -5, y: 20 }, { x: 45, y: 20 }, 10, 0);
    const shapes = [
      'M0 0H40V40H0z',
      'M0 15H40V40H0z',
      'M0 15H40V25H0z',
      'M0 0H20V15H40V25H20V40H0z',
      'M-5 0H40V40H-5z',
    ];
    for (const data of shapes) {
      const wanted = difference(pathRegion(data, 'nonzero'), stripRegion(level));
      expect(areaBetween(pathRegion(cut(data, [level], 'nonzero') ?? data, 'nonzero'), wanted)).toBeLessThan(1);
    }
  });

  it('gives path data that can be read', () => {
    fc.assert(
      fc.property(pathData, strip, fillRule, (data, one, rule) => {
        const after = cut(data, [one], rule);
        fc.pre(after !== undefined);
        expect(parsePathData(after).error).toBeUndefined();
      }),
      { numRuns: cases(200, 60) },
    );
  });

  it('copies commands that lie outside the strip byte for byte', () => {
    const aside = fc.array(command, { minLength: 2, maxLength: 6 }).map((commands) => `M900,900${commands.join(' ')}Z`);
    fc.assert(
      fc.property(pathData, aside, strip, fillRule, (data, far, one, rule) => {
        const moved = far.replace(/[LHVCSQTA]/g, (letter) => letter.toLowerCase());
        expect(cut(`${data} ${moved}`, [one], rule) ?? moved).toContain(moved);
      }),
      { numRuns: cases(200, 60) },
    );
  });
});
