import { formatSides } from '../../config/values';
import type { Check } from '../check';
import { rootSpan } from '../places';

/** Files that leave it open how large they are cut. */
export const unstatedSize: Check = {
  meta: {
    id: 'unstated-size',
    summary: 'A file that states no physical size.',
    outcome: 'leave the size unstated',
    severity: 'info',
    reads: 'file',
    fixes: ['state-size'],
    acceptable: true,
    afterFix: { refuses: true, never: true, names: ['an unstated size', 'unstated sizes'] },
    row: { wrong: 'the file comes out at the wrong size', click: 'state it' },
  },
  *run(stencil) {
    const { drawing, config } = stencil;
    const { root } = drawing.document;
    if (!root || drawing.sizeStated || config.width !== undefined || config.height !== undefined) return;
    const size = formatSides(drawing.width, drawing.height, 1);
    yield {
      message:
        `No physical size is stated; at 96 px to the inch the artwork is ${size}, and all measures stand on ` +
        'that guess. State the size: width="148mm" on the svg element, or "size" in tombolo.json.',
      span: rootSpan(stencil),
      related: [],
    };
  },
};
