import type { ThinPlace } from '../../sheet/thin-places';
import { formatMillimetres } from '../../config/length';
import type { Sheet } from '../../sheet/types';
import type { Check, Stencil } from '../check';
import type { Finding } from '../finding';
import { describeThinPart } from '../thin-part';

/** Places where an opening is too narrow for paint to come through cleanly. */
export const narrowOpening: Check = {
  id: 'narrow-opening',
  severity: 'warning',
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const part of sheet.thinOpenings) {
        if (part.kind !== 'whole') yield describe(stencil, sheet, part);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, part: ThinPlace): Finding {
  const limit = stencil.limits.opening;
  const what =
    part.kind === 'neck'
      ? `Slot ${formatMillimetres(part.cutWidth)} wide`
      : `Opening runs out into a point that is too fine for its last ${formatMillimetres(part.reach)}`;
  return describeThinPart(stencil, sheet, part, {
    check: 'narrow-opening',
    severity: 'warning',
    limit,
    message:
      `${what}; ${formatMillimetres(limit)} is the least for ${stencil.limits.material}, paint bridges over or ` +
      'bleeds in narrower ones. Open it up, close it, or lower limits.opening.',
  });
}
