import type { DrawingProblem } from '../drawing/types';
import type { Stencil } from './check';
import type { Finding } from './finding';

/** What reading the drawing could not take, as findings of the check it belongs to. */
export function* problemsOf(stencil: Stencil, check: DrawingProblem['check']): Iterable<Finding> {
  for (const problem of stencil.drawing.problems) {
    if (problem.check === check) yield { ...problem, related: [] };
  }
}
