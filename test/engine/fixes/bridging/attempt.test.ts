/** What is done when the proof of a plan fails, with a proof that fails as it is told. */
import { describe, expect, it } from 'vitest';
import { defined } from '../../../../src/base/defined';
import type { Bridge } from '../../../../src/edits/plan/index';
import { asManyAsHold, type Spent } from '../../../../src/engine/fixes/bridging/attempt';
import { examineCut, type FailedCut } from '../../../../src/engine/fixes/bridging/cut';
import { islandsOf } from '../../../../src/engine/fixes/bridging/plan';
import { check } from '../../../../src/engine/index';

const ring = (x: number): string => `M${x} 8h24v24h-24zM${x + 3} 11v18h18v-18z`;
const TEXT =
  '<svg xmlns="http://www.w3.org/2000/svg" width="70mm" height="40mm" viewBox="0 0 70 40">' +
  `<path d="${ring(8)}${ring(38)}"/></svg>`;

const failed = (blamed: readonly Bridge[], more: Partial<FailedCut> = {}): FailedCut => ({
  reason: 'It would leave a loose tongue.',
  blamed: new Set(blamed),
  narrow: new Set(),
  ...more,
});

/** Runs an attempt whose first proofs fail as given, and gives the sets that were to be proven. */
function attempt(failures: readonly ((bridges: readonly Bridge[]) => FailedCut)[], { text = TEXT, proofs = 10 } = {}) {
  const report = check(text);
  const sheet = defined(report.sheets[0]);
  const sets: (readonly Bridge[])[] = [];
  const spent: Spent = { avoid: [], proofs: { left: proofs } };
  const outcome = asManyAsHold({ report, sheet }, islandsOf(sheet), {}, {}, spent, (...asked) => {
    const failure = failures[sets.length];
    sets.push(asked[2]);
    return failure ? failure(asked[2]) : examineCut(...asked);
  });
  return { outcome, sets };
}

const middle = ({ from, to }: Bridge) => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
const areApart = (one: Bridge, other: Bridge): boolean =>
  Math.hypot(middle(one).x - middle(other).x, middle(one).y - middle(other).y) > one.width;

describe('a plan whose proof fails', () => {
  it('is made anew beside the bridge that is to blame, and holds all islands', () => {
    const { outcome, sets } = attempt([(bridges) => failed(bridges.slice(0, 1))]);
    const [first, second] = [defined(sets[0]), defined(sets[1])];
    expect(sets).toHaveLength(2);
    expect(second.every((each) => areApart(each, defined(first[0])))).toBe(true);
    expect(new Set(second.map(({ island }) => island)).size).toBe(2);
    expect(outcome.proven?.bridges).toHaveLength(second.length);
    expect(outcome.left.size).toBe(0);
  });

  it('has a bridge that came out a little narrow made wider where it stands', () => {
    const { sets } = attempt([(bridges) => failed(bridges.slice(0, 1), { narrow: new Set(bridges.slice(0, 1)) })]);
    const [narrow, wide] = [defined(sets[0]?.[0]), defined(sets[1]?.[0])];
    expect(wide.from).toEqual(narrow.from);
    expect(wide.width).toBeCloseTo(1.1 * narrow.width, 6);
  });

  it('goes on where proof after proof blames the bridges of one more island', () => {
    const rings = Array.from({ length: 12 }, (_, i) => ring(8 + 30 * i)).join('');
    const text = TEXT.replace(/70/g, '370').replace(/ d="[^"]*"/, ` d="${rings}"`);
    const blameLast = (bridges: readonly Bridge[]) =>
      failed(bridges.filter(({ island }) => island === bridges.at(-1)?.island));
    const { outcome } = attempt(
      Array.from({ length: 10 }, () => blameLast),
      { text, proofs: 20 },
    );
    expect(outcome.left.size).toBe(8);
    expect(outcome.proven).toBeDefined();
  });

  it('leaves out the island that is to blame when it was made anew twice, and tells why', () => {
    const blameFirst = (bridges: readonly Bridge[]) =>
      failed(bridges.filter(({ island }) => island === bridges[0]?.island));
    const { outcome, sets } = attempt([blameFirst, blameFirst, blameFirst]);
    expect(outcome.left.size).toBe(1);
    expect([...outcome.left.values()][0]?.reason).toBe('It would leave a loose tongue.');
    expect(new Set(sets.at(-1)?.map(({ island }) => island)).size).toBe(1);
    expect(outcome.proven).toBeDefined();
  });
});
