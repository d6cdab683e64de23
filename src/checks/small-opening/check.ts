import { formatMillimetres } from '../../config/values';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import { isCutOffAtEdge } from '../at-edge';
import type { StackCheck, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { shownThinOpenings } from '../later-paint';
import { contourSpan } from '../places';
import { isSpeckOpening } from '../specks';
import { describeThinPart } from '../thin-part';

/** Openings that are nowhere wide enough for paint. */
export const smallOpening: StackCheck = {
  meta: {
    id: 'small-opening',
    summary: 'An opening too small to cut or to spray through.',
    outcome: 'leave an opening too small to paint',
    severity: 'warning',
    reads: 'stack',
    fixes: ['open-up', 'remove-opening'],
    cure: ({ layer }) => `Open up the small opening in "${layer}"`,
    acceptable: true,
    afterFix: {
      refuses: true,
      family: 'thin-opening',
      unless: ['adds-opening'],
    },
    row: { wrong: 'an opening so small lets little paint through', click: 'widen it; remove it' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      const shown = shownThinOpenings(stencil, sheet, (part) => isOwn(stencil, sheet, part));
      for (const { part } of shown) yield describe(stencil, sheet, part);
    }
  },
};

/** Whether no other finding tells of it. */
function isOwn(stencil: Stencil, sheet: Sheet, part: ThinPlace): boolean {
  if (part.kind !== 'whole' || isCutOffAtEdge(stencil, sheet, part)) return false;
  return !isSpeckOpening(stencil, sheet, sheet.openings[part.polygon]);
}

function describe(stencil: Stencil, sheet: Sheet, part: ThinPlace): FindingDraft {
  const { opening: limit, material } = stencil.limits;
  const [width, least] = [part.cutWidth, limit].map(formatMillimetres);
  const opening = sheet.openings[part.polygon];
  const finding = describeThinPart(stencil, sheet, part, {
    limit,
    message: `Opening only ${width} wide (minimum ${least} for ${material}): little paint gets through.`,
    detail:
      `It is nowhere wider than ${width}: paint dries across it before it reaches the wall. Widen it to ${least}, or ` +
      'remove it. If your paint gets through less, lower limits.opening in tombolo.json.',
  });
  return opening ? { ...finding, span: contourSpan(stencil, sheet, opening.outer), related: [] } : finding;
}
