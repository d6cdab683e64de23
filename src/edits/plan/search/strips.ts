/** The ground that bridges keep free of others. */
import { memoizeByIdentity } from '../../../geometry/base/derived-facts';
import { boxesTouch } from '../../../geometry/base/ring';
import { boxOfCorners, type Strip, stripAlong } from '../../strip/strip';
import type { ScoredCandidate } from '../score';

/** With half a width to spare all round, so that two bridges never share an end. */
export const stripOf = memoizeByIdentity(
  'ground of a bridge',
  ({ from, to, width }: ScoredCandidate): Strip => stripAlong(from, to, 2 * width, width / 2),
);

/** Of the strips those that may touch one of the ways across. */
export function stripsAmong(taken: readonly Strip[], ways: readonly ScoredCandidate[]): Strip[] {
  if (ways.length === 0 || taken.length === 0) return [];
  const around = boxOfCorners(ways.flatMap((way) => stripOf(way).corners));
  return taken.filter(({ corners }) => boxesTouch(boxOfCorners(corners), around));
}
