import type { Check } from '../check';
import { problemsOf } from '../problems';

/** Path data that breaks the grammar: it is drawn up to the error, as every renderer does. */
export const unreadablePath: Check = {
  meta: {
    id: 'unreadable-path',
    summary: 'Path data that could not be read.',
    outcome: 'leave path data that cannot be read',
    severity: 'error',
    reads: 'file',
    fixes: [],
    acceptable: false,
    afterFix: { refuses: true, never: true },
    row: { wrong: 'a path is drawn up to the error only', click: '' },
  },
  run: (stencil) => problemsOf(stencil, unreadablePath.meta.id),
};
