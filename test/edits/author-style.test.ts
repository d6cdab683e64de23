/** New commands look like the author's own, and what is not touched is copied. */
import { describe, expect, it } from 'vitest';
import { decimalsOf, formatNumber, readStyle } from '../../src/edits/path/path-style';
import { cutPathData } from '../../src/edits/path/subtract-strips';
import { stripAlong } from '../../src/edits/strip/strip';
import { parsePathData } from '../../src/markup/path-data';
import { applyEdits } from '../../src/text/text';

/** Across the left bar of a square frame 0..40 with a counter 10..30, 2 units wide, at half height. */
const LEFT = stripAlong({ x: -2, y: 20 }, { x: 12, y: 20 }, 2, 0);

function cut(data: string): string {
  return applyEdits(data, cutPathData(data, { strips: [LEFT], fillRule: 'evenodd', decimals: 2 }) ?? []);
}

describe('style', () => {
  const cases: [what: string, before: string, after: string][] = [
    ['terse', 'M0 0H40V40H0zM10 10V30H30V10z', 'M0 0H40V40H0V21H10V30H30V10H10V19H0z'],
    [
      'commas and blanks',
      'M 0,0 L 40,0 L 40,40 L 0,40 Z M 10,10 L 10,30 L 30,30 L 30,10 Z',
      'M 0,0 L 40,0 L ' + '40,40 L 0,40 L 0,21 L 10,21 L 10,30 L 30,30 L 30,10 L 10,10 L 10,19 L 0,19 Z',
    ],
    [
      'implied commands',
      'M0 0 40 0 40 40 0 40ZM10 10 10 30 30 30 30 10Z',
      'M0 0 40 0 40 40 0 40 0 21 10 21 10 ' + '30 30 30 30 10 10 10 10 19 0 19Z',
    ],
    [
      'relative, implied',
      'm0,0 40,0 0,40 -40,0 z m10,10 0,20 20,0 0,-20 z',
      'm0,0 40,0 0,40 -40,0 0,-19 10,0 ' + '0,9 20,0 0,-20 -20,0 0,9 -10,0 z',
    ],
    [
      'one command to a line',
      'M0 0\n  H40\n  V40\n  H0\n  Z\n  M10 10\n  V30\n  H30\n  V10\n  Z\n',
      'M0 0\n  ' + 'H40\n  V40\n  H0\n  V21\n  H10\n  V30\n  H30\n  V10\n  H10\n  V19\n  H0\n  Z\n',
    ],
    [
      'no leading zeros, tight signs',
      'm0 0h40v40h-40zm10 10v20h20v-20zm-.5-.5h.1v.1z',
      'm0 0h40v40h-40v-19h10v9' + 'h20v-20h-20v9h-10zm9.5 9.5h.1v.1z',
    ],
    [
      'finer than needed',
      'M0.00001 0H40V40H0.00001ZM10.00001 10V30H30V10Z',
      'M0.00001 ' + '0H40V40H0.00001V21H10.00001V30H30V10H10.00001V19H0.00001Z',
    ],
  ];
  it.each(cases)('%s', (_, before, after) => expect(cut(before)).toBe(after));

  it('commands that hang on the one before are written out', () => {
    const after = cut('M0 0H40V40H0C0 30 0 10 0 0ZM10 10C10 15 10 25 10 30S30 30 30 30 30 10 30 10 15 10 10 10Z');
    expect(after).toBe(
      'M0 0H40V40H0C0 35.22 0 28.16 0 21H10C10 24.41 10 27.72 10 30 10 35 30 30 30 30S30 10 30 ' +
        '10 15 10 10 10C10 12.28 10 15.59 10 19H0C0 11.84 0 4.78 0 0Z',
    );
  });

  it('what does not touch the strip stays where it is', () => {
    const before = 'M-20-20h5v5h-5z M0 0H40V40H0zM10 10V30H30V10z m50,50 5,5 -5,5z';
    const after = cut(before);
    expect(after.startsWith('M-20-20h5v5h-5z M0 0H40V40H0')).toBe(true);
    expect(after).toContain('5,5 -5,5z');
  });

  it('edits leave the longest run of commands in place', () => {
    const before = 'M10 10V30H30V10z M0 0H40V40H39V41H38V40H37V41H36V40H35V41H34V40H0z';
    const edits = cutPathData(before, { strips: [LEFT], fillRule: 'evenodd', decimals: 2 }) ?? [];
    const long = before.indexOf('H40V40H39');
    expect(edits.every(({ span }) => span.to <= long || span.from >= before.length - 2)).toBe(true);
  });
});

