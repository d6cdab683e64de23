import { formatMillimetres } from '../../config/values';
import type { Sheet } from '../../sheet/types';
import { isCutOffAtEdge } from '../at-edge';
import type { StackCheck, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { type ShownPart, shownThinOpenings } from '../later-paint';
import { describeThinPart } from '../thin-part';

/** Places where an opening is too narrow for paint to come through cleanly. */
export const narrowOpening: StackCheck = {
  meta: {
    id: 'narrow-opening',
    summary: 'An opening with a place too narrow to cut or to spray through.',
    outcome: 'leave a slot too narrow to paint',
    severity: 'warning',
    reads: 'stack',
    fixes: ['open-up', 'shorten-tip', 'close-slot'],
    cure: ({ layer }) => `Open up the narrow place in "${layer}"`,
    acceptable: true,
    afterFix: {
      refuses: true,
      family: 'thin-opening',
      unless: ['adds-opening'],
    },
    row: {
      wrong: 'paint clogs a slot, or creeps under the sheet and bleeds',
      click: 'widen it; close it; shorten the tip',
    },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const each of shownThinOpenings(stencil, sheet)) {
        if (each.part.kind !== 'whole' && !isCutOffAtEdge(stencil, sheet, each.part))
          yield describe(stencil, sheet, each);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, { part, shown }: ShownPart): FindingDraft {
  const { opening: limit, material } = stencil.limits;
  const [width, reach, least] = [shown.cutWidth, shown.reach, limit].map(formatMillimetres);
  return describeThinPart(stencil, sheet, part, {
    limit,
    shown,
    message:
      part.kind === 'neck'
        ? `Slot only ${width} wide (minimum ${least} for ${material}): paint will clog it or bleed.`
        : `Tip too fine to paint: last ${reach} narrower than ${least} (minimum for ${material}).`,
    detail:
      'Paint clogs in a narrower slot, or creeps under the sheet beside it and bleeds. Widen it to ' +
      `${least}, or close it where the line may end. If your paint gets through less, lower limits.opening in ` +
      'tombolo.json.',
  });
}
