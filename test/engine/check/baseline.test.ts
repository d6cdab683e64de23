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
