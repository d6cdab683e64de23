import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const islands = (svg: string, settings = {}) => findingsOf('floating-island', svg, settings);
const ONE_PATH = '<path fill-rule="evenodd" d="M20 20H60V60H20Z M30 30H50V50H30Z"/>';

describe('floating-island', () => {
  it('underlines the inner outline of a path and measures its area', () => {
    expect(islands(sheetOf(ONE_PATH))).toMatchObject([
      { text: 'H50V50H30Z', severity: 'error', measure: '400.00 mm²', layer: 'stencil', related: [] },
    ]);
    const [island] = islands(sheetOf(ONE_PATH));
    expect(island?.message).toBe('Island, 400.0 mm²: it will fall out. Bridge it (0.80 mm or wider) or remove it.');
    expect(island?.detail).toMatch(/paint covers its place.* 0\.3 mm card.* limits\.bridge/);
  });

  it('underlines the shape that draws the ring, where several do', () => {
    const bars = [
      '<rect x="20" y="20" width="40" height="5"/>',
      '<rect x="20" y="55" width="40" height="5"/>',
      '<rect x="20" y="20" width="5" height="40"/>',
      '<rect x="55" y="20" width="5" height="40"/>',
    ];
    const [island, ...others] = islands(sheetOf(bars.join('')));
    expect(others).toEqual([]);
    expect(island?.measure).toBe('900.00 mm²');
    expect(bars).toContain(island?.text);
  });

  it('finds an island within an island', () => {
    const rings = '<path fill-rule="evenodd" d="M10 10H90V90H10Z M20 20H80V80H20Z M30 30H70V70H30Z M40 40H60V60H40Z"/>';
    expect(islands(sheetOf(rings)).map(({ measure }) => measure)).toEqual(['2000.00 mm²', '400.00 mm²']);
  });

  it('finds what hangs by a corner only', () => {
    const corners = '<path d="M20 20H40V40H20Z M40 40H60V60H40Z M20 60H40V80H20Z M0 40H20V60H0Z"/>';
    const found = islands(sheetOf(`<g transform="translate(10)">${corners}</g>`));
    expect(found.map(({ measure }) => Math.round(parseFloat(measure ?? '')))).toEqual([400]);
  });

  it('says so where the kerf takes its bridge, and only there', () => {
    const tied = sheetOf('<path d="M30.1 20V30H40V50H20V30H29.9V20H10V60H50V20Z"/>');
    expect(islands(tied)).toEqual([]);
    const [island] = islands(tied, { kerf: 0.25 });
    expect(island?.message).toBe(
      'Island, 390.1 mm²: it will fall out. Its bridge is thinner than the 0.25 mm kerf and burns away.',
    );
    const beside = tied.replace('</svg>', '<path fill-rule="evenodd" d="M70 70H90V90H70Z M75 75H85V85H75Z"/></svg>');
    const messages = islands(beside, { kerf: 0.25 }).map(({ message }) => message.includes('burns away'));
    expect(messages.sort()).toEqual([false, true]);
    expect(islands(sheetOf(ONE_PATH))[0]?.message).not.toContain('kerf');
  });

  it.each([0.0002, 0.0043, 0.019])('finds what only a hair of %d mm holds, and says so once', (hair) => {
    const held = sheetOf(`<path d="M${30 + hair / 2} 20V30H40V50H20V30H${30 - hair / 2}V20H10V60H50V20Z"/>`);
    const [island, ...others] = islands(held);
    expect(others).toEqual([]);
    expect(island?.message).toMatch(
      // Contact of no width is none.
      hair < 0.001 ? /^Island.*fall out\. Bridge it/ : /^Island.*fall out\. What joins it is under 0\.02 mm wide/,
    );
    expect(Number.parseFloat(island?.measure ?? '')).toBeCloseTo(400, 0);
    expect(findingsOf('thin-bridge', held)).toEqual([]);
  });

  it('leaves a tied piece, and a plain opening, in peace', () => {
    expect(
      islands(sheetOf('<path d="M32 20V30H40V50H20V30H28V20H10V60H50V20Z"/><circle cx="80" cy="80" r="9"/>')),
    ).toEqual([]);
  });
});
