import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/check/check-file';
import { bridgeIslands } from '../../../src/engine/fixes/bridge-islands';
import { fixesFor } from '../../../src/engine/fixes/index';
import { checksIn, fixed } from '../mended';

const stencil = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;

const ring = (x: number, y: number) =>
  `<path fill-rule="evenodd" d="M${x - 10} ${y - 10}h20v20h-20zM${x - 6} ${y - 6}h12v12h-12z"/>`;

describe('the mends of an island', () => {
  it('go from this island to the file, and end with accepting it', () => {
    const svg = stencil(`<g id="a">${ring(20, 20)}${ring(60, 20)}</g><g id="b">${ring(20, 60)}</g>`);
    expect([...fixed(svg, 'floating-island').keys()]).toEqual([
      'bridge-island',
      'bridge-island-shortest',
      'bridge-layer',
      'bridge-file',
      'two-sheets',
      'cut-island-away',
      'accept',
    ]);
  });

  it('bridge as many islands as they say', () => {
    const svg = stencil(`<g id="a">${ring(20, 20)}${ring(60, 20)}</g><g id="b">${ring(20, 60)}</g>`);
    const left = [...fixed(svg, 'floating-island')].map(([kind, text]) => [kind, checksIn(text).length]);
    expect(left).toEqual([
      ['bridge-island', 2],
      ['bridge-island-shortest', 2],
      ['bridge-layer', 1],
      ['bridge-file', 0],
      ['two-sheets', 1],
      ['cut-island-away', 2],
      ['accept', 2],
    ]);
  });

  it('hang it on one bridge where asked to, which is then all that holds it', () => {
    const text = fixed(stencil(ring(50, 50)), 'floating-island').get('bridge-island-shortest') ?? '';
    expect(check(text).sheets[0]?.pieces).toHaveLength(1);
  });

  it('prefer the first', () => {
    const report = check(stencil(ring(50, 50)));
    const mends = fixesFor(report, report.findings[0]!).fixes;
    expect(mends.filter(({ preferred }) => preferred).map(({ kind }) => kind)).toEqual(['bridge-island']);
    expect(mends.some(({ safe }) => safe)).toBe(false);
  });

  it('leave the bare shadow of a bridge where later paint covers it', () => {
    // A ring whose right side is painted over later: both bridges fit there, side by side.
    const cover = '<rect x="55" y="38" width="8" height="24"/>';
    const svg = stencil(`<g id="a">${ring(50, 50)}</g><g id="b">${cover}</g>`);
    const text = fixed(svg, 'floating-island').get('bridge-island-shortest') ?? '';
    const [before, after] = [check(svg).sheets[0]!, check(text).sheets[0]!];
    const bare = after.openings.flatMap(({ outer }) => [...outer]);
    expect(before.pieces).toHaveLength(2);
    expect(after.pieces).toHaveLength(1);
    // The cut ends are the only new places: they stand on the right.
    const old = new Set(before.openings.flatMap(({ outer, holes }) => [outer, ...holes].flatMap((each) => [...each])));
    const xs = bare.filter((value, i) => i % 2 === 0 && !old.has(value));
    expect(Math.min(...xs, 100)).toBeGreaterThan(50);
  });
});

describe('lettering', () => {
  // Counters whose walls are thinner at the sides than above and below, but so tall that level bridges would not hold them.
  const letter = (x: number) => `<path fill-rule="evenodd" d="M${x} 30h16v24h-16zM${x + 4} 35h8v14h-8z"/>`;
  const word = stencil([10, 30, 50].map(letter).join(''));
  const directions = (svg: string, kind: string) => {
    const report = check(svg);
    const mend = fixesFor(report, report.findings[0]!).fixes.find((each) => each.kind === kind);
    return mend?.bridges?.map(({ from, to }) => (Math.abs(from.x - to.x) < 1e-6 ? 'upright' : 'level'));
  };

  it('bridges stand upright by themselves in counters in a row, one above and one below', () => {
    expect(directions(word, 'bridge-layer')).toEqual(new Array(6).fill('upright'));
    expect(directions(word, 'bridge-layer-upright')).toBeUndefined();
    const text = fixed(word, 'floating-island').get('bridge-layer') ?? '';
    expect(checksIn(text)).toEqual([]);
  });

  it('but not for two, and not where they would be much longer', () => {
    expect(directions(stencil(letter(10) + letter(40)), 'bridge-layer-upright')).toBeUndefined();
    const tall = [10, 30, 50].map((x) => `<path fill-rule="evenodd" d="M${x} 20h16v44h-16zM${x + 4} 35h8v14h-8z"/>`);
    expect(directions(stencil(tall.join('')), 'bridge-layer-upright')).toBeUndefined();
  });

  it('are put in where asked for', () => {
    const report = check(word);
    const [level, upright] = (['level', 'upright'] as const).map((style) => bridgeIslands(report, { style }).plan);
    expect(level?.every(({ from, to }) => Math.abs(from.y - to.y) < 1e-6)).toBe(true);
    expect(upright?.every(({ from, to }) => Math.abs(from.x - to.x) < 1e-6)).toBe(true);
  });
});

