import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { findingsOf, sheetOf } from '../stencils';

const overlaps = (svg: string, settings = {}) => findingsOf('short-overlap', svg, settings);

/** Two fields that meet at x = 50, the earlier one drawn on by `lap` mm. */
const fields = (lap: number, between = '') =>
  sheetOf(
    `<g id="sky"><path d="M10 10H${50 + lap}V90H10Z"/></g>${between}<g id="hill"><path d="M50 10H90V90H50Z"/></g>`,
  );

describe('short-overlap', () => {
  it('tells colours that only touch', () => {
    const [seam, ...others] = overlaps(fields(0));
    expect(others).toEqual([]);
    expect(seam).toMatchObject({ layer: 'sky', text: 'V90', related: ['Z'], measure: '0.00 mm', severity: 'warning' });
    expect(seam?.message).toMatch(
      /^"sky" and "hill" meet without overlapping \(allow 0\.50 mm for slip\) along 78\.0 mm: bare ground/,
    );
  });

  it('measures how far they run over each other', () => {
    const [seam, ...others] = overlaps(fields(0.2));
    expect(others).toEqual([]);
    expect(seam).toMatchObject({ layer: 'sky', text: 'V90', related: ['Z'], measure: '0.20 mm' });
    expect(overlaps(fields(0.45))).toMatchObject([{ measure: '0.45 mm' }]);
    expect(overlaps(fields(0.51))).toEqual([]);
  });

  it('goes by the slip that is stated', () => {
    const config = { ...DEFAULT_CONFIG, limits: { slip: 1 } };
    expect(overlaps(fields(0.51), { config })).toMatchObject([{ measure: '0.51 mm' }]);
  });

  it('takes a crack between edges that were meant to meet for a touch', () => {
    expect(overlaps(fields(-0.004))).toMatchObject([{ measure: '0.00 mm' }]);
    expect(overlaps(fields(-0.02))).toEqual([]);
  });

  it('gains the kerf', () => {
    expect(overlaps(fields(0.1), { kerf: 0.2 })).toMatchObject([{ measure: '0.30 mm', text: 'V90', related: ['Z'] }]);
    expect(overlaps(fields(0.1), { kerf: 0.5 })).toEqual([]);
  });

  it('is content where a third colour lies under the seam', () => {
    expect(overlaps(fields(0, '<g id="ground"><path d="M40 10H60V90H40Z"/></g>'))).toEqual([]);
    expect(overlaps(fields(0, '<g id="ground"><path d="M49.8 10H50.2V90H49.8Z"/></g>'))).toMatchObject([
      { layer: 'sky', measure: '0.20 mm' },
      { layer: 'ground', measure: '0.20 mm' },
    ]);
  });

  it('leaves outlines alone: one colour on top of another, edges that cross, shapes apart', () => {
    const ground = '<g id="a"><path d="M10 10H60V60H10Z"/></g>';
    expect(overlaps(sheetOf(`${ground}<g id="b"><circle cx="30" cy="30" r="10"/></g>`))).toEqual([]);
    expect(overlaps(sheetOf(`${ground}<g id="b"><path d="M40 40H90V90H40Z"/></g>`))).toEqual([]);
    expect(overlaps(sheetOf(`${ground}<g id="b"><path d="M70 70H90V90H70Z"/></g>`))).toEqual([]);
    // At 20° the seam is short for S / sin 20° − 2S = 0.46 mm beyond its crossing: less than two slips.
    const low = (angle: number) => {
      const rise = 40 * Math.tan((angle * Math.PI) / 180);
      return sheetOf(
        `<g id="a"><path d="M10 50H90V90H10Z"/></g><g id="b"><path d="M10 10H90V${50 + rise}L10 ${50 - rise}Z"/></g>`,
      );
    };
    expect(overlaps(low(35))).toEqual([]);
    expect(overlaps(low(20))).toEqual([]);
    expect(overlaps(low(5)).length).toBeGreaterThan(0);
  });

  it('has nothing to say of one layer', () => {
    expect(overlaps(sheetOf('<path d="M10 10H50V90H10Z"/><path d="M50 10H90V90H50Z"/>'))).toEqual([]);
  });

  it('finds both sides of a knocked-out disc as one seam', () => {
    const seam = overlaps(
      sheetOf(
        '<g id="a"><path fill-rule="evenodd" d="M10 10H90V90H10Z M30 50a20 20 0 1 0 40 0a20 20 0 1 0-40 0Z"/></g>' +
          '<g id="b"><circle cx="50" cy="50" r="20.3"/></g>',
      ),
    );
    expect(seam).toMatchObject([{ measure: '0.30 mm' }]);
    expect(seam[0]?.message).toContain('127.5');
  });
});
