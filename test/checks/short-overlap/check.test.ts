import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { check } from '../../../src/engine/check/check-file';
import { fixesFor } from '../../../src/engine/fixes/index';
import { applyEdits } from '../../../src/text/text';
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

  describe('of one seam', () => {
    /** Two fields that meet at x = 50; patches lie under parts of the seam, so that those bear a slip. */
    const patched = (patches: readonly (readonly [number, number])[], move = '') =>
      sheetOf(
        `<g id="ground" transform="${move}">${patches
          .map(([from, to]) => `<path d="M45 ${from}H55V${to}H45Z"/>`)
          .join('')}</g>` +
          `<g id="sky" transform="${move}"><path d="M10 10H50V90H10Z"/></g>` +
          `<g id="hill" transform="${move}"><path d="M50 10H90V90H50Z"/></g>`,
      );

    it.each(['', 'rotate(90 50 50)', 'matrix(-1 0 0 1 100 0)', 'rotate(31 50 50)'])(
      'tells parts near to each other once, moved by "%s"',
      (move) => {
        const [seam, ...others] = overlaps(
          patched(
            [
              [30, 33],
              [50, 53],
            ],
            move,
          ),
        );
        expect(others).toEqual([]);
        expect(seam?.related).toHaveLength(3);
        const total = Number(/along ([\d.]+) mm/.exec(seam?.message ?? '')?.[1]);
        // 80 mm, less two slips at both ends and, where a patch lies, what it bears but for a slip on either side.
        expect(total).toBeGreaterThan(70);
        expect(total).toBeLessThan(76);
        expect(overlaps(patched([[30, 50]], move))).toHaveLength(2);
      },
    );

    it('says nothing of what is no longer than two slips', () => {
      // What is nearer to bare ground than two slips is outline.
      const meeting = (length: number, slip: number) => {
        const config = { ...DEFAULT_CONFIG, limits: { slip } };
        const side = length + 4 * slip;
        return overlaps(
          sheetOf(`<g id="a"><path d="M20 20h20v${side}h-20Z"/></g><g id="b"><path d="M40 20h20v${side}h-20Z"/></g>`),
          { config },
        );
      };
      for (const slip of [0.25, 0.5, 1]) {
        expect(meeting(1.9 * slip, slip)).toEqual([]);
        expect(meeting(2.1 * slip, slip)).toMatchObject([{ measure: '0.00 mm' }]);
      }
    });

    it('gives a place where three colours meet to the longest', () => {
      const three = (x: number) =>
        sheetOf(
          `<g id="sky"><path d="M10 10H90V50H10Z"/></g><g id="sand"><path d="M10 50H${x}V90H10Z"/></g>` +
            `<g id="sea"><path d="M${x} 50H90V90H${x}Z"/></g>`,
        );
      expect(
        overlaps(three(50))
          .map(({ layer }) => layer)
          .sort(),
      ).toEqual(['sand', 'sky', 'sky']);
      // A third colour that comes to a seam with its corner has no seam of its own there.
      const corner = sheetOf(
        '<g id="sky"><path d="M10 10H90V50H10Z"/></g><g id="sea"><path d="M10 50H90V90H10Z"/></g>' +
          '<g id="sail"><path d="M50 49.9L60 20H40Z M50 50.2L60 80H40Z"/></g>',
      );
      expect(overlaps(corner).map(({ layer }) => layer)).toEqual(['sky']);
    });

    it('is mended by one shape along all of its parts', () => {
      const text = patched([
        [30, 33],
        [50, 53],
      ]);
      const report = check(text);
      const finding = report.findings.find((each) => each.check === 'short-overlap')!;
      const fix = fixesFor(report, finding).fixes.find(({ kind }) => kind === 'spread-colour');
      expect(check(applyEdits(text, fix!.edits)).findings.filter((each) => each.check === 'short-overlap')).toEqual([]);
    });
  });
});
