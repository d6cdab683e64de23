import { describe, expect, it } from 'vitest';
import { cutPathData } from '../../../src/edits/path/subtract-strips';
import { type Strip, stripAlong } from '../../../src/edits/strip/strip';
import { difference } from '../../../src/geometry/boolean/index';
import { applyEdits } from '../../../src/text/text';
import { areaBetween, type FillRule, pathRegion, stripRegion, totalArea } from '../path-area';

interface Case {
  readonly what: string;
  readonly data: string;
  readonly fillRule?: FillRule;
  readonly strips: readonly Strip[];
  readonly expected?: string;
}

const bar = (x0: number, y0: number, x1: number, y1: number, width = 2): Strip =>
  stripAlong({ x: x0, y: y0 }, { x: x1, y: y1 }, width, 0);

/** From the left of a square 0..40 into its counter 10..30, at half height. */
const LEFT = bar(-2, 20, 12, 20);
const RIGHT = bar(28, 20, 42, 20);
const TOP = bar(20, -2, 20, 12);

const cases: Case[] = [
  { what: 'opposite windings, absolute', data: 'M0 0H40V40H0ZM10 10V30H30V10Z', strips: [LEFT] },
  { what: 'two strips', data: 'M0 0H40V40H0ZM10 10V30H30V10Z', strips: [LEFT, RIGHT] },
  { what: 'three strips', data: 'M0 0H40V40H0ZM10 10V30H30V10Z', strips: [LEFT, RIGHT, TOP] },
  { what: 'same windings, evenodd', fillRule: 'evenodd', data: 'M0 0H40V40H0ZM10 10H30V30H10Z', strips: [LEFT] },
  {
    what: 'same windings, evenodd, two',
    fillRule: 'evenodd',
    data: 'M0 0H40V40H0ZM10 ' + '10H30V30H10Z',
    strips: [LEFT, RIGHT],
  },
  { what: 'relative', data: 'm0,0 40,0 0,40 -40,0zm10,10 0,20 20,0 0,-20z', strips: [LEFT] },
  { what: 'relative, two', data: 'm0,0 40,0 0,40 -40,0zm10,10 0,20 20,0 0,-20z', strips: [TOP, RIGHT] },
  {
    what: 'circles as arcs',
    data: 'M0 20a20 20 0 0 1 40 0a20 20 0 0 1-40 0zm10 0a10 10 0 0 0 20 0a10 10 0 0 0 ' + '-20 0z',
    strips: [LEFT],
  },
  {
    what: 'circles as arcs, two',
    data: 'M0 20a20 20 0 0 1 40 0a20 20 0 0 1-40 0zm10 0a10 10 0 0 0 20 0a10 10 0 ' + '0 0 -20 0z',
    strips: [TOP, bar(20, 28, 20, 42)],
  },
  {
    what: 'smooth cubics',
    data:
      'M20 0C31 0 40 9 40 20S31 40 20 40 0 31 0 20 9 0 20 0zm0 10c-5.5 0-10 4.5-10 ' +
      '10s4.5 10 10 10 10-4.5 10-10-4.5-10-10-10z',
    strips: [RIGHT],
  },
  {
    what: 'smooth quadratics',
    data: 'M20 0Q40 0 40 20T20 40 0 20 20 0zM20 10Q10 10 10 20T20 30 30 20 ' + '20 10z',
    strips: [bar(4, 4, 16, 16)],
  },
  {
    what: 'overlapping subpaths',
    data: 'M0 0H25V40H0ZM15 0H40V40H15Z',
    strips: [bar(-2, 20, 42, 20)],
    expected: 'M0 0H25V19H0ZM25 21V40H0V21ZM15 0H40V19H15ZM40 21V40H15V21Z',
  },
  { what: 'start in the strip', data: 'M0 20V0H40V40H0ZM10 20V30H30V10H10Z', strips: [LEFT] },
  { what: 'start in the strip, relative', data: 'm0 20v-20h40v40h-40zm10 0v10h20v-20h-20zm40 0h5v5z', strips: [LEFT] },
  { what: 'open subpaths', data: 'M0 0H40V40H0M10 10V30H30V10', strips: [LEFT, TOP] },
  { what: 'strip wholly inside', data: 'M0 0H40V40H0Z', strips: [bar(15, 20, 25, 20)] },
  { what: 'turned strip', data: 'M0 0H40V40H0ZM10 10V30H30V10Z', strips: [bar(-3, -3, 14, 13)] },
];

describe('the area after cutting', () => {
  it.each(cases)('$what', ({ data, fillRule = 'nonzero', strips, expected }) => {
    const edits = cutPathData(data, { strips, fillRule, decimals: 3 });
    expect(edits).toBeDefined();
    const after = applyEdits(data, edits ?? []);
    const wanted = strips.reduce((region, strip) => difference(region, stripRegion(strip)), pathRegion(data, fillRule));
    expect(totalArea(wanted)).toBeLessThan(totalArea(pathRegion(data, fillRule)));
    expect(areaBetween(pathRegion(after, fillRule), wanted)).toBeLessThan(0.05);
    if (expected !== undefined) expect(after).toBe(expected);
  });
});
