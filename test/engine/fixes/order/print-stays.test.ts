/** The best order, and the islands that it covers cut away: fewer islands, and the same print as a renderer shows it. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutCoveredIslands } from '../../../../src/engine/fixes/covered/islands';
import { applyEdits, check, reorderStack, sprayOrder } from '../../../../src/engine/index';
import { madeStack, svgOf } from '../../../stack/order/made-stacks';
import { farChanges } from '../../../stack/order/print-changes';
import { cases } from '../../../thorough';

const SLIP = 0.5;

function ordered(text: string): string {
  const report = check(text);
  const best = sprayOrder(report);
  if (typeof best === 'string' || best.moved.length === 0) return text;
  const outcome = reorderStack(report, undefined, best.order, best.moved);
  if (typeof outcome === 'string') throw new Error(outcome);
  return applyEdits(text, outcome.edits);
}

test('a stack in its best order, without the islands that are covered, prints the same', {
  timeout: 120_000,
}, async () => {
  let [moved, cut] = [0, 0];
  await fc.assert(
    fc.asyncProperty(madeStack, async (made) => {
      const before = svgOf(made);
      const best = sprayOrder(check(before));
      if (typeof best === 'string') throw new Error(best);
      const inOrder = ordered(before);
      moved += inOrder === before ? 0 : 1;
      const report = check(inOrder);
      const outcome = cutCoveredIslands(report, report.sheets);
      const cuts = outcome.cut?.cuts.reduce((sum, { islands }) => sum + islands.size, 0) ?? 0;
      expect(cuts + outcome.left.length).toBe(best.islands - best.after);
      cut += cuts;
      const after = outcome.cut ? applyEdits(inOrder, outcome.cut.edits) : inOrder;
      expect(await farChanges(before, after, SLIP)).toBe(0);
    }),
    { numRuns: cases(20, 6) },
  );
  expect(moved).toBeGreaterThan(cases(1, 0));
  expect(cut).toBeGreaterThan(cases(5, 1));
});
