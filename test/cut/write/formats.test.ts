import { describe, expect, it, it as test } from 'vitest';
import { bowsOf, centreOf, middleOf } from '../../../src/cut/write/arcs';
import { type CutSheet, cutFile, cutFileName, isCutFile } from '../../../src/engine/index';
import type { Arc, Cubic } from '../../../src/geometry/base/curve-types';

const arc = (radius: number, from: number, sweep: number): Arc => {
  const at = (angle: number) => ({ x: 50 + radius * Math.cos(angle), y: 40 + radius * Math.sin(angle) });
  return {
    kind: 'arc',
    start: at(from),
    end: at(from + sweep),
    centre: { x: 50, y: 40 },
    axisU: { x: radius, y: 0 },
    axisV: { x: 0, y: radius },
    from,
    sweep,
  };
};

const sheetOf = (changes: Partial<CutSheet> = {}): CutSheet => ({
  number: 2,
  count: 5,
  name: 'Reeds',
  paint: '#3b4a54',
  width: 148,
  height: 148,
  origin: { x: 0, y: 0 },
  contours: [
    { kind: 'opening', closed: true, length: 20 * Math.PI, curves: [arc(10, 0, Math.PI), arc(10, Math.PI, Math.PI)] },
  ],
  pen: [],
  travel: 0,
  notes: [],
  ...changes,
});

describe('arcs', () => {
  // DXF reference, LWPOLYLINE: code 42 is the tangent of a quarter of the included angle.
  it.each([
    [Math.PI / 2, 0.41421356],
    [-Math.PI / 2, -0.41421356],
    [Math.PI, 1],
  ])('the bulge of an arc of %d rad is %d', (sweep, bulge) => {
    const [bow, ...others] = bowsOf(arc(20, 0.3, sweep), 0.01);
    expect(others).toEqual([]);
    expect(bow!.bulge).toBeCloseTo(bulge, 8);
    const { x, y } = middleOf(bow!);
    expect([x, y].map((v) => v.toFixed(9))).toEqual(
      [50 + 20 * Math.cos(0.3 + sweep / 2), 40 + 20 * Math.sin(0.3 + sweep / 2)].map((v) => v.toFixed(9)),
    );
  });

  it('a whole turn is two halves, an arc of a third knows its centre', () => {
    expect(bowsOf(arc(20, 0, 2 * Math.PI), 0.01).map(({ bulge }) => bulge.toFixed(9))).toEqual([
      '1.000000000',
      '1.000000000',
    ]);
    const centre = centreOf(bowsOf(arc(20, 1, 2), 0.01)[0]!);
    expect(centre.x).toBeCloseTo(50, 9);
    expect(centre.y).toBeCloseTo(40, 9);
  });

  it.each([0.05, 0.01, 0.001])('cubics become arcs within %d mm', (tolerance) => {
    const cubics: Cubic[] = [
      {
        kind: 'cubic',
        start: { x: 0, y: 0 },
        control1: { x: 30, y: 0 },
        control2: { x: -10, y: 20 },
        end: { x: 20, y: 20 },
      },
      {
        kind: 'cubic',
        start: { x: 0, y: 0 },
        control1: { x: 40, y: 30 },
        control2: { x: -20, y: 30 },
        end: { x: 20, y: 0 },
      },
      // A cusp, and a loop that closes on itself.
      {
        kind: 'cubic',
        start: { x: 0, y: 0 },
        control1: { x: 20, y: 20 },
        control2: { x: 0, y: 20 },
        end: { x: 20, y: 0 },
      },
      {
        kind: 'cubic',
        start: { x: 0, y: 0 },
        control1: { x: 30, y: 30 },
        control2: { x: -30, y: 30 },
        end: { x: 0, y: 0 },
      },
    ];
    for (const cubic of cubics) {
      const bows = bowsOf(cubic, tolerance);
      expect(bows[0]!.start).toEqual(cubic.start);
      expect(bows.at(-1)!.end).toEqual(cubic.end);
      for (let i = 0; i <= 500; i += 1) {
        const [t, s] = [i / 500, 1 - i / 500];
        const at = (axis: 'x' | 'y') =>
          s ** 3 * cubic.start[axis] +
          3 * s * s * t * cubic.control1[axis] +
          3 * s * t * t * cubic.control2[axis] +
          t ** 3 * cubic.end[axis];
        const away = bows.map((bow) => {
          if (bow.bulge === 0) return Math.hypot(at('x') - bow.start.x, at('y') - bow.start.y);
          const centre = centreOf(bow);
          return Math.abs(
            Math.hypot(at('x') - centre.x, at('y') - centre.y) -
              Math.hypot(bow.start.x - centre.x, bow.start.y - centre.y),
          );
        });
        expect(Math.min(...away)).toBeLessThan(1.1 * tolerance);
      }
    }
  });
});

