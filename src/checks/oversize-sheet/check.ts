import { shortSides } from '../../config/values';
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
    const [own, most] = [shortSides(...size), shortSides(...bed)];
    const isTurned = fit === 'turned';
    yield {
      ...(isTurned && { severity: 'info' }),
      message: isTurned
        ? `Sheet of ${own} fits the bed (${most}) only at an odd angle.`
        : `Sheet of ${own} does not fit the bed (${most}) either way round.`,
      detail:
        (isTurned ? 'A sheet at an odd angle is easily cut askew. ' : 'What lies beyond the bed is not cut. ') +
        'Scale the artwork to fit, lower the margin, or divide the artwork into several sheets.',
      span: rootSpan(stencil),
      measure: { value: Math.max(...size), limit: Math.max(...bed), unit: 'mm' },
      related: [],
    };
  },
};
