/** Islands that later layers paint over are cut away, and the print stays as it is. */
import { describe, expect, it } from 'vitest';
import { candidatesFor, check, checkProject, fixesFor, readConfig } from '../../../../src/engine/index';
import type { Report, Settings } from '../../../../src/report/report';
import { applyEdits } from '../../../../src/text/text';

const stencil = (...layers: readonly [string, string][]) =>
  '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">\n' +
  layers.map(([id, body]) => `<g id="${id}">\n${body}\n</g>\n`).join('') +
  '</svg>';
const box = (x: number, y: number, width: number, height = width) =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}"/>`;
/** A square of 40 mm that leaves one of 20 mm in its middle, at 40, 40. */
const RING = '<path fill-rule="evenodd" d="M30 30h40v40h-40z M40 40h20v20h-20z"/>';

const islandsIn = ({ sheets }: Report) => sheets.map(({ pieces }) => pieces.filter(({ island }) => island).length);
/** The first of them; one that is covered before others. */
const island = ({ findings }: Report) => {
  const all = findings.filter((finding) => finding.check === 'floating-island');
  return (all.find(({ severity }) => severity === 'info') ?? all[0])!;
};
const kindsFor = (report: Report) => candidatesFor(report, island(report)).map(({ kind }) => kind);

/** The text after a fix of the first island. */
function after(text: string, kind: string, settings: Settings = {}): { text: string; title: string; report: Report } {
  const report = check(text, settings);
  const { fixes, refusals } = fixesFor(report, island(report));
  const fix = fixes.find((each) => each.kind === kind);
  if (!fix) throw new Error(refusals.map(({ kind: which, reason }) => `${which}: ${reason}`).join('\n'));
  const changed = applyEdits(text, fix.edits);
  return { text: changed, title: fix.title, report: check(changed, settings) };
}

