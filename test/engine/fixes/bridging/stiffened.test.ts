import { describe, expect, it } from 'vitest';
import { defined } from '../../../../src/base/defined';
import { DEFAULT_CONFIG } from '../../../../src/config/types';
import { liftingOn } from '../../../../src/edits/plan/lifting';
import { examineCut } from '../../../../src/engine/fixes/bridging/cut';
import { islandsOf, planFor } from '../../../../src/engine/fixes/bridging/plan';
import { stiffened } from '../../../../src/engine/fixes/bridging/stiffened';
import { check } from '../../../../src/engine/index';
import { isRefusal } from '../../../../src/report/refusal';
import { bendingOf } from '../../../../src/sheet/deflection';
import { applyEdits } from '../../../../src/text/text';

const TEXT =
  '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"' +
  ' data-tombolo-reading="openings"><path fill-rule="evenodd" d="M2 2H98V98H2zM14 14H86V84H14z"/></svg>';

/** Only one of the island's bridges is proven. */
function proven() {
  const report = check(TEXT);
  const sheet = defined(report.sheets[0]);
  const islands = islandsOf(sheet);
  const one = planFor(report, sheet, islands, {}).bridges.slice(0, 1);
  const made = examineCut(report, sheet, one, islands, ['holds-island']);
  if (isRefusal(made)) throw new Error(made.reason);
  return { report, sheet, made };
}

describe('proven bridges that let an island lift', () => {
  const bending = bendingOf(DEFAULT_CONFIG);

  it('get others beside them, in one set of edits of the text', () => {
    const { report, sheet, made } = proven();
    expect(liftingOn(sheet, made.bridges, bending)).toHaveLength(1);
    const more = stiffened(report, sheet, made, {});
    expect(more.bridges.slice(0, made.bridges.length)).toEqual(made.bridges);
    expect(liftingOn(sheet, more.bridges, bending)).toEqual([]);
    const after = check(applyEdits(TEXT, more.edits));
    expect(after.sheets[0]?.pieces.some(({ island }) => island)).toBe(false);
    expect(after.findings.filter(({ check: id }) => id === 'loose-tongue')).toEqual([]);
  });

  it.each([
    ['a number', { count: 1 }],
    ['the shortest', { style: 'shortest' as const }],
    ['a place', { near: { x: 50, y: 14 } }],
  ])('stay as they are where the artist asked for %s', (_, choice) => {
    const { report, sheet, made } = proven();
    expect(stiffened(report, sheet, made, choice)).toBe(made);
  });
});
