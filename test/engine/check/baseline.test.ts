/** Acceptances and the baseline of tombolo.json. */
import { describe, expect, it } from 'vitest';
import { baselineOf, check, checkProject, readConfig, unusedAcceptances } from '../../../src/engine/index';
import { sheetOf } from '../../checks/stencils';

const ring = (x: number) => `<path fill-rule="evenodd" d="M${x} 10h20v20h-20zM${x + 4} 14h12v12h-12z"/>`;
const svg = sheetOf(ring(10) + ring(50));
const withConfig = (text: string) => check(svg, { config: readConfig(text).config });

describe('accept', () => {
  it("takes a check's findings out of every file, and leaves the others", () => {
    const thin = sheetOf(
      `${ring(10)}<rect x="50.5" y="50" width="9" height="9"/><rect x="60" y="50" width="9" height="9"/>`,
    );
    const { config } = readConfig('{"accept": {"floating-island": "hung by hand"}}');
    expect(check(thin).complete.map((finding) => finding.check)).toEqual(['floating-island', 'thin-bridge']);
    expect(check(thin, { config }).complete.map((finding) => finding.check)).toEqual(['thin-bridge']);
  });

  it('that accepts nothing in a project is said at its key', () => {
    const text =
      '{"layers": [{"from": "a.svg"}], "accept": {"floating-island": "x", "thin-bridge": "y", "unsupported": "z"}}';
    const report = checkProject(new Map([['a.svg', svg]]), { config: readConfig(text).config });
    const problems = unusedAcceptances(text, report);
    expect(problems.map(({ span }) => text.slice(span.from, span.to))).toEqual(['"thin-bridge"', '"unsupported"']);
    expect(problems[0]?.message).toMatch(/^No thin-bridge in this project any more: this acceptance does nothing/);
  });

  it('is not doubted where a file of the project is missing, or no file is named', () => {
    const text = '{"layers": [{"from": "a.svg"}, {"from": "b.svg"}], "accept": {"thin-bridge": "y"}}';
    expect(
      unusedAcceptances(text, checkProject(new Map([['a.svg', svg]]), { config: readConfig(text).config })),
    ).toEqual([]);
    const alone = '{"accept": {"thin-bridge": "y"}}';
    expect(unusedAcceptances(alone, checkProject(new Map(), { config: readConfig(alone).config }))).toEqual([]);
  });
});

describe('accept in a part of the project', () => {
  const [first, second] = [ring(10), ring(50)].map((path, i) => path.replace('<path', `<path id="ring${i}"`));
  const drawn = sheetOf(`<g id="whole">${first}</g>${second}`);
  const left = (part: object | readonly object[], file?: string) => {
    const { config, problems } = readConfig(JSON.stringify({ accept: { 'floating-island': part } }));
    expect(problems).toEqual([]);
    return check(drawn, { config, ...(file !== undefined && { file }) }).complete.length;
  };
  const reason = 'glued by hand';

  it('by the id of an element, or of one around it', () => {
    expect(left({ id: 'ring0', reason })).toBe(1);
    expect(left({ id: 'whole', reason })).toBe(1);
    expect(left({ id: 'ring', reason })).toBe(2);
    expect(
      left([
        { id: 'ring0', reason },
        { id: 'ring1', reason },
      ]),
    ).toBe(0);
  });

  it('by layer and by file, all that is stated together', () => {
    const names = new Set(check(drawn).complete.map(({ layer }) => layer));
    for (const layer of names) expect(left({ layer, reason })).toBeLessThan(2);
    expect(left([...names].map((layer) => ({ layer, reason })))).toBe(0);
    expect(left({ layer: 'sky', reason })).toBe(2);
    expect(left({ file: 'posts/a.svg', reason }, 'posts/a.svg')).toBe(0);
    expect(left({ file: 'posts/a.svg', reason }, 'a.svg')).toBe(2);
    expect(left({ file: 'posts/a.svg', reason })).toBe(2);
    expect(left({ file: 'a.svg', id: 'ring1', reason }, 'a.svg')).toBe(1);
  });

  it.each([
    ['{"id": "ring0"}', /^Say in "reason" why floating-island is accepted/],
    ['{"reason": "glued"}', /^Say in "file", "layer" or "id" where/],
    ['[{"reason": "glued", "lair": "sky", "id": "a"}]', /^Unknown key "lair"/],
  ])('%s is told', (part, message) => {
    expect(readConfig(`{"accept": {"floating-island": ${part}}}`).problems[0]?.message).toMatch(message);
  });

  it('that accepts nothing in a project is said at its place', () => {
    const text =
      '{"layers": [{"from": "a.svg"}], "accept": {"floating-island": [{"id": "gone", "reason": "x"}, {"id": "ring0", "reason": "y"}]}}';
    const report = checkProject(new Map([['a.svg', drawn]]), { config: readConfig(text).config });
    const problems = unusedAcceptances(text, report);
    expect(problems.map(({ span }) => text.slice(span.from, span.to))).toEqual(['{"id": "gone", "reason": "x"}']);
    expect(problems[0]?.message).toBe('No floating-island there any more: this acceptance does nothing.');
  });
});

describe('the baseline', () => {
  const entry = (at: string, layer = 'stencil') =>
    withConfig(`{"baseline": [{"check": "floating-island", "layer": "${layer}", "at": ${at}}]}`).complete.length;

  it('lets one finding pass by check, layer and place, and no other', () => {
    expect(entry('[20, 20]')).toBe(1);
    expect(entry('[20.6, 20.6]')).toBe(1);
    expect(entry('[21, 21]')).toBe(2);
    expect(entry('[20, 20]', 'other')).toBe(2);
    expect(withConfig('{"baseline": [{"check": "floating-island"}]}').complete).toHaveLength(2);
    expect(
      withConfig('{"baseline": [{"check": "thin-bridge", "layer": "stencil", "at": [20, 20]}]}').complete,
    ).toHaveLength(2);
  });

  it('of a report lets all of it pass, whatever is drawn beside', () => {
    const config = { ...readConfig('{}').config, baseline: baselineOf(check(svg).complete) };
    expect(config.baseline).toEqual([
      { check: 'floating-island', layer: 'stencil', at: [20, 20] },
      { check: 'floating-island', layer: 'stencil', at: [60, 20] },
    ]);
    expect(check(svg, { config }).complete).toEqual([]);
    const more = sheetOf(
      `\n${ring(10)}\n\n${ring(50)}<path d="M70 70h9v9z"/>${ring(10).replace('10', '60').replace('14', '64')}`,
    );
    expect(check(more, { config }).complete.map((finding) => finding.check)).toContain('floating-island');
  });

  it('holds findings without a place, and never what could not be read', () => {
    const broken = sheetOf('<path d="M10 10h20v20 x"/>');
    const { config } = readConfig(
      '{"baseline": [{"check": "unreadable-path", "layer": "stencil"}, {"check": "unstated-size"}]}',
    );
    expect(check(broken, { config }).complete.map((finding) => finding.check)).toContain('unreadable-path');
    expect(check('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>', { config }).complete).toEqual([]);
    expect(baselineOf(check(broken).complete).map((each) => each.check)).not.toContain('unreadable-path');
  });
});
