import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { readConfig } from '../../../src/engine/check/known-checks';
import { findingsOf, sheetOf } from '../stencils';

const edges = (svg: string, settings = {}) => findingsOf('edge-opening', svg, settings);
const checksIn = (svg: string, settings = {}) => check(svg, settings).findings.map((finding) => finding.check);
const configured = (text: object) => ({ config: readConfig(JSON.stringify(text)).config });

const AT_SIDES: readonly [string, string][] = [
  ['left', '<rect x="0.5" y="20" width="20" height="20"/>'],
  ['right', '<rect x="79.5" y="20" width="20" height="20"/>'],
  ['upper', '<rect x="20" y="0.5" width="20" height="20"/>'],
  ['lower', '<rect x="20" y="79.5" width="20" height="20"/>'],
];

describe('edge-opening', () => {
  it.each(AT_SIDES)('measures the rim at the %s edge', (_, rect) => {
    expect(edges(sheetOf(rect))).toMatchObject([{ text: rect, severity: 'error', measure: '0.50 mm' }]);
  });

  it('says when an opening runs across', () => {
    const [across] = edges(sheetOf('<circle cx="50" cy="2" r="10"/>'));
    expect(across?.measure).toBe('0.00 mm');
    expect(across?.message).toMatch(/^Opening crosses the sheet's edge .*: the sheet will come apart there/);
  });

  it('is mended by a margin', () => {
    expect(edges(sheetOf('<rect x="0.5" y="20" width="20" height="20"/>'), configured({ margin: '5mm' }))).toEqual([]);
  });

  it('lets openings well inside go', () => {
    expect(edges(sheetOf('<rect x="0.9" y="0.9" width="98.2" height="98.2"/>'))).toEqual([]);
  });

  it.each(AT_SIDES)('takes the kerf from the rim, at the opening and at the %s edge', (_, rect) => {
    const kerf = { kerf: 0.2 };
    expect(edges(sheetOf(rect), kerf)).toMatchObject([{ measure: '0.30 mm' }]);
    const wider = rect.replace('0.5', '0.95').replace('79.5', '79.05');
    expect(edges(sheetOf(wider))).toEqual([]);
    expect(edges(sheetOf(wider), kerf)).toMatchObject([{ measure: '0.75 mm' }]);
    const enough = rect.replace('0.5', '1.01').replace('79.5', '78.99');
    expect(edges(sheetOf(enough), kerf)).toEqual([]);
  });

  describe('of a margin that is missing', () => {
    const flood = '<rect x="-3" y="-3" width="106" height="106"/>';
    const two = AT_SIDES.slice(0, 2).map(([, rect]) => rect);

    it('is told once, where openings come near to two sides or more', () => {
      const [only, ...others] = edges(sheetOf(two.join('')));
      expect(others).toEqual([]);
      expect(only).toMatchObject({ severity: 'error', measure: '0.50 mm', text: 'svg', related: two });
      expect(only?.message).toBe(
        'Margin too small: rim only 0.50 mm (minimum 0.80 mm) at 2 openings. It needs 1 mm more on each side.',
      );
      expect(edges(sheetOf(flood, 'data-tombolo-reading="openings"'))[0]?.message).toBe(
        'Margin missing: an opening runs off the sheet (minimum rim 0.80 mm). It needs 4 mm more on each side.',
      );
    });

    it('asks for no margin that no sheet can have', () => {
      const lines =
        '<g fill="none" stroke="#000" stroke-width="2000000000"><path d="M10 10h6"/><path d="M3 7l3 3"/></g>';
      expect(edges(sheetOf(lines))[0]?.message).toBe(
        'Margin missing: an opening runs off the sheet (minimum rim 0.80 mm).',
      );
    });

    it('is told once of all layers together', () => {
      const layers = two.map((rect, i) => `<g id="${i}">${rect}</g>`).join('');
      expect(edges(sheetOf(layers))).toMatchObject([{ layer: undefined, related: two }]);
    });

    it('is told from three openings at one side on; two are told apart', () => {
      const row = [10, 30, 50].map((y) => `<circle cx="3" cy="${y}" r="5"/>`);
      expect(edges(sheetOf(row.join('')))).toMatchObject([{ related: row }]);
      expect(edges(sheetOf(row.slice(1).join('')))).toHaveLength(2);
    });

    it('is told of two openings at one side that two layers have there, at the left of them', () => {
      const row = [10, 50].map((x) => `<circle cx="${x}" cy="3" r="5"/>`);
      const layers = row.map((circle, i) => `<g id="${i}">${circle}</g>`);
      for (const text of [sheetOf(layers.join('')), sheetOf(layers.toReversed().join(''))]) {
        const [only, ...others] = check(text).findings.filter((finding) => finding.check === 'edge-opening');
        expect(others).toEqual([]);
        expect(only?.message).toMatch(/^Margin missing: 2 openings run off the sheet/);
        expect(only?.at?.x).toBeLessThan(15);
      }
    });

    it('takes with it the pieces and narrow places that come only of it', () => {
      const disc = sheetOf('<circle cx="50" cy="50" r="50.2"/>');
      expect(checksIn(disc)).toEqual(['edge-opening']);
      expect(checksIn(disc, configured({ checks: { 'edge-opening': 'off' } })).sort()).toEqual([
        'floating-island',
        'floating-island',
        'floating-island',
      ]);
      const cap = sheetOf(`<circle cx="50" cy="-9.9" r="10.2"/><circle cx="50" cy="109.9" r="10.2"/>`);
      expect(checksIn(cap)).toEqual(['edge-opening']);
    });

    it('still tells of islands in the middle', () => {
      const ring = sheetOf(
        '<path fill-rule="evenodd" d="M-1 10H101V90H-1Z M30 30H70V70H30Z"/>',
        'data-tombolo-reading="openings"',
      );
      expect(checksIn(ring)).toEqual(['edge-opening', 'floating-island']);
    });

    it('is no matter of a layer that draws what stays', () => {
      const drawn = sheetOf(
        '<path fill-rule="evenodd" d="M0 0H100V100H0Z M0.2 20H40V80H0.2Z M60 20H99.8V80H60Z"/>',
        'data-tombolo-reading="sheet"',
      );
      expect(edges(drawn)).toHaveLength(2);
    });

    it.each([
      ['turned', (x: number, y: number) => [100 - y, x]],
      ['mirrored', (x: number, y: number) => [100 - x, y]],
      ['turned and mirrored', (x: number, y: number) => [y, x]],
    ] as const)('is the same where the sheet is %s', (_, move) => {
      const shapes = [
        [
          [-3, 20],
          [20, 20],
          [20, 60],
          [-3, 50],
        ],
        [
          [40, 40],
          [60, 40],
          [60, 99.6],
          [50, 99.6],
        ],
        [
          [80, 10],
          [90, 10],
          [90, 12],
          [80, 15],
        ],
      ] as const;
      const draw = (moved: (x: number, y: number) => readonly number[]) =>
        sheetOf(
          shapes.map((ring) => `<path d="M${ring.map(([x, y]) => moved(x, y).join(' ')).join('L')}Z"/>`).join(''),
        );
      const [still] = edges(draw((x, y) => [x, y]));
      const [moved, ...others] = edges(draw(move));
      expect(others).toEqual([]);
      expect([moved?.message, moved?.measure]).toEqual([still?.message, still?.measure]);
    });
  });
});
