import { formatArea, formatMillimetres } from '../../config/values';
import type { Point } from '../../geometry/base/curve-types';
import { boxesTouch, distanceToEdge, growBox } from '../../geometry/base/ring';
import { LEAST_SHEET, WRITTEN_STEP } from '../../geometry/base/tolerances';
import { interpolate } from '../../geometry/base/vector';
import { boxOfPolygon, clipToBox } from '../../geometry/boolean/index';
import { courseOf } from '../../sheet/cut-lines/course';
import { type DoubledLine, doubledLinesOf } from '../../sheet/cut-lines/index';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { HAIRLINE } from '../specks';
import { describeThinPart } from '../thin-part';

/** How near to the sheet's border an end of a neck lies on it, in mm. */
const ON_BORDER = WRITTEN_STEP;

/** mm: a web that is shorter and no wider than a hairline is where two openings nearly meet in a point. */
const CRACK = 2;

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
        if (part.kind === 'neck' && part.cutWidth > 0 && !endsAtBorder(sheet, part) && !isHairline(sheet, part))
          yield describe(stencil, sheet, part);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, part: ThinPlace): FindingDraft {
  const { bridge: limit, material } = stencil.limits;
  const [width, least] = [part.cutWidth, limit].map(formatMillimetres);
  const isBurnt = stencil.config.tool === 'laser';
  if (isCrack(part)) {
    return describeThinPart(stencil, sheet, part, {
      severity: 'hint',
      limit,
      message: `Web only ${width} wide (minimum ${least}): two openings nearly meet. They will run together here.`,
      detail:
        `A web no wider than ${formatMillimetres(HAIRLINE)} and shorter than ${formatMillimetres(CRACK)} that holds nothing, ` +
        `or of any length under ${formatMillimetres(LEAST_SHEET)}, is gone when the sheet is cut, ` +
        'and nothing of it is seen in the print. Leave it, or widen it where it is meant to stand.',
    });
  }
  return describeThinPart(stencil, sheet, part, {
    ...(part.holds && { severity: 'error' }),
    limit,
    message: `Bridge only ${width} wide (minimum ${least} for ${material}): it will tear${isBurnt ? ' or burn through' : ''}.`,
    detail:
      `A narrower bridge tears when the sheet is lifted${isBurnt ? ', or the beam burns through it' : ''}.` +
      `${held(part)} Widen it to ${least}. If your material bears less, lower limits.bridge in tombolo.json.`,
  });
}

/** What is thinner than any sheet that stands is gone however long it is. */
function isCrack({ cutWidth, length, holds }: ThinPlace): boolean {
  if (holds) return false;
  return cutWidth < LEAST_SHEET || (cutWidth <= HAIRLINE && length < CRACK);
}

function held({ holds }: ThinPlace): string {
  return holds ? ` It alone holds a piece of ${formatArea(holds.area)}, which would fall out with it.` : '';
}

/**
 * What is too narrow to be cut at all is no bridge: the piece that it does not hold is told as an island, and of two
 * openings that it does not part it is told that they are one. The rest is told as a bridge.
 */
function isHairline(sheet: Sheet, { cutWidth, from, to }: ThinPlace): boolean {
  if (cutWidth >= LEAST_SHEET) return false;
  const middle = interpolate(from, to, 0.5);
  const around = growBox({ minX: middle.x, minY: middle.y, maxX: middle.x, maxY: middle.y }, LEAST_SHEET);
  const near = sheet.pieces.filter(
    ({ polygon }) => boxesTouch(boxOfPolygon(polygon), around) && clipToBox([polygon], around).length > 0,
  );
  return near.length > 1 || doubledLinesOf(sheet.layer).some((doubled) => isCourseNear(doubled, middle));
}

function isCourseNear(doubled: DoubledLine, { x, y }: Point): boolean {
  return courseOf(doubled).some(({ ax, ay, bx, by }) => distanceToEdge(x, y, ax, ay, bx, by) <= LEAST_SHEET);
}

/** A web between an opening and the sheet's edge is the business of `edge-opening`. */
function endsAtBorder({ frame }: Sheet, { from, to }: ThinPlace): boolean {
  const onBorder = ({ x, y }: Point) =>
    Math.min(x - frame.minX, frame.maxX - x, y - frame.minY, frame.maxY - y) <= ON_BORDER;
  return onBorder(from) || onBorder(to);
}
