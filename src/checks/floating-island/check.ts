import { formatMillimetres } from '../../config/values';
import type { Piece, Sheet } from '../../sheet/types';
import type { Check, Stencil } from '../check';
import type { FindingDraft } from '../finding';
import { contourSpan, inLayer } from '../places';

/** Pieces of the sheet that hang on nothing. */
export const floatingIsland: Check = {
  meta: {
    id: 'floating-island',
    summary: 'A piece of material that hangs on nothing and falls out when the sheet is cut.',
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
    acceptable: true,
    afterFix: { refuses: true, unless: ['adds-opening', 'removes-bridge'] },
    row: { wrong: 'a piece hangs on nothing and falls out; its place is painted', click: 'bridges; cut it away' },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const piece of sheet.pieces) {
        if (piece.island) yield describe(stencil, sheet, piece);
      }
    }
  },
};

function describe(stencil: Stencil, sheet: Sheet, piece: Piece): FindingDraft {
  return {
    message:
      `Island of ${area(piece)} hangs on nothing: it falls out when the sheet is cut, and paint covers its place.` +
      `${burnt(sheet)} Put a bridge of at least ${formatMillimetres(stencil.limits.bridge)} across the opening, ` +
      'or cut the island away.',
    span: contourSpan(stencil, sheet, piece.polygon.outer),
    ...inLayer(sheet),
    at: piece.label,
    measure: { value: piece.area, limit: 0, unit: 'mm²' },
    related: [],
    subject: { kind: 'island', sheet, piece },
  };
}

function area({ area: value }: Piece): string {
  return `${value < 1 ? value.toPrecision(2) : value.toFixed(1)} mm²`;
}

/** Says so where a tie may be drawn but does not survive the cut. */
function burnt(sheet: Sheet): string {
  const lost = sheet.thinMaterial.some((part) => part.kind === 'neck' && part.cutWidth <= 0);
  return lost ? ` Ties narrower than the kerf of ${formatMillimetres(sheet.kerf)} burn through.` : '';
}
