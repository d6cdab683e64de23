import type { Check } from '../check';
import { problemsOf } from '../problems';

/** Path data that breaks the grammar: it is drawn up to the error, as every renderer does. */
export const unreadablePath: Check = {
  id: 'unreadable-path',
  severity: 'error',
  run: (stencil) => problemsOf(stencil, 'unreadable-path'),
};
