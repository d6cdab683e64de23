import { formatSides } from '../../config/values';
import { fitOf } from '../../sheet/fit-bed';
import type { Check } from '../check';
import { rootSpan } from '../places';

/** Sheets that the cutter's bed cannot take. All layers of a file share one frame, so it is said once. */
export const oversizeSheet: Check = {
  meta: {
    id: 'oversize-sheet',
    summary: 'A sheet that does not fit the bed either way round.',
    outcome: 'make the sheet too large for the bed',
    severity: 'error',
    reads: 'file',
    fixes: ['scale-to-fit', 'scale-stack'],
    acceptable: true,
    afterFix: { refuses: true, never: true },
    row: { wrong: 'the sheet is larger than the bed', click: 'scale it to fit' },
  },
  *run(stencil) {
    const { bed } = stencil.config;
    const frame = stencil.sheets[0]?.frame;
    if (!bed || !frame) return;
    const size: [number, number] = [frame.maxX - frame.minX, frame.maxY - frame.minY];
    const fit = fitOf(size, bed);
    if (fit === 'upright') return;
    const fits = fit === 'turned' ? 'fits' : 'does not fit';
    const what = `The sheet of ${formatSides(...size, 1)} ${fits} the bed of ${formatSides(...bed, 1)}`;
    yield {
      ...(fit === 'turned' && { severity: 'info' }),
      message:
        fit === 'turned'
          ? `${what} only when it is turned by an odd angle, where it is easily cut askew. Make it smaller, or ` +
            'lower the margin.'
          : `${what} whichever way it is turned: what lies beyond is not cut. Make it smaller, lower the ` +
            'margin, or part it.',
      span: rootSpan(stencil),
      measure: { value: Math.max(...size), limit: Math.max(...bed), unit: 'mm' },
      related: [],
    };
  },
};
