import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const gaps = (svg: string, settings = {}) => findingsOf('bare-gap', svg, settings);

const fields = (gap: number) =>
  sheetOf(`<g id="sky"><path d="M10 10H${50 - gap}V90H10Z"/></g><g id="hill"><path d="M50 10H90V90H50Z"/></g>`);

/** A field with a round hole, and a disc for it that lies beside its place. */
const hole = (radius: number, aside: number) =>
  sheetOf(
    '<g id="field"><path fill-rule="evenodd" d="M10 10H90V90H10Z M30 50a20 20 0 1 0 40 0a20 20 0 1 0-40 0Z"/></g>' +
      `<g id="sun"><circle cx="${50 + aside}" cy="50" r="${radius}"/></g>`,
  );

describe('bare-gap', () => {
  it('measures the ground between two colours', () => {
    const [gap, ...others] = gaps(fields(0.2));
    expect(others).toEqual([]);
    expect(gap).toMatchObject({ layer: 'sky', text: 'V90', related: ['Z'], measure: '0.20 mm', severity: 'warning' });
    expect(gap?.message).toMatch(/^Gap of 0\.20 mm between "sky" and "hill": within the 0\.50 mm a sheet may slip/);
    expect(gaps(fields(0.02))).toMatchObject([{ measure: '0.02 mm' }]);
  });

  it('lets wide ground and cracks go', () => {
    expect(gaps(fields(0.51))).toEqual([]);
    expect(gaps(fields(0.008))).toEqual([]);
    expect(gaps(fields(-0.2))).toEqual([]);
  });

  it('finds crescents and rings that are closed all round, by their widest place', () => {
    const crescent = gaps(hole(20, 0.3));
    expect(crescent).toMatchObject([{ layer: 'field', measure: '0.30 mm' }]);
    expect(crescent[0]?.message).toMatch(/^Gap up to 0\.30 mm between/);
    expect(gaps(hole(19.7, 0))).toMatchObject([{ measure: '0.30 mm' }]);
  });

  it('gains the kerf: cuts on both sides take the ground between', () => {
    expect(gaps(fields(0.6), { kerf: 0.2 })).toMatchObject([{ measure: '0.40 mm', text: 'V90', related: ['Z'] }]);
  });

  it('leaves ground within one layer to others', () => {
    expect(
      gaps(
        sheetOf('<g id="a"><path d="M10 10H49.8V90H10ZM50 10H90V90H50Z"/></g><g id="b"><path d="M10 95h5v2h-5z"/></g>'),
      ),
    ).toEqual([]);
    expect(gaps(sheetOf('<path d="M10 10H49.8V90H10Z"/><path d="M50 10H90V90H50Z"/>'))).toEqual([]);
  });

  it('leaves points alone in which two outlines run together', () => {
    expect(
      gaps(sheetOf('<g id="a"><path d="M10 50H90V90H10Z"/></g><g id="b"><path d="M50 51L90 40V45Z"/></g>')),
    ).toEqual([]);
  });

  it('finds ground that runs out slowly, open at its other end', () => {
    const wedge = (length: number) =>
      gaps(
        sheetOf(
          '<g id="a"><path d="M5 20H20V50H90V90H5Z"/></g>' +
            `<g id="b"><path d="M20 50L${20 + length} 49.7V30H20Z"/></g>`,
        ),
      );
    expect(wedge(60)).toMatchObject([{ layer: 'a' }]);
    // At 2.1° it is the point of an angle; at its length it would be a crack only below 1.4°.
    expect(wedge(8)).toEqual([]);
  });

  describe('in a crack that one end closes', () => {
    /** Two squares, a crack of that width between them, and a third colour over its right end. */
    const crack = (width: number, third: string, move = '') =>
      sheetOf(
        `<g id="a" transform="${move}"><rect x="10" y="10" width="10" height="10"/></g>` +
          `<g id="b" transform="${move}"><rect x="10" y="${20 + width}" width="10" height="10"/></g>` +
          `<g id="c" transform="${move}">${third}</g>`,
      );
    const OVER_ITS_END = '<rect x="19" y="18" width="6" height="6"/>';

    it.each(['', 'rotate(90) translate(0 -60)', 'scale(-1 1) translate(-60 0)', 'rotate(33) translate(20 -10)'])(
      'is told as one open at both ends is, moved by "%s"',
      (move) => {
        const far = '<rect x="40" y="18" width="6" height="6"/>';
        for (const width of [0.025, 0.1, 0.4]) {
          const measure = `${width.toFixed(2).replace('0.03', '0.02')} mm`;
          expect(gaps(crack(width, far, move))).toHaveLength(1);
          const [closed, ...others] = gaps(crack(width, OVER_ITS_END, move));
          expect(others).toEqual([]);
          expect(Number.parseFloat(closed?.measure ?? '')).toBeCloseTo(Number.parseFloat(measure), 1);
          expect(closed?.layer).toBe('a');
        }
      },
    );

    it('is told where two colours touch in a point beside it', () => {
      const wedge = (rise: number) =>
        gaps(
          sheetOf(`<g id="a"><path d="M10 10H20V20H10Z"/></g><g id="b"><path d="M10 20L20 ${20 + rise}V30H10Z"/></g>`),
        );
      expect(wedge(0.1)).toMatchObject([{ layer: 'a' }]);
      expect(wedge(0.2)).toMatchObject([{ layer: 'a' }]);
      // An angle that is seen as one.
      expect(wedge(0.4)).toEqual([]);
    });
  });

  it('tells gaps of one seam once, and nothing of a short hairline', () => {
    const row = (apart: number, gap = 0.2, width = 6) =>
      sheetOf(
        `<g id="sky"><path d="M10 10H90V50H10Z"/></g><g id="hill">${[20, 20 + width + apart]
          .map((x) => `<path d="M${x} ${50 + gap}h${width}v20h${-width}Z"/>`)
          .join('')}</g>`,
      );
    const [gap, ...others] = gaps(row(3));
    expect(others).toEqual([]);
    expect(gap?.related).toHaveLength(2);
    expect(gaps(row(9))).toHaveLength(2);
    expect(gaps(row(9, 0.05, 0.3))).toEqual([]);
    expect(gaps(row(9, 0.19, 0.3))).toEqual([]);
    expect(gaps(row(9, 0.21, 0.3))).toHaveLength(2);
    expect(gaps(row(9, 0.05, 1.8))).toHaveLength(2);
  });
});
