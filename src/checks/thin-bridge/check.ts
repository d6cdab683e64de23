import { formatArea, formatMillimetres } from '../../config/values';
import type { Point } from '../../geometry/base/curve-types';
import { WRITTEN_STEP } from '../../geometry/base/tolerances';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { describeThinPart } from '../thin-part';

/** How near to the sheet's border an end of a neck lies on it, in mm. */
const ON_BORDER = WRITTEN_STEP;

/** Necks of material under the limit. */
export const thinBridge: Check = {
  meta: {
    id: 'thin-bridge',
    summary: 'A bridge too narrow for the material.',
    outcome: 'leave a bridge too thin to hold',
    severity: 'warning',
    reads: 'file',
    fixes: ['widen-bridge'],
    cure: ({ layer }) => `Widen the thin bridge in "${layer}"`,
    acceptable: true,
    afterFix: {
      refuses: true,
      unless: ['adds-opening', 'removes-bridge'],
    },
    row: { wrong: 'a bridge tears, lifts, or burns through', click: 'widen it' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const part of sheet.thinMaterial) {
        if (part.kind === 'neck' && part.cutWidth > 0 && !endsAtBorder(sheet, part))
          yield describe(stencil, sheet, part);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, part: ThinPlace): FindingDraft {
  const { bridge: limit, material } = stencil.limits;
  const [width, least] = [part.cutWidth, limit].map(formatMillimetres);
  const isBurnt = stencil.config.tool === 'laser';
  return describeThinPart(stencil, sheet, part, {
    ...(part.holds && { severity: 'error' }),
    limit,
    message: `Bridge only ${width} wide (minimum ${least} for ${material}): it will tear${isBurnt ? ' or burn through' : ''}.`,
    detail:
      `A narrower bridge tears when the sheet is lifted${isBurnt ? ', or the beam burns through it' : ''}.` +
      `${held(part)} Widen it to ${least}. If your material bears less, lower limits.bridge in tombolo.json.`,
  });
}

function held({ holds }: ThinPlace): string {
  return holds ? ` It alone holds a piece of ${formatArea(holds.area)}, which would fall out with it.` : '';
}

/** A web between an opening and the sheet's edge is the business of `edge-opening`. */
function endsAtBorder({ frame }: Sheet, { from, to }: ThinPlace): boolean {
  const onBorder = ({ x, y }: Point) =>
    Math.min(x - frame.minX, frame.maxX - x, y - frame.minY, frame.maxY - y) <= ON_BORDER;
  return onBorder(from) || onBorder(to);
}