describe('other mends', () => {
  it('widen a bridge to the limit', () => {
    const svg = stencil('<rect x="20" y="20" width="20" height="30"/><rect x="40.5" y="20" width="20" height="30"/>');
    const text = fixed(svg, 'thin-bridge').get('widen-bridge') ?? '';
    expect(checksIn(text)).toEqual([]);
  });

  it('remove a pinhole', () => {
    const text = fixed(stencil('<circle cx="50" cy="50" r="0.2"/>'), 'small-opening').get('remove-opening') ?? '';
    expect(text).toBe(stencil(''));
  });

  describe('of a slot', () => {
    const dumbbell = 'M20 20H40V34.8H60V20H80V50H60V35.2H40V50H20Z';
    const posed = (transform: string) => stencil(`<g transform="${transform}"><path d="${dumbbell}"/></g>`);
    const silhouette = stencil(`<path fill-rule="evenodd" d="M0 0H100V100H0Z ${dumbbell}"/>`);

    it.each([
      ['as it is', stencil(`<path d="${dumbbell}"/>`)],
      ['turned', posed('rotate(30 50 50)')],
      ['mirrored', posed('matrix(-1 0 0 1 100 0)')],
      ['in a silhouette', silhouette],
    ])('open it up to the limit, or close it: %s', (_, svg) => {
      const mends = fixed(svg, 'narrow-opening');
      expect([...mends.keys()]).toEqual(['open-up', 'close-slot', 'accept']);
      const [before, opened, closed] = [svg, mends.get('open-up') ?? '', mends.get('close-slot') ?? ''];
      expect([checksIn(opened), checksIn(closed)]).toEqual([[], []]);
      expect(areaOfOpenings(opened, 0) - areaOfOpenings(before, 0)).toBeCloseTo(20 * 0.2, 0);
      expect(areaOfOpenings(before, 0) - areaOfOpenings(closed, 0)).toBeCloseTo(20 * 0.4, 0);
      expect(check(opened).sheets[0]?.openings).toHaveLength(1);
      expect(check(closed).sheets[0]?.openings).toHaveLength(2);
    });

    it('are not offered where a bridge would come out too thin', () => {
      const near = '<rect x="42" y="36.01" width="16" height="10"/>';
      const mends = fixed(stencil(`<path d="${dumbbell}"/>${near}`), 'narrow-opening');
      expect(mends.has('open-up')).toBe(false);
    });

    it('are others for points, which are not closed', () => {
      const point = fixed(stencil('<path d="M20 20H40V30L70 30.3V30.6L40 31V50H20Z"/>'), 'narrow-opening');
      expect([...point.keys()]).toEqual(['open-up', 'shorten-tip', 'accept']);
      expect(checksIn(point.get('open-up') ?? '')).toEqual([]);
      expect(checksIn(point.get('shorten-tip') ?? '')).toEqual([]);
    });

    it('open up cut lines, too', () => {
      const lines = stencil(`<path fill="none" stroke="#f00" stroke-width="0.01" d="${dumbbell}"/>`);
      const opened = fixed(lines, 'narrow-opening').get('open-up') ?? '';
      expect(opened).toContain('d="M20 20H40V34.69H60V20H80V50H60V35.31H40V50H20Z"');
      expect(checksIn(opened)).toEqual([]);
    });
  });

  it('accept a finding before its element, in its own indentation', () => {
    const svg = stencil(`\n  <g>\n    ${ring(50, 50)}\n  </g>\n`);
    const text = fixed(svg, 'floating-island').get('accept') ?? '';
    expect(text).toContain('  <g>\n    <!-- tombolo accept floating-island:  -->\n    <path');
    expect(checksIn(text)).toEqual([]);
  });
});

describe('bridgeIslands', () => {
  it('bridges all, says how many, and does nothing the second time', () => {
    const svg = stencil(`${ring(20, 20)}<!-- kept -->${ring(60, 20)}`);
    const first = bridgeIslands(check(svg));
    expect([first.bridges, first.refusals]).toEqual([4, []]);
    expect(first.text).toContain('<!-- kept -->');
    expect(checksIn(first.text)).toEqual([]);
    const second = bridgeIslands(check(first.text));
    expect([second.bridges, second.text]).toEqual([0, first.text]);
  });

  it('does not cut an outline twice that two layers share', () => {
    const shared = `<defs><g id="r">${ring(0, 0)}</g></defs>`;
    const svg = stencil(
      `${shared}<g id="a"><use href="#r" x="20" y="20"/></g><g id="b"><use href="#r" x="60" y="60"/></g>`,
    );
    const { text, bridges, refusals } = bridgeIslands(check(svg));
    expect(bridges + refusals.length).toBeGreaterThan(0);
    expect(checksIn(text).length).toBe(bridges === 0 ? 2 : 2 - bridges / 2);
  });

  it('keeps to a layer, and to a width', () => {
    const svg = stencil(`<g id="a">${ring(20, 20)}</g><g id="b">${ring(20, 60)}</g>`);
    const { text, bridges } = bridgeIslands(check(svg), { layer: 'b', bridgeWidth: 2 });
    expect(bridges).toBe(2);
    expect(checksIn(text)).toEqual(['floating-island']);
    const lost = areaOfOpenings(svg, 1) - areaOfOpenings(text, 1);
    expect(lost).toBeCloseTo(2 * 2 * 4, 1);
  });
});

function areaOfOpenings(svg: string, layer: number): number {
  const sheet = check(svg).sheets[layer]!;
  const material = sheet.pieces.reduce((sum, piece) => sum + piece.area, 0);
  return 100 * 100 - material;
}
