/** A layer cut as two sheets: what is written, what it paints, and what is refused. */
import { describe, expect, it } from 'vitest';
import {
  applyEdits,
  check,
  checkProject,
  type Fix,
  fixesFor,
  type Report,
  readConfig,
} from '../../../src/engine/index';
import { rasterise } from '../../outside/raster';

const ring = (x: number, y: number, inner = 5) =>
  `M${x - 9} ${y}a9 9 0 1 0 18 0a9 9 0 1 0-18 0z M${x - inner} ${y}a${inner} ${inner} 0 1 0 ${2 * inner} 0a${inner} ${inner} 0 1 0-${2 * inner} 0z`;

const ROOT = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">';

const NUMERALS = `${ROOT}
  <g id="water" fill="#8fd3ff"><rect x="2" y="30" width="56" height="8"/></g>
  <!-- Sprayed last. -->
  <g id='numerals' class="ink" fill="#345"
     aria-label="Numerals">
    <defs><clipPath id="half"><rect width="60" height="40"/></clipPath></defs>
    <path id="nought" clip-path="url(#half)" fill-rule="evenodd" d="${ring(15, 15)}"/>
    <path fill-rule="evenodd" d="${ring(42, 15)}"/>
  </g>
</svg>
`;

function twoSheets(report: Report): { fix: Fix | undefined; reason: string | undefined } {
  const [finding] = report.complete.filter(({ check: id }) => id === 'floating-island');
  if (!finding) throw new Error('There is no island.');
  const { fixes, refusals } = fixesFor(report, finding);
  return {
    fix: fixes.find(({ kind }) => kind === 'two-sheets'),
    reason: refusals.find(({ kind }) => kind === 'two-sheets')?.reason,
  };
}

function cut(text: string): string {
  const { fix, reason } = twoSheets(check(text));
  if (!fix) throw new Error(reason);
  return applyEdits(text, fix.edits);
}

/** The largest difference of coverage, 0..255, of pixels that are wholly painted in `a`, or not at all. */
function differsBy(a: string, b: string): number {
  const [one = new Uint8Array(), other = one] = [a, b].map((text) => rasterise(text, 600).coverage);
  const difference = (value: number, i: number) => Math.abs(value - (other[i] ?? 0));
  return one.reduce(
    (most, value, i) => (value === 0 || value === 255 ? Math.max(most, difference(value, i)) : most),
    0,
  );
}

const islandsIn = (text: string) =>
  check(text).sheets.map(({ pieces }) => pieces.filter(({ island }) => island).length);

describe('a group cut as two sheets', () => {
  const text = cut(NUMERALS);

  it("stands in the author's words, and a copy right behind it that says what it goes with", () => {
    const [before, after] = NUMERALS.split('    <path id="nought"') as [string, string];
    expect(text.startsWith(before)).toBe(true);
    expect(text.endsWith(after.slice(after.lastIndexOf('  </g>\n</svg>')))).toBe(true);
    expect(text).toContain(`
  </g>
  <g id='numerals-2' class="ink" fill="#345"
     aria-label="Numerals (second sheet)" data-tombolo-with="numerals">
    <defs><clipPath id="half-2"><rect width="60" height="40"/></clipPath></defs>
    <path id="nought-2" clip-path="url(#half-2)"`);
  });

  it('is three layers without an island, of which the last two are one painted region', () => {
    const { sheets, stack, complete } = check(text);
    expect(sheets.map(({ layer }) => layer.name)).toEqual(['water', 'Numerals', 'Numerals (second sheet)']);
    expect(stack.firsts).toEqual([0, 1, 1]);
    expect(islandsIn(text)).toEqual([0, 0, 0]);
    expect(complete.filter(({ severity }) => severity === 'warning' || severity === 'error')).toEqual([]);
  });

  it('paints as before to a renderer that knows nothing of it', () => {
    // Pixels at edges are left out: two coats of half coverage cover three quarters. The renderer counts in steps of 48.
    expect(differsBy(NUMERALS, text)).toBeLessThanOrEqual(48);
    const first = text.replace(/<g id='numerals-2'.*?<\/g>/s, '');
    expect(differsBy(NUMERALS, first)).toBe(255);
  });

  it('is offered with the number of bridges and the difference in tone', () => {
    const title = twoSheets(check(NUMERALS)).fix?.title ?? '';
    expect(title).toBe(
      "Cut this layer as two sheets that cover each other's bridges (4 bridges and 4; one coat in their shadows, two elsewhere)",
    );
    expect(title.length).toBeLessThanOrEqual(120);
  });
});

describe('a file that is one layer', () => {
  it('gets two groups where it has none', () => {
    const text = cut(`${ROOT}\n  <title>Post</title>\n  <path fill-rule="evenodd" d="${ring(15, 15)}"/>\n</svg>`);
    expect(text).toMatch(
      /<title>Post<\/title>\n {2}<g id="first-sheet">\n {2}<path [^>]*\/>\n {2}<\/g>\n {2}<g id="second-sheet" data-tombolo-with="first-sheet">\n {2}<path [^>]*\/>\n {2}<\/g>\n<\/svg>$/,
    );
    expect(islandsIn(text)).toEqual([0, 0]);
  });

  it('keeps its group, which gets an id where it has neither that nor a name', () => {
    const text = cut(`${ROOT}<g fill="#345"><path fill-rule="evenodd" d="${ring(15, 15)}"/></g></svg>`);
    expect(text).toMatch(
      /<g id="first-sheet" fill="#345">.*<\/g><g fill="#345" data-tombolo-with="first-sheet">.*<\/g><\/svg>$/,
    );
    expect(check(text).stack.firsts).toEqual([0, 0]);
  });
});

