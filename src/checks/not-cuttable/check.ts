import type { Check } from '../check';
import { problemsOf } from '../problems';

/** What is painted on a screen but cannot be cut from a sheet: text, images, gradients, soft edges. */
export const notCuttable: Check = {
  meta: {
    id: 'not-cuttable',
    summary: 'Something that cannot be cut: text, an image, a gradient, a filter, a mask, part opacity.',
    outcome: 'leave something that cannot be cut',
    severity: 'error',
    reads: 'file',
    fixes: [],
    acceptable: true,
    afterFix: { refuses: true, never: true },
    row: { wrong: 'text, images, gradients: nothing to cut along', click: '' },
  },
  run: (stencil) => problemsOf(stencil, notCuttable.meta.id),
};