describe('SVG', () => {
  it('is millimetres, hairlines and nothing else', () => {
    const text = cutFile(sheetOf(), 'svg');
    expect(text).toMatch(
      /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" width="148mm" height="148mm" viewBox="0 0 148 148"/,
    );
    expect(text.match(/<[a-z]+/g)).toEqual(['<svg', '<title', '<path']);
    expect(text).toContain('<title>Sheet 2 of 5: Reeds, #3b4a54</title>');
  });

  it('what is drawn with a pen has a colour of its own', () => {
    const text = cutFile(
      sheetOf({
        pen: [
          [
            { x: 1, y: 2 },
            { x: 3, y: 4 },
          ],
        ],
      }),
      'svg',
    );
    expect(text).toContain('stroke="#0000ff" stroke-width="0.01" d="M1 2L3 4"');
  });

  it('a name cannot become markup', () => {
    expect(cutFile(sheetOf({ name: '</title><script>\u0007&' }), 'svg')).toContain(
      'Sheet 2 of 5: &lt;/title&gt;&lt;script&gt; &amp;, ',
    );
  });
});

describe('PDF', () => {
  it('148 mm are 419.528 points: the unit is 1/72 inch (ISO 32000-1, 8.3.2.3)', () => {
    expect(cutFile(sheetOf(), 'pdf')).toContain('/MediaBox[0 0 419.52756 419.52756]');
  });

  it('says truly where its objects and its table are', () => {
    const text = cutFile(sheetOf({ name: 'Röhricht ) \\' }), 'pdf');
    expect(text).toMatch(/^[\x20-\x7e\n]*$/);
    const table = Number(/startxref\n(\d+)/.exec(text)![1]);
    expect(text.slice(table, table + 5)).toBe('xref\n');
    const places = [...text.slice(table).matchAll(/(\d{10}) 00000 n/g)].map(([, place]) => Number(place));
    places.forEach((place, i) => expect(text.slice(place).startsWith(`${i + 1} 0 obj\n`)).toBe(true));
    const stream = /<<\/Length (\d+)>>\nstream\n([\s\S]*?)endstream/.exec(text)!;
    expect(stream[2]!.length).toBe(Number(stream[1]));
  });
});

describe('DXF', () => {
  it('states millimetres, and arcs as bulges, y up', () => {
    const text = cutFile(sheetOf(), 'dxf');
    expect(text).toContain('$INSUNITS\n 70\n4\n');
    expect(text).toContain(' 10\n60.000000\n 20\n108.000000\n 42\n-1.000000000\n');
  });

  it('the older kind has neither units nor handles', () => {
    const text = cutFile(sheetOf(), 'dxf', 'AC1009');
    expect(text).toContain('$ACADVER\n  1\nAC1009\n');
    expect(text).not.toMatch(/INSUNITS|AcDb|LWPOLYLINE/);
  });
});

test('files are told from an artist’s own', () => {
  for (const format of ['svg', 'pdf', 'dxf'] as const)
    expect(isCutFile(cutFile(sheetOf(), format).slice(0, 512))).toBe(true);
  expect(isCutFile('<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-picture="print">')).toBe(false);
  expect(isCutFile('')).toBe(false);
});

test.each([
  ['Reeds', '02-reeds'],
  ['  Röhricht / Ufer ', '02-röhricht-ufer'],
  ['../../etc', '02-etc'],
  ['***', '02-layer'],
  ['a'.repeat(100), `02-${'a'.repeat(40)}`],
])('the file of "%s" is called %s', (name, file) => {
  expect(cutFileName({ number: 2, name })).toBe(file);
});
