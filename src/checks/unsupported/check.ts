import type { Check } from '../check';
import { problemsOf } from '../problems';

/** What is valid SVG but is not read yet; the measures leave it out, and say so. */
export const unsupported: Check = {
  id: 'unsupported',
  severity: 'info',
  run: (stencil) => problemsOf(stencil, 'unsupported'),
};