describe('lines', () => {
  const cases: [what: string, before: string, after: string][] = [
    [
      'a subpath that is joined to another keeps its line',
      'M0 0 H40 V40 H0 Z\n   M10 10 V30 H30 V10 Z\n   M50 50 h5 v5 z',
      'M0 0 H40 V40 H0 V21 H10\n   V30 H30 V10 H10 V19 H0 Z\n   M50 50 h5 v5 z',
    ],
    [
      'lines within a subpath',
      'M0 0 H40\n V40 H0 Z M10 10\n V30 H30\n V10 Z',
      'M0 0 H40\n V40 H0 V21 H10\n V30 H30\n V10 H10 V19 H0 Z',
    ],
    [
      'a line for each command, one of which is cut in two',
      'M0 0 H40 V40 H-0\n  L0 10\n  L0 0 Z M10 10 V30 H30 V10 Z',
      'M0 0 H40 V40 H-0\n  V21 H10 V30 H30 V10 H10 V19 H0 V10\n  L0 0 Z',
    ],
    [
      'numbers that begin lines',
      'M0 0 40 0\n   40 40\n   0 40Z M10 10\n   10 30\n   30 30 30 10Z',
      'M0 0 40 0\n   40 40\n   0 40\n   0 21\n   10 21\n   10 30\n   30 30 30 10\n   10 10\n   10 19\n   0 19Z',
    ],
  ];
  it.each(cases)('%s', (_, before, after) => expect(cut(before)).toBe(after));

  it('new subpaths begin lines as the others do', () => {
    const right = stripAlong({ x: 28, y: 20 }, { x: 42, y: 20 }, 2, 0);
    const before = 'M0 0 H40 V40 H0 Z\n    M10 10 V30 H30 V10 Z';
    const edits = cutPathData(before, { strips: [LEFT, right], fillRule: 'evenodd', decimals: 2 }) ?? [];
    expect(applyEdits(before, edits)).toBe(
      'M0 0 H40 V19 H30 V10 H10 V19 H0 Z\n    M40 21 V40 H0 V21 H10 V30 H30 V21 Z',
    );
  });
});

describe('edits', () => {
  const notches = [
    stripAlong({ x: -2, y: 20 }, { x: 2, y: 20 }, 2, 0),
    stripAlong({ x: 38, y: 20 }, { x: 42, y: 20 }, 2, 0),
  ];
  it('are of the commands that change, one by one', () => {
    const before = 'M0 0 H40 V40 Q20 30 0 40 Z';
    const edits = cutPathData(before, { strips: notches, fillRule: 'evenodd', decimals: 2 }) ?? [];
    expect(edits).toEqual([
      { span: { from: 10, to: 12 }, text: '19' },
      { span: { from: 13, to: 13 }, text: 'H38 V21 H40 V40 ' },
      { span: { from: 25, to: 25 }, text: 'V21 H2 V19 H0 ' },
    ]);
  });
  const editsOf = (data: string) => cutPathData(data, { strips: [LEFT], fillRule: 'evenodd', decimals: 2 }) ?? [];
  it('are no longer than what has changed', () => {
    const before = 'M0 0H40V40H0z\nM10 10V30H30V10z';
    expect(editsOf(before)).toEqual([
      { span: { from: 12, to: 20 }, text: 'V21H10\n' },
      { span: { from: 29, to: 29 }, text: 'H10V19H0' },
    ]);
  });
});

describe('numbers', () => {
  it('small ones and the flags of arcs stand as close as the author puts them', () => {
    const flat = (data: string) => readStyle(data, parsePathData(data).commands);
    expect(flat('M1 1a.8.8 0 016 0')).toMatchObject({ tightPoints: true, tightFlags: true, leadingZero: false });
    expect(flat('M1 1a.8 .8 0 0 1 6 0')).toMatchObject({ tightPoints: false, tightFlags: false, leadingZero: false });
    const usual = { leadingZero: false, tightSigns: true, tightPoints: true, tightFlags: false };
    expect(readStyle('M1 1H2', parsePathData('M1 1H2').commands, usual)).toMatchObject(usual);
    const ring = 'M0 20a.9.9 0 0140 0 .9.9 0 01-40 0zM10 20a.7.7 0 0020 0 .7.7 0 00-20 0z';
    expect(cut(ring)).toMatch(/^M\.025 19a20 20 0 0139\.975 1 20 20 0 01-39\.975 1h10\.0251a10 10 0 00/);
  });
  it.each([
    [1, 3, '1'],
    [0.5, 3, '0.5'],
    [-0.00001, 3, '0'],
    [12.34567, 3, '12.346'],
    [100, 0, '100'],
    [-2.5, 1, '-2.5'],
  ])('%d with %d digits', (value, digits, text) => expect(formatNumber(value, digits)).toBe(text));
  it('without leading zeros', () => {
    expect(formatNumber(-0.25, 2, false)).toBe('-.25');
    expect(formatNumber(0, 2, false)).toBe('0');
  });
  it.each([
    ['1', 0],
    ['1.', 0],
    ['.25', 2],
    ['-1.50', 2],
    ['1e-3', 3],
    ['1.5e-3', 4],
    ['15e3', 0],
  ])('%s has %d digits after the point', (text, digits) => expect(decimalsOf(text)).toBe(digits));
  it('the style of path data', () => {
    const data = 'M 1.25,2 L-3,.5 4,5';
    expect(readStyle(data, parsePathData(data).commands)).toEqual({
      afterLetter: ' ',
      beforeLetter: ' ',
      beforeMove: ' ',
      withinPair: ',',
      betweenPairs: ' ',
      betweenSets: ' ',
      leadingZero: false,
      tightSigns: false,
      tightPoints: false,
      tightFlags: false,
      shortLines: false,
      impliesRepeats: true,
      decimals: 2,
    });
  });
});
