/** Adds bridges to some that stay as they are, until no island lifts too far. Sheet mm. */
import type { Assignment, Layout } from '../search/layout';
import { WEIGHTS } from '../search/weights';
import { HOPELESS, type Strengthened, strengthened, withManyWays } from './strengthen';

/** Of how far islands lift: bridges that take less off it are not worth their paint. */
const WORTH = 0.25;

/** @returns the same layout where more would do little */
export function addedFor(state: Assignment, layout: Layout): Layout {
  const swing = WEIGHTS.swing.value;
  const added = (by: Assignment, from: Layout): Strengthened =>
    strengthened(by, from, { isBold: true, hopeless: new Set(), addsOnly: true });
  const usual = added(state, layout);
  const wide = usual.most > swing ? added(withManyWays(state, usual.lifting), layout) : usual;
  const best = wide.most < usual.most ? wide : usual;
  if (best.most <= HOPELESS * swing) return best.layout;
  const few = strengthened(state, layout, { isBold: false, hopeless: new Set(best.lifting), addsOnly: true });
  return few.most <= (1 - WORTH) * few.before ? few.layout : layout;
}
