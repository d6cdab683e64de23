import { formatArea, formatMillimetres } from '../../config/values';
import { interpolate } from '../../geometry/base/vector';
import { buildSegmentIndex, nearestSegment } from '../../geometry/spatial/segment-index';
import type { Piece, Sheet } from '../../sheet/types';
import { isLooseAtEdge } from '../at-edge';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { contourSpan, inLayer } from '../places';

/** Pieces of the sheet that are not attached to anything. */
export const floatingIsland: Check = {
  meta: {
    id: 'floating-island',
    summary: 'An island: a piece that is not attached to anything and falls out when the sheet is cut.',
    outcome: 'leave an island that falls out',
    severity: 'error',
    reads: 'file',
    fixes: [
      'bridge-island',
      'bridge-island-shortest',
      'bridge-island-two',
      'bridge-layer',
      'bridge-layer-upright',
      'bridge-file',
      'cut-island-away',
    ],
    cure: ({ layer }) => `Bridge the island in "${layer}"`,
    acceptable: true,
    afterFix: { refuses: true, unless: ['adds-opening', 'removes-bridge'] },
    row: {
      wrong: 'a piece is not attached to anything and falls out; its place is painted',
      click: 'bridge it; remove it',
    },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const piece of sheet.pieces) {
        if (piece.island && !isLooseAtEdge(stencil, sheet, piece)) yield describe(stencil, sheet, piece);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, piece: Piece): FindingDraft {
  const { bridge, material } = stencil.limits;
  const least = formatMillimetres(bridge);
  const isBurnt = isLeftByKerf(sheet, piece);
  return {
    message:
      `Island, ${formatArea(piece.area)}: it will fall out. ` +
      (isBurnt
        ? `Its bridge is thinner than the ${formatMillimetres(sheet.kerf)} kerf and burns away.`
        : `Bridge it (${least} or wider) or remove it.`),
    detail:
      'Nothing holds this piece of the sheet: it falls out when the sheet is cut, and paint covers its place. Bridge ' +
      `it with strips of ${least} or wider (the minimum for ${material}, or limits.bridge in tombolo.json), or remove ` +
      'the island, and its area is painted too.',
    span: contourSpan(stencil, sheet, piece.polygon.outer),
    ...inLayer(sheet),
    at: piece.label,
    measure: { value: piece.area, limit: 0, unit: 'mm²' },
    related: [],
    subject: { kind: 'island', sheet, piece },
  };
}

/** Whether it has bridges as drawn, which the tool takes away: they are narrower than the kerf. */
function isLeftByKerf({ kerf, thinMaterial }: Sheet, { polygon }: Piece): boolean {
  if (kerf <= 0) return false;
  const lost = thinMaterial.filter(({ kind, cutWidth }) => kind === 'neck' && cutWidth <= 0);
  if (lost.length === 0) return false;
  const edges = buildSegmentIndex([polygon]);
  return lost.some(({ from, to, length }) => nearestSegment(edges, interpolate(from, to, 0.5), length + kerf));
}
