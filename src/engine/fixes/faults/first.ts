/** What must be mended first, where a change is refused for a fault that another one leads to. */

import type { Finding } from '../../../checks/finding';
import { distance } from '../../../geometry/base/vector';
import type { Report } from '../../../report/report';
import { metaOf } from '../../metas';
import { groupOf } from './compare';

/**
 * A new fault where there is one of the same kind already, in the same layer or between the same two, is what becomes of
 * that one: a seam without overlap opens as soon as one of its edges moves.
 * @param against the new faults
 * @param gone what the change itself mends
 * @returns a sentence; undefined where nothing is known
 */
export function whatFirst(
  reports: readonly Report[],
  against: readonly Finding[],
  gone: readonly Finding[],
): string | undefined {
  const open = reports.flatMap(({ complete }) => complete).filter((finding) => !gone.includes(finding));
  for (const fault of against) {
    const alike = open.filter((finding) => groupOf(finding) === groupOf(fault));
    const nearest = alike.reduce<Finding | undefined>(
      (best, each) => (best && awayFrom(fault, best) <= awayFrom(fault, each) ? best : each),
      undefined,
    );
    const first = nearest && sentenceOf(nearest);
    if (first) return first;
  }
  return undefined;
}

/** "Extend "Water" under "Fur" first." */
export function sentenceOf(finding: Finding): string | undefined {
  const cure = metaOf(finding.check)?.cure?.(finding);
  return cure && `${cure} first.`;
}

function awayFrom({ at }: Finding, { at: other }: Finding): number {
  return at && other ? distance(at, other) : Infinity;
}
