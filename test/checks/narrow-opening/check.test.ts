import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { readConfig } from '../../../src/engine/check/known-checks';
import { fixesFor } from '../../../src/engine/fixes/index';
import { applyEdits } from '../../../src/text/text';
import { findingsOf, sheetOf } from '../stencils';

const slots = (svg: string, settings = {}) => findingsOf('narrow-opening', svg, settings);
const dumbbell = (width: number) =>
  sheetOf(`<path d="M20 20H40V${40 - width / 2}H60V20H80V60H60V${40 + width / 2}H40V60H20Z"/>`);

describe('narrow-opening', () => {
  it('measures a slot between its sides', () => {
    const [slot, ...others] = slots(dumbbell(0.4));
    expect(others).toEqual([]);
    expect(slot).toMatchObject({ severity: 'warning', measure: '0.40 mm' });
    expect([...(slot?.related ?? [])].sort()).toEqual(['H40', 'H60']);
    expect(slot?.message).toMatch(/^Slot only 0\.40 mm wide \(minimum 0\.60 mm for 0\.3 mm card\)/);
  });

  it('says how far a point is too fine', () => {
    // A wedge of 10 mm over 50 mm: the apex lies r/sin(α/2) − r beyond the last disc of 0.6 mm.
    const half = Math.atan(5 / 50);
    const reach = 0.3 / Math.sin(half) - 0.3;
    const [point, ...others] = slots(sheetOf('<path d="M20 40L70 45L20 50Z"/>'));
    expect(others).toEqual([]);
    expect(point?.message).toContain(`Tip too fine to paint: last ${reach.toFixed(2)} mm narrower than 0.60 mm`);
  });

  it('gains the kerf', () => {
    expect(slots(dumbbell(0.45), { kerf: 0.2 })).toEqual([]);
    expect(slots(dumbbell(0.3), { kerf: 0.2 })).toMatchObject([{ measure: '0.50 mm' }]);
  });

  it('lets wide slots and blunt corners go', () => {
    expect(slots(dumbbell(0.61))).toEqual([]);
    // An equilateral triangle: 60° is well above the 39° of the rule.
    expect(slots(sheetOf('<path d="M20 20H60L40 54.641Z"/>'))).toEqual([]);
  });

  describe('of tips', () => {
    /** A wedge of that angle in degrees: its apex lies r/sin(α/2) − r beyond the last disc. */
    const wedge = (degrees: number, x = 20, move = '') => {
      const rise = 30 * Math.tan((degrees / 2) * (Math.PI / 180));
      return `<path transform="${move}" d="M${x} 50L${x + 30} ${50 - rise}V${50 + rise}Z"/>`;
    };
    const reachOf = (degrees: number) => 0.3 / Math.sin((degrees / 2) * (Math.PI / 180)) - 0.3;

    it.each(['', 'rotate(70 50 50)', 'matrix(-1 0 0 1 80 0)'])('tells short ones as a hint, moved by "%s"', (move) => {
      const [hint, ...others] = slots(sheetOf(wedge(22, 20, move)));
      expect(others).toEqual([]);
      expect(hint?.severity).toBe('hint');
      expect(hint?.message).toBe(
        `Tip rounds off: last ${reachOf(22).toFixed(2)} mm narrower than 0.60 mm (minimum for 0.3 mm card).`,
      );
      expect(slots(sheetOf(wedge(21, 20, move)))).toMatchObject([{ severity: 'warning' }]);
    });

    it('draws the line at 13/6 of the limit, whatever the limit', () => {
      const severities = (limit: string) =>
        [21, 22].map((degrees) => {
          const { config } = readConfig(JSON.stringify({ limits: { opening: limit } }));
          return slots(sheetOf(wedge(degrees)), { config })[0]?.severity;
        });
      for (const limit of ['0.3mm', '0.6mm', '1.2mm']) expect(severities(limit)).toEqual(['warning', 'hint']);
    });

    it('tells all that are short once for the layer, the longest first', () => {
      const [hint, ...others] = slots(sheetOf(wedge(25, 5) + wedge(30, 36) + wedge(23, 67)));
      expect(others).toEqual([]);
      expect(hint?.message).toBe(
        `Tips round off: last ${reachOf(23).toFixed(2)} mm at most narrower than 0.60 mm (minimum for 0.3 mm card), 3 in "stencil".`,
      );
      expect(hint?.related).toHaveLength(4);
    });
  });

  describe('of a line that is too fine', () => {
    /** A chain of discs with slots between them, each so wide. */
    const chain = (widths: readonly number[]) =>
      sheetOf(
        widths
          .map((width, i) => `<rect x="${12 + 12 * i}" y="${50 - width / 2}" width="12" height="${width}"/>`)
          .join('') +
          Array.from({ length: widths.length + 1 }, (_, i) => `<circle cx="${12 + 12 * i}" cy="50" r="3"/>`).join(''),
      );

    it('tells many slots of one opening once, at the narrowest', () => {
      const [slot, ...others] = slots(chain([0.5, 0.4, 0.55, 0.45]));
      expect(others).toEqual([]);
      expect(slot).toMatchObject({ measure: '0.40 mm', severity: 'warning' });
      expect(slot?.message).toBe(
        'Slot only 0.40 mm wide (minimum 0.60 mm for 0.3 mm card): paint will clog it. 3 more in this opening.',
      );
      expect(slot?.related).toHaveLength(5);
      expect(slots(chain([0.5, 0.4]))).toMatchObject([
        { measure: '0.40 mm', message: expect.stringMatching(/ 1 more in this opening\.$/) },
      ]);
    });

    it('tells a letter that is too fine all over once, with its arms', () => {
      // A T of 0.5 mm strokes: only where they meet a disc of 0.6 mm fits.
      const letter = (stroke: number) =>
        sheetOf(`<path d="M20 20H30V${20 + stroke}H${25 + stroke / 2}V35H${25 - stroke / 2}V${20 + stroke}H20Z"/>`);
      const [whole, ...others] = slots(letter(0.55));
      expect(others).toEqual([]);
      expect(whole?.message).toMatch(
        /^Tip too fine to paint: last 14\.\d\d mm narrower than .*\. 2 more in this opening\.$/,
      );
      // A broad shape with two fine points has them one by one.
      expect(slots(sheetOf('<path d="M3 50L45 47H55L97 50L55 53H45Z"/>')).length).toBe(2);
    });

    it('tells slots of two openings apart', () => {
      const two = chain([0.5, 0.4]).replace('</svg>', '<path d="M20 70H40V79.8H60V70H80V90H60V80.2H40V90H20Z"/></svg>');
      expect(
        slots(two)
          .map(({ measure }) => measure)
          .sort(),
      ).toEqual(['0.40 mm', '0.40 mm']);
    });

    it('is mended place by place: what is left is not new', () => {
      let text = chain([0.5, 0.4, 0.55, 0.45]);
      for (const width of ['0.40', '0.45']) {
        const report = check(text);
        const finding = report.findings.find((each) => each.check === 'narrow-opening')!;
        expect(finding.measure?.value.toFixed(2)).toBe(width);
        const fix = fixesFor(report, finding).fixes.find(({ kind }) => kind === 'open-up');
        expect(fix?.brings).toEqual([]);
        text = applyEdits(text, fix!.edits);
      }
      expect(slots(text)).toMatchObject([{ measure: '0.50 mm', related: { length: 3 } }]);
    });
  });

  describe('of cracks', () => {
    /** Two squares joined by a slot, so wide and so long. */
    const crack = (width: number, length: number, y = 40) =>
      `<path d="M20 ${y - 8}H40V${y - width / 2}h${length}V${y - 8}h20v16h-20V${y + width / 2}h${-length}V${y + 8}H20Z"/>`;

    it('tells those of a layer once, as a hint, at the widest', () => {
      const [hint, ...others] = slots(sheetOf(crack(0.04, 1)));
      expect(others).toEqual([]);
      expect(hint).toMatchObject({ severity: 'hint', measure: '0.04 mm' });
      expect(hint?.message).toBe(
        'Crack only 0.04 mm wide (minimum 0.60 mm): two outlines nearly meet. Nothing of it is seen.',
      );
      const both = slots(sheetOf(crack(0.03, 1, 20) + crack(0.04, 1.5, 70)));
      expect(both).toMatchObject([{ severity: 'hint', measure: '0.04 mm', related: { length: 3 } }]);
    });

    it('draws the line at 0.05 mm as cut and 2 mm', () => {
      const severity = (width: number, length: number, settings = {}) =>
        slots(sheetOf(crack(width, length)), settings).map((each) => each.severity);
      expect(severity(0.049, 1.9)).toEqual(['hint']);
      expect(severity(0.052, 1.9)).toEqual(['warning']);
      expect(severity(0.049, 2.7)).toEqual(['warning']);
      expect(severity(0.03, 1.9, { kerf: 0.03 })).toEqual(['warning']);
    });

    it('does not count them with the slots of their opening', () => {
      const both = slots(sheetOf(`${crack(0.04, 1)}<path d="M61 39.8H75V30H90V50H75V40.2H61Z"/>`));
      expect(both.map(({ severity, measure }) => [severity, measure])).toEqual([
        ['warning', '0.40 mm'],
        ['hint', '0.04 mm'],
      ]);
    });
  });
});
