import { formatMillimetres } from '../../config/values';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { describeThinPart } from '../thin-part';

/** Places where an opening is too narrow for paint to come through cleanly. */
export const narrowOpening: Check = {
  meta: {
    id: 'narrow-opening',
    summary: 'An opening with a place too narrow to cut or to spray through.',
    outcome: 'leave a slot too narrow to paint',
    severity: 'warning',
    reads: 'file',
    fixes: ['open-up', 'close-slot'],
    acceptable: true,
    afterFix: {
      refuses: true,
      family: 'thin-opening',
      unless: ['adds-opening'],
    },
    row: { wrong: 'paint skins over a slot, or is drawn under the sheet', click: 'open it up; close it' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const part of sheet.thinOpenings) {
        if (part.kind !== 'whole') yield describe(stencil, sheet, part);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, part: ThinPlace): FindingDraft {
  const limit = stencil.limits.opening;
  const what =
    part.kind === 'neck'
      ? `Slot ${formatMillimetres(part.cutWidth)} wide`
      : `Opening runs out into a point that is too fine for its last ${formatMillimetres(part.reach)}`;
  return describeThinPart(stencil, sheet, part, {
    limit,
    message:
      `${what}; ${formatMillimetres(limit)} is the least for ${stencil.limits.material}, paint bridges over or ` +
      'bleeds in narrower ones. Open it up, close it, or lower limits.opening.',
  });
}
