import type { CheckId } from '../config/check-id';
import type { Stencil } from './check';
import type { FindingDraft } from './finding';

/** What reading the drawing could not take, as findings of the check it belongs to. */
export function* problemsOf(stencil: Stencil, check: CheckId): Iterable<FindingDraft> {
  for (const { check: of, ...problem } of stencil.drawing.problems) {
    if (of === check) yield { ...problem, related: [] };
  }
}