describe('an island that a later layer paints over', () => {
  const text = stencil(['Water', RING], ['Heron', box(38, 38, 24)]);

  it('is said to be, and the first thing to do is to cut it away', () => {
    const report = check(text);
    expect(island(report)).toMatchObject({
      severity: 'info',
      message: 'Island, 400.0 mm²: it will fall out. Cut it away: "Heron" is painted over it.',
    });
    const [first, second] = fixesFor(report, island(report)).fixes;
    expect(first).toMatchObject({
      kind: 'cut-covered-island',
      title: 'Cut it away: "Heron" is painted over it',
      preferred: true,
      safe: false,
    });
    expect(second).toMatchObject({ kind: 'bridge-island', preferred: false });
    expect(kindsFor(report)).not.toContain('cut-island-away');
  });

  it('goes with its outline, and the rest of the text stays as it is', () => {
    const { text: changed, report } = after(text, 'cut-covered-island');
    expect(changed).toBe(text.replace(' M40 40h20v20h-20z', ''));
    expect(islandsIn(report)).toEqual([0, 0]);
    expect(report.findings.map((finding) => finding.check)).not.toContain('floating-island');
  });

  it('is filled by one more shape where several outlines make it', () => {
    const bars = [box(30, 30, 40, 10), box(30, 60, 40, 10), box(30, 30, 10, 40), box(60, 30, 10, 40)].join('\n');
    const drawn = stencil(['Water', bars], ['Heron', box(38, 38, 24)]);
    const { text: changed, report } = after(drawn, 'cut-covered-island');
    expect(changed.replace(/\n?<path d="[^"]*"\/>/, '')).toBe(drawn);
    expect(islandsIn(report)).toEqual([0, 0]);
  });

  it('goes as it was drawn though the kerf makes it smaller', () => {
    const { text: changed, report } = after(text, 'cut-covered-island', { kerf: 0.3 });
    expect(changed).toBe(text.replace(' M40 40h20v20h-20z', ''));
    expect(islandsIn(report)).toEqual([0, 0]);
  });

  it('goes where it is drawn as what stays', () => {
    const solid = '<path fill-rule="evenodd" d="M0 0h100v100h-100z M30 30h40v40h-40z"/>';
    const drawn = stencil(['Water', `${solid}${box(40, 40, 20)}`], ['Heron', box(38, 38, 24)]);
    const { text: changed } = after(drawn, 'cut-covered-island');
    expect(changed).toBe(drawn.replace(box(40, 40, 20), ''));
  });

  it('goes with the openings in it, and what lies in those stays', () => {
    const nested = RING.replace('-20z"', '-20z M45 45h10v10h-10z M48 48h4v4h-4z"');
    const drawn = stencil(
      ['Water', nested],
      ['Heron', `<path fill-rule="evenodd" d="M38 38h24v24h-24z M46 46h8v8h-8z"/>`],
    );
    const { report } = after(drawn, 'cut-covered-island');
    expect(report.sheets[0]?.pieces.filter((piece) => piece.island).map(({ area }) => area)).toEqual([16]);
  });
});

describe('an island that a layer of another file paints over', () => {
  const files = { 'water.svg': stencil(['Water', RING]), 'heron.svg': stencil(['Heron', box(38, 38, 24)]) };
  const report = (...order: string[]) => {
    const { config } = readConfig(JSON.stringify({ layers: order.map((from) => ({ from })) }));
    return checkProject(new Map(Object.entries(files)), { config }).files.get('water.svg') as Report;
  };

  it('is cut away where that is sprayed later, and not where it is sprayed before', () => {
    const later = report('water.svg', 'heron.svg');
    const [fix] = fixesFor(later, island(later)).fixes;
    expect(fix).toMatchObject({ kind: 'cut-covered-island', preferred: true });
    expect(applyEdits(files['water.svg'], fix?.edits ?? [])).toBe(files['water.svg'].replace(' M40 40h20v20h-20z', ''));
    expect(kindsFor(report('heron.svg', 'water.svg'))).not.toContain('cut-covered-island');
  });
});

describe('an island that is drawn by cut lines', () => {
  it('goes with its line', () => {
    const line = (d: string) => `<path fill="none" stroke="#000" stroke-width="0.1" d="${d}"/>`;
    const text = stencil(
      ['Water', `${line('M30 30h40v40h-40z')}\n${line('M40 40h20v20h-20z')}`],
      ['Heron', line('M38 38h24v24h-24z')],
    ).replace('<svg ', '<svg data-tombolo-reading="outlines" ');
    const { text: changed, report } = after(text, 'cut-covered-island');
    expect(changed).toBe(text.replace(`\n${line('M40 40h20v20h-20z')}`, ''));
    expect(islandsIn(report)).toEqual([0, 0]);
  });
});

describe('whether an island is covered', () => {
  const titleFor = (...layers: readonly [string, string][]) => {
    const report = check(stencil(...layers));
    return candidatesFor(report, island(report)).find(({ kind }) => kind === 'cut-covered-island')?.title;
  };
  const water: [string, string] = ['Water', RING];

  it.each<[string, [string, string][], string | undefined]>([
    ['exactly', [['Heron', box(40, 40, 20)]], '"Heron" is painted over it'],
    [
      'by two layers together',
      [
        ['Heron', box(38, 38, 16, 24)],
        ['Sun', box(50, 38, 12, 24)],
      ],
      '"Heron" and "Sun" are painted over it',
    ],
    [
      'by two that each would do, of which the last is seen',
      [
        ['Heron', box(38, 38, 24)],
        ['Sun', box(38, 38, 24)],
      ],
      '"Sun" is painted over it',
    ],
    [
      'but for a rim narrower than the slip',
      [['Heron', box(40.3, 40.3, 19.4)]],
      '"Heron" is painted over all but its rim',
    ],
    ['but for a rim wider than the slip', [['Heron', box(40.7, 40.7, 18.6)]], undefined],
    ['but for its middle', [['Heron', '<path fill-rule="evenodd" d="M38 38h24v24h-24z M48 48h4v4h-4z"/>']], undefined],
  ])('%s', (_, later, expected) => {
    expect(titleFor(water, ...later)).toBe(expected && `Cut it away: ${expected}`);
  });

  it('by an earlier layer: it is not', () => {
    expect(titleFor(['Heron', box(38, 38, 24)], water)).toBeUndefined();
    const report = check(stencil(['Heron', box(38, 38, 24)], water));
    expect(island(report).message).toBe(
      'Island, 400.0 mm²: it will fall out. Bridge it (0.80 mm or wider) or remove it.',
    );
    expect(kindsFor(report)).toContain('cut-island-away');
    expect(candidatesFor(report, island(report))[0]).toMatchObject({ kind: 'bridge-island', preferred: true });
  });

  it('by four layers: two names would be too many', () => {
    const quarters = [
      [38, 38],
      [50, 38],
      [38, 50],
      [50, 50],
    ].map(([x = 0, y = 0], i): [string, string] => [`Reed ${i}`, box(x, y, 12)]);
    expect(titleFor(water, ...quarters)).toMatch(/^Cut it away: "Reed \d" and 3 more layers are painted over it$/);
  });
});

describe('all islands that later layers cover', () => {
  const ring = (x: number, y: number) => `M${x} ${y}h12v12h-12z M${x + 3} ${y + 3}h6v6h-6z`;
  const water = `<path fill-rule="evenodd" d="${ring(5, 5)} ${ring(25, 5)} ${ring(45, 5)} ${ring(65, 5)}"/>`;
  const reeds = `<path fill-rule="evenodd" d="${ring(5, 40)} ${ring(25, 40)}"/>`;
  /** Over all of them but the last of the first layer. */
  const heron = [box(7, 7, 48, 8), box(7, 42, 28, 8)].join('');
  const text = stencil(['Water', water], ['Reeds', reeds], ['Heron', heron]);

  it('of a layer go together, and the others stay', () => {
    const { title, report } = after(text, 'cut-covered-layer');
    expect(title).toBe('Cut away all 3 islands in layer "Water" that later layers cover');
    expect(islandsIn(report)).toEqual([1, 2, 0]);
  });

  it('of the file go together', () => {
    const { title, report } = after(text, 'cut-covered-file');
    expect(title).toBe('Cut away all 5 islands in this file that later layers cover');
    expect(islandsIn(report)).toEqual([1, 0, 0]);
  });

  it('go but for those that cannot, and the title counts them', () => {
    // One line draws two islands: neither can be taken out of it alone.
    const solid = '<path fill-rule="evenodd" d="M0 0h100v100h-100z M30 30h40v40h-40z"/>';
    const line = '<path fill="none" stroke="#000" stroke-width="4" d="M36 40h4M46 40h4"/>';
    const drawn = stencil(['Water', `${solid}${line}${box(50, 50, 9)}`], ['Heron', box(34, 34, 32)]);
    const { title, text: changed, report } = after(drawn, 'cut-covered-layer');
    expect(title).toBe('Cut away 1 of the 3 islands in layer "Water" that later layers cover');
    expect(changed).toBe(drawn.replace(box(50, 50, 9), ''));
    expect(islandsIn(report)).toEqual([2, 0]);
  });
});
