import type { Check } from '../check';
import { problemsOf } from '../problems';

/** XML that a conforming reader would refuse, or that does not say what it seems to. */
export const unreadableMarkup: Check = {
  id: 'unreadable-markup',
  severity: 'error',
  *run(stencil) {
    for (const { message, span, severity: gravity } of stencil.drawing.document.problems) {
      const severity = gravity === 'fatal' ? 'error' : 'warning';
      yield { check: 'unreadable-markup', severity, message, span, related: [] };
    }
    yield* problemsOf(stencil, 'unreadable-markup');
  },
};
