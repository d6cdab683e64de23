import type { Check } from '../check';
import { problemsOf } from '../problems';

/** What is painted on a screen but cannot be cut from a sheet: text, images, gradients, soft edges. */
export const notCuttable: Check = {
  id: 'not-cuttable',
  severity: 'error',
  run: (stencil) => problemsOf(stencil, 'not-cuttable'),
};
