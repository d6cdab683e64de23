import type { Point } from '../../geometry/base/curve-types';
import { add, perpendicular, subtract } from '../../geometry/base/vector';
import type { Edge } from '../../geometry/polygon/self-intersection';
import { type SelfIntersection, selfIntersectionsOf } from '../../sheet/cut-lines/self-intersections';
import type { Sheet } from '../../sheet/types';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer, spanAt } from '../places';

/** mm²: half a millimetre square. What changes hands in a smaller loop nobody sees; common practice, no source. */
const UNSEEN = 0.25;

/** Outlines that cross themselves, where it changes what is cut. */
export const crossedOutline: Check = {
  meta: {
    id: 'crossed-outline',
    summary: 'An outline that crosses itself where it changes what is cut.',
    outcome: 'make an outline cross itself',
    severity: 'warning',
    reads: 'file',
    fixes: [],
    acceptable: true,
    afterFix: {
      refuses: true,
      unless: ['adds-opening'],
    },
    row: { wrong: 'a line crosses itself and cuts a bit loose', click: '' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const crossed of selfIntersectionsOf(sheet)) yield describe(stencil, sheet, crossed);
    }
  },
};

function describe(
  stencil: Stencil,
  sheet: Sheet,
  { area, leftOut, crossing: { at, edges } }: SelfIntersection,
): FindingDraft {
  const [span, other] = edges.map((edge) => spanAt(stencil, sheet, at, relatedOf(edge, at)));
  const stays = leftOut !== (sheet.layer.reading === 'sheet');
  const fate = stays ? 'stay in the sheet, held by corners at best' : 'be cut out, though the rest is not';
  return {
    message: `Outline crosses itself: ${area.toFixed(2)} mm² of what it encloses will ${fate}.`,
    detail: 'Programs and cutters read such a crossing in different ways. Draw each part as an outline of its own.',
    span: span as FindingDraft['span'],
    ...inLayer(sheet),
    at,
    measure: { value: area, limit: 0, unit: 'mm²' },
    ...(area < UNSEEN && { severity: 'hint' }),
    related: [{ message: 'The line it crosses', span: other as FindingDraft['span'], at }],
  };
}

/** From where the edge is seen square. */
function relatedOf([from, to]: Edge, at: Point): Point {
  return add(at, perpendicular(subtract(to, from)));
}
