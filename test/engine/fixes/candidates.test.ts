/** What may be tried is said at once; what became of it is a fix or a reason. */
import { describe, expect, it } from 'vitest';
import { ALL_CHECKS } from '../../../src/checks/all';
import { FIX_KINDS } from '../../../src/engine/fixes/kinds';
import {
  applyEdits,
  bridgeIslands,
  candidatesFor,
  check,
  fixesFor,
  offerOrder,
  proveFix,
  sharedChange,
} from '../../../src/engine/index';
import type { Report } from '../../../src/report/report';

const stencil = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;
const ring = (x: number, y: number) =>
  `<path fill-rule="evenodd" d="M${x - 10} ${y - 10}h20v20h-20zM${x - 6} ${y - 6}h12v12h-12z"/>`;

const first = (report: Report) => report.findings[0]!;

describe('the kinds of fix', () => {
  it('that checks name are there, and each but accepting is named', () => {
    const named = new Set(ALL_CHECKS.flatMap(({ meta }) => meta.fixes));
    expect([...FIX_KINDS.keys()].sort()).toEqual([...named, 'accept'].sort());
  });

  it('are called what they are listed as', () => {
    for (const [name, { kind }] of FIX_KINDS) expect(kind).toBe(name);
  });

  it('that are safe have no effects', () => {
    const safe = [...FIX_KINDS.values()].filter((kind) => kind.safe);
    expect(safe.map(({ kind }) => kind)).toEqual(['state-size']);
    for (const { effects } of safe) expect(effects).toEqual([]);
  });
});

describe('the candidates for a finding', () => {
  const report = check(stencil(`<g id="a">${ring(20, 20)}${ring(60, 20)}</g><g id="b">${ring(20, 60)}</g>`));

  it('are named by finding and kind, with their scope, in the order offered', () => {
    const candidates = candidatesFor(report, first(report));
    expect(candidates.map(({ kind, scope }) => `${kind} ${scope}`)).toEqual([
      'bridge-island place',
      'bridge-island-shortest place',
      'bridge-island-two place',
      'bridge-layer layer',
      'bridge-file file',
      'two-sheets layer',
      'cut-island-away place',
      'accept place',
    ]);
    for (const { id, kind, finding } of candidates) {
      expect(finding).toBe(first(report).id);
      expect(id).toBe(`${finding}!${kind}`);
    }
  });

  it('become fixes of the same name and kind, or are the same as another', () => {
    const [island, , two] = candidatesFor(report, first(report));
    const { id, kind, finding, scope } = island!;
    expect(proveFix(report, island!)).toMatchObject({ id, kind, finding, scope, preferred: true, brings: [] });
    // The usual bridges are two already.
    expect(proveFix(report, two!)).toBeUndefined();
  });

  it('are for their text alone', () => {
    const [island] = candidatesFor(report, first(report));
    const moved = check(report.text.replace('<g id="b">', '<g id="b" >'));
    expect(proveFix(moved, island!)).toMatchObject({
      kind: 'bridge-island',
      reason: 'The drawing has changed since; ask again.',
    });
  });

  it('do not include accepting what cannot be accepted', () => {
    const broken = check(stencil('<path d="M10 10h20v20h-20z M40 40 h"/>'));
    const unreadable = broken.findings.find((finding) => finding.check === 'unreadable-path');
    expect(unreadable && candidatesFor(broken, unreadable)).toEqual([]);
  });
});

describe('a refusal', () => {
  const dumbbell = 'M20 20H40V34.8H60V20H80V50H60V35.2H40V50H20Z';

  it('says why the change does not hold', () => {
    const near = '<rect x="42" y="36.01" width="16" height="10"/>';
    const report = check(stencil(`<path d="${dumbbell}"/>${near}`));
    const slot = report.findings.find((finding) => finding.check === 'narrow-opening')!;
    const { fixes, refusals } = fixesFor(report, slot);
    expect(fixes.map(({ kind }) => kind)).not.toContain('open-up');
    const refused = refusals.find(({ kind }) => kind === 'open-up');
    expect(refused).toMatchObject({ id: `${slot.id}!open-up`, title: 'Widen this slot to 0.60 mm', scope: 'place' });
    expect(refused?.reason).toBe('It would leave a bridge too thin to hold.');
  });

  it('says why there is no place for a bridge', () => {
    const report = check(stencil('<path fill-rule="evenodd" d="M40 40h20v20h-20zM50 50h.23v.23h-.23z"/>'));
    const { refusals } = fixesFor(report, first(report));
    const reasons = new Map(refusals.map(({ kind, reason }) => [kind, reason]));
    expect(reasons.get('bridge-island')).toMatch(
      /^No bridge fits the island at 50\.1, 50\.1 mm, which is narrower than a bridge of 0\.80 mm\.$/,
    );
  });
});

describe('what a fix brings', () => {
  /** A comb, whose prongs are too long to be held by their roots: they lift, yet the comb falls out no more. */
  const comb =
    '<svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="110mm" viewBox="0 0 220 110">' +
    '<path fill-rule="evenodd" d="M10 10h200v82h-200zM20 25v42h6v-8h70v-6h-70v-8h70v-6h-70v-8h70v-6z"/></svg>';

  it('is said in its title, where it does not speak against it', () => {
    const report = check(comb);
    expect(report.findings.map((finding) => finding.check)).toEqual(['floating-island']);
    const [fix] = fixesFor(report, first(report)).fixes;
    expect(fix?.title).toMatch(/^Bridge this island \(\d bridges of 0\.80 mm to 1\.20 mm\); leaves a loose tongue$/);
    expect(fix?.brings.map((brought) => brought.check)).toEqual(['loose-tongue', 'loose-tongue']);
    const long = expect.objectContaining({ message: expect.stringMatching(/^Bridge at .* 15\.00 mm long/) });
    expect(bridgeIslands(report).brings).toEqual([...(fix?.brings ?? []), long]);
    const after = check(applyEdits(comb, fix?.edits ?? []));
    expect(after.findings.map(({ message }) => message)).toEqual(fix?.brings.map(({ message }) => message));
  });

  it('is nothing as a rule', () => {
    const report = check(stencil(ring(50, 50)));
    expect(bridgeIslands(report).brings).toEqual([]);
    for (const { brings } of fixesFor(report, first(report)).fixes) expect(brings).toEqual([]);
  });
});

describe('fixes of several findings', () => {
  it('are offered from the place to the file, and accepting last', () => {
    const orders = (['place', 'layer', 'file', 'stack'] as const).map((scope) => offerOrder({ kind: 'x', scope }));
    expect(orders).toEqual([0, 1, 2, 2]);
    expect(offerOrder({ kind: 'accept', scope: 'place' })).toBeGreaterThan(2);
  });

  it('are the same only where they change the same', () => {
    const report = check(
      stencil(
        `<g><title>sky</title>${ring(20, 20)}${ring(60, 20)}</g><g><title>sky</title>${ring(20, 60)}${ring(60, 60)}</g>`,
      ),
    );
    const keys = report.findings.map((finding) => {
      const [layer] = candidatesFor(report, finding).filter(({ kind }) => kind === 'bridge-layer');
      return layer && sharedChange(layer);
    });
    expect(new Set(keys).size).toBe(2);
    expect(keys.every((key) => key !== undefined)).toBe(true);
    const [island] = candidatesFor(report, first(report));
    expect(sharedChange(island!)).toBeUndefined();
  });
});
