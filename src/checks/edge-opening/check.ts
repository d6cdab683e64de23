import { formatMillimetres } from '../../config/values';
import type { Box, Polygon, Ring } from '../../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../../geometry/base/ring';
import { WRITTEN_STEP } from '../../geometry/base/tolerances';
import { boxOfPolygon } from '../../geometry/boolean/index';
import type { Sheet } from '../../sheet/types';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { inLayer, spanAt } from '../places';

/** Closer to the border than this, in mm, an opening runs into it. */
const TOUCHING = WRITTEN_STEP;

/** Openings that leave no rim, or too thin a one, at the sheet's edge. */
export const edgeOpening: Check = {
  meta: {
    id: 'edge-opening',
    summary: 'An opening across the edge of the sheet, or too near it.',
    outcome: "bring an opening too near the sheet's edge",
    severity: 'error',
    reads: 'file',
    fixes: [],
    acceptable: true,
    afterFix: {
      refuses: true,
      unless: ['adds-opening'],
    },
    row: { wrong: 'the rim tears, the sheet comes apart', click: '' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      const clear = growBox(sheet.frame, -stencil.limits.bridge);
      for (const opening of sheet.openings) {
        if (boxContainsBox(clear, boxOfPolygon(opening))) continue;
        const nearest = nearestToBorder(opening, sheet.frame);
        if (nearest.distance < stencil.limits.bridge) yield describe(stencil, sheet, opening, nearest);
      }
    }
  },
};

interface Nearest {
  readonly x: number;
  readonly y: number;
  /** mm to the border of the sheet. */
  readonly distance: number;
}

function describe(stencil: Stencil, sheet: Sheet, opening: Polygon, { x, y, distance }: Nearest): FindingDraft {
  const { bridge: limit, material } = stencil.limits;
  const [rim, least] = [distance, limit].map(formatMillimetres);
  const isAcross = distance <= TOUCHING;
  return {
    message: isAcross
      ? `Opening crosses the sheet's edge (minimum rim ${least}): the sheet will come apart there.`
      : `Rim only ${rim} wide at the sheet's edge (minimum ${least} for ${material}): it will tear.`,
    detail:
      `${isAcross ? 'Nothing is left of the sheet there, and paint runs over its edge' : 'Only a thin strip is left of the sheet there'}. ` +
      'Move the opening inwards, or add sheet around the artwork with "margin" in tombolo.json.',
    span: spanAt(stencil, sheet, { x, y }),
    ...inLayer(sheet),
    at: { x, y },
    measure: { value: distance, limit, unit: 'mm' },
    related: [],
    subject: { kind: 'opening', sheet, opening },
  };
}

/** A rectangle's border is met first at a vertex: its distance is linear along every edge of the opening. */
function nearestToBorder({ outer }: Polygon, frame: Box): Nearest {
  let best: Nearest = { x: 0, y: 0, distance: Infinity };
  for (let i = 0; i < outer.length; i += 2) {
    const [x, y] = vertex(outer, i);
    const distance = Math.min(x - frame.minX, frame.maxX - x, y - frame.minY, frame.maxY - y);
    if (distance < best.distance) best = { x, y, distance };
  }
  return best;
}

function vertex(ring: Ring, i: number): [number, number] {
  return [ring[i] as number, ring[i + 1] as number];
}
