import type { Check } from '../check';
import { problemsOf } from '../problems';

/** XML that a conforming reader would refuse, or that does not say what it seems to. */
export const unreadableMarkup: Check = {
  meta: {
    id: 'unreadable-markup',
    summary: 'Markup that could not be read.',
    outcome: 'leave markup that cannot be read',
    severity: 'error',
    reads: 'file',
    fixes: [],
    acceptable: false,
    afterFix: { refuses: true, never: true },
    row: { wrong: "the cutter's program stops, or drops the rest", click: '' },
  },
  *run(stencil) {
    const { problems, text } = stencil.drawing.document;
    for (const { message, span, severity: gravity } of problems) {
      yield { ...(gravity !== 'fatal' && { severity: 'warning' }), message, span, related: [] };
    }
    // That an empty file holds no svg element has been said.
    if (text.trim() !== '') yield* problemsOf(stencil, unreadableMarkup.meta.id);
  },
};
