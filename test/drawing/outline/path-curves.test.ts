import { describe, expect, it } from 'vitest';
import { drawMm } from '../draw';

/** Ends of all curves, subpath by subpath, with the text that each came from. */
function trace(d: string): unknown {
  const drawing = drawMm(`<path d="${d}"/>`);
  const { text } = drawing.document;
  return drawing.shapes[0]?.subpaths.map(({ curves, spans, closed }) => [
    ...curves.map(
      ({ kind, end }, index) => `${kind[0]} ${end.x},${end.y} ${text.slice(spans[index]?.from, spans[index]?.to)}`,
    ),
    closed ? 'closed' : 'open',
  ]);
}

describe('commands', () => {
  it.each([
    ['M1 2L3 4H5V6', [['l 3,4 L3 4', 'l 5,4 H5', 'l 5,6 V6', 'open']]],
    ['m1 2l3 4h5v6', [['l 4,6 l3 4', 'l 9,6 h5', 'l 9,12 v6', 'open']]],
    ['m1 2 3 4 5 6', [['l 4,6 3 4', 'l 9,12 5 6', 'open']]],
    [
      'M1 1h2v2zh3v3z',
      [
        ['l 3,1 h2', 'l 3,3 v2', 'l 1,1 z', 'closed'],
        ['l 4,1 h3', 'l 4,4 v3', 'l 1,1 z', 'closed'],
      ],
    ],
    [
      'M1 1h2v2zm1 1h1',
      [
        ['l 3,1 h2', 'l 3,3 v2', 'l 1,1 z', 'closed'],
        ['l 3,2 h1', 'open'],
      ],
    ],
    ['M1 1C2 2 3 3 4 4c1 1 2 2 3 3', [['c 4,4 C2 2 3 3 4 4', 'c 7,7 c1 1 2 2 3 3', 'open']]],
    ['M1 1Q2 2 3 3q1 1 2 2', [['q 3,3 Q2 2 3 3', 'q 5,5 q1 1 2 2', 'open']]],
    ['M0 0a5 5 0 015 5 5 5 0 01-5 5', [['a 5,5 a5 5 0 015 5', 'a 0,10 5 5 0 01-5 5', 'open']]],
    ['M0 0h5zz', [['l 5,0 h5', 'l 0,0 z', 'closed']]],
    ['M5 5', undefined],
    ['', undefined],
    ['none', undefined],
  ])('%s', (d, expected) => {
    expect(trace(d)).toEqual(expected);
  });
});

describe('smooth shorthands', () => {
  const controls = (d: string): unknown =>
    drawMm(`<path d="${d}"/>`)
      .shapes[0]?.subpaths[0]?.curves.map((curve) =>
        curve.kind === 'cubic' ? curve.control1 : curve.kind === 'quadratic' ? curve.control : undefined,
      )
      .at(-1);

  // SVG 2, cubic01.svg and quad01.svg, a tenth of their size.
  it('the reflected points of cubic01 (250,300) and quad01 (800,550)', () => {
    expect(controls('M10,20 C10,10 25,10 25,20 S40,30 40,20')).toEqual({ x: 25, y: 30 });
    expect(controls('M20,30 Q40,5 60,30 T100,30')).toEqual({ x: 80, y: 55 });
  });

  it('after another kind of command the point reached stands in', () => {
    expect(controls('M1 1Q2 0 3 1S4 4 5 5')).toEqual({ x: 3, y: 1 });
    expect(controls('M1 1C2 0 3 0 4 1T5 5')).toEqual({ x: 4, y: 1 });
    expect(controls('M1 1L2 2S4 4 5 5')).toEqual({ x: 2, y: 2 });
    expect(controls('M1 1Q2 0 3 1T5 1T7 1')).toEqual({ x: 6, y: 0 });
  });
});
