import type { Config } from '../../config/types';
import { formatSides } from '../../config/values';
import { isNoSheetSide } from '../../drawing/reach';
import type { Drawing } from '../../drawing/types';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import type { Wording } from '../../text/wording';
import type { Check } from '../check';
import { rootSpan } from '../places';

/** mm: sizes that differ by less are the same to a ruler. */
const SAME_SIZE = DRAWN_ALIKE;

/** Files that leave it open how large they are cut, or leave it to `tombolo.json`, which no other program reads. */
export const unstatedSize: Check = {
  meta: {
    id: 'unstated-size',
    summary: 'A file that does not say itself how large it is cut.',
    outcome: 'leave the size unstated',
    severity: 'info',
    reads: 'file',
    fixes: ['state-size', 'state-size-in-units'],
    acceptable: true,
    afterFix: { refuses: true, never: true },
    row: { wrong: 'the file comes out at the wrong size', click: 'write it into the file' },
  },
  *run(stencil) {
    const { drawing, config } = stencil;
    if (!drawing.document.root || config.sizeOverridden) return;
    const wording = describe(drawing, config);
    if (wording) yield { ...wording, span: rootSpan(stencil), related: [] };
  },
};

const DETAIL =
  'Programs disagree about how large a px is, so the artwork may be cut at another size. State its real width and ' +
  'height with their unit on the svg element, as in width="148mm".';

function describe({ width, height, sizeStated, ownSize }: Drawing, config: Config): Wording | undefined {
  // That is said already, and no measure that anybody could want.
  if ([width, height, ownSize.width, ownSize.height].some(isNoSheetSide)) return undefined;
  const size = formatSides(width, height, 1);
  const told = (message: string): Wording => ({ message, detail: DETAIL });
  if (!sizeStated && config.width === undefined && config.height === undefined) {
    return told(`No size in the file: at 96 px to the inch the artwork is ${size}. State its real width and height.`);
  }
  const opensAt = formatSides(ownSize.width, ownSize.height, 1);
  const differs = Math.max(Math.abs(ownSize.width - width), Math.abs(ownSize.height - height)) > SAME_SIZE;
  if (!ownSize.physical) {
    return told(
      differs
        ? `The file itself does not say its size: other programs will open it at ${opensAt}, not ${size}.`
        : `The file itself does not say its size: programs may open it at another than ${size}.`,
    );
  }
  if (!differs) return undefined;
  return told(`The file itself says ${opensAt}: other programs will open it at that, not at ${size}.`);
}