describe('a layer of a project', () => {
  const GROUP = `<g id="numerals" fill="#345"><path fill-rule="evenodd" d="${ring(20, 20)}"/></g>`;
  const WATER = '<g id="water" fill="#8fd3ff"><rect x="2" y="30" width="50" height="8"/></g>';
  const projectOf = (files: Record<string, string>, layers: readonly object[]) => {
    const { config } = readConfig(JSON.stringify({ layers }));
    return checkProject(new Map(Object.entries(files)), { config });
  };
  const names = (project: ReturnType<typeof projectOf>) => project.stack.layers.map(({ sheet }) => sheet.layer.name);

  it.each([
    [
      'a file of its own',
      [
        { from: 'numerals.svg', name: 'Numerals' },
        { from: 'water.svg', name: 'Water' },
      ],
    ],
    [
      'a file of its own, in a paint that is stated',
      [{ from: 'numerals.svg', paint: '#112233' }, { from: 'water.svg' }],
    ],
    [
      'a group that is named by its id',
      [{ from: 'numerals.svg#numerals' }, { from: 'water.svg#water', name: 'Water' }],
    ],
    ['all layers of a file', [{ from: 'numerals.svg' }, { from: 'water.svg' }]],
  ])('gets its second sheet where it is %s', (_, layers) => {
    const files = { 'numerals.svg': `${ROOT}${GROUP}</svg>`, 'water.svg': `${ROOT}${WATER}</svg>` };
    const before = projectOf(files, layers);
    const { fix, reason } = twoSheets(before.files.get('numerals.svg')!);
    expect(reason).toBeUndefined();
    const after = projectOf({ ...files, 'numerals.svg': applyEdits(files['numerals.svg'], fix!.edits) }, layers);
    expect(after.stack.firsts).toEqual([0, 0, 2]);
    const [first, water] = names(before);
    expect(names(after)[0]).toBe(first);
    expect(names(after)[2]).toBe(water);
    expect(new Set(names(after)).size).toBe(3);
    expect(after.stack.layers.map(({ sheet }) => sheet.layer.paint).slice(0, 2)).toEqual(
      Array(2).fill(before.stack.layers[0]?.sheet.layer.paint),
    );
    const found = [...after.files.values()].flatMap(({ complete }) => complete);
    expect(found.filter(({ severity }) => severity === 'error' || severity === 'warning')).toEqual([]);
    expect(after.stack.layers.every(({ sheet }) => sheet.pieces.every(({ island }) => !island))).toBe(true);
  });

  it('has no second sheet twice where tombolo.json lists it, too', () => {
    const second = GROUP.replace('"numerals"', '"again" data-tombolo-with="numerals"');
    const files = { 'both.svg': `${ROOT}${GROUP}${second}</svg>` };
    expect(names(projectOf(files, [{ from: 'both.svg#numerals' }]))).toEqual(['numerals', 'numerals (second sheet)']);
    expect(names(projectOf(files, [{ from: 'both.svg#numerals' }, { from: 'both.svg#again' }]))).toEqual([
      'numerals',
      'again',
    ]);
  });

  it('gets it in a file that says that it is one layer', () => {
    const root = ROOT.replace('<svg', '<svg data-tombolo-layers="one"');
    const text = cut(`${root}${GROUP}</svg>`);
    expect(check(text).stack.firsts).toEqual([0, 0]);
  });
});

describe('two sheets are refused', () => {
  const reason = (text: string) => twoSheets(check(text)).reason;

  it('where an island has no room for two bridges, with the length it needs and has', () => {
    // Round a disc of 0.75 mm across there are 2.36 mm; two bridges of 0.80 mm and twice the slip take 2.60.
    const path = `<path fill-rule="evenodd" d="${ring(20, 20, 0.41)}"/>`;
    expect(reason(`${ROOT}${path}</svg>`)).toMatch(
      /^No room for two bridges round the island at 20\.0, 20\.0 mm: 2\.60 mm all round needed, 2\.5\d mm there\.$/,
    );
  });

  it('where tombolo.json says that the file is one layer', () => {
    const report = check(`${ROOT}<path fill-rule="evenodd" d="${ring(20, 20)}"/></svg>`, { oneLayer: true });
    expect(twoSheets(report).reason).toMatch(/^The second sheet would be no layer of its own/);
  });

  it('where a layer is one of the colours of a group: there it is not even offered', () => {
    const root = ROOT.replace('<svg', '<svg data-tombolo-layers="by-paint"');
    const report = check(
      `${root}<path fill="#345" fill-rule="evenodd" d="${ring(20, 20)}"/><rect width="9" height="3"/></svg>`,
    );
    expect(twoSheets(report)).toEqual({ fix: undefined, reason: undefined });
  });
});
