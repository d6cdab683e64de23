import { formatArea, formatMillimetres } from '../../config/values';
import { memoizeByIdentity } from '../../geometry/base/derived-facts';
import { boxesTouch, growBox } from '../../geometry/base/ring';
import { LEAST_SHEET } from '../../geometry/base/tolerances';
import { interpolate } from '../../geometry/base/vector';
import { boxOfPolygon } from '../../geometry/boolean/index';
import { buildSegmentIndex, nearestSegment } from '../../geometry/spatial/segment-index';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Piece, Sheet } from '../../sheet/types';
import { isLooseAtEdge } from '../at-edge';
import type { StackCheck, StackStencil } from '../check';
import type { FindingDraft, IslandCover } from '../finding';
import { coverInWords, islandCover } from '../later-paint';
import { contourSpan, inLayer } from '../places';
import { isSpeckIsland } from '../specks';

/** Pieces of the sheet that are not attached to anything. */
export const floatingIsland: StackCheck = {
  meta: {
    id: 'floating-island',
    summary: 'An island: a piece that is not attached to anything and falls out when the sheet is cut.',
    outcome: 'leave an island that falls out',
    severity: 'error',
    reads: 'stack',
    foundIn: 'file',
    fixes: [
      'cut-covered-island',
      'bridge-island',
      'bridge-island-shortest',
      'bridge-island-two',
      'cut-covered-layer',
      'bridge-layer',
      'bridge-layer-upright',
      'cut-covered-file',
      'bridge-file',
      'two-sheets',
      'cut-island-away',
    ],
    cure: ({ layer, subject }) =>
      `${subject?.kind === 'island' && subject.cover ? 'Cut away' : 'Bridge'} the island in "${layer}"`,
    acceptable: true,
    afterFix: { refuses: true, unless: ['adds-opening', 'removes-bridge'] },
    row: {
      wrong: 'a piece is not attached to anything and falls out; its place is painted',
      click: 'bridge it; cut it away where later colours cover it; remove it',
    },
  },
  *run(stencil) {
    for (const sheet of stencil.sheets) {
      for (const piece of sheet.pieces) {
        if (!piece.island || isLooseAtEdge(stencil, sheet, piece) || isSpeckIsland(stencil, piece)) continue;
        yield describe(stencil, sheet, piece);
      }
    }
  },
};

function describe(stencil: StackStencil, sheet: Sheet, piece: Piece): FindingDraft {
  const cover = islandCover(stencil.stack, sheet, piece, stencil.limits.slip);
  return {
    message: `Island, ${formatArea(piece.area)}: it will fall out. ${cureOf(stencil, sheet, piece, cover)}`,
    detail: detailOf(stencil, cover),
    span: contourSpan(stencil, sheet, piece.polygon.outer),
    ...inLayer(sheet),
    at: piece.label,
    measure: { value: piece.area, limit: 0, unit: 'mm²' },
    related: [],
    subject: { kind: 'island', sheet, piece, ...(cover && { cover }) },
    // Nothing of it is seen, and nothing else is lost with it: the print is the same whether it is cut away or falls out.
    ...(cover && { severity: 'info' }),
  };
}

function cureOf({ limits }: StackStencil, sheet: Sheet, piece: Piece, cover: IslandCover | undefined): string {
  if (cover) return `Cut it away: ${coverInWords(cover)}.`;
  return lostBridge(sheet, piece) ?? `Bridge it (${formatMillimetres(limits.bridge)} or wider) or remove it.`;
}

function detailOf({ limits }: StackStencil, cover: IslandCover | undefined): string {
  const least = formatMillimetres(limits.bridge);
  const minimum = `strips of ${least} or wider (the minimum for ${limits.material}, or limits.bridge in tombolo.json)`;
  const falls =
    'Nothing holds this piece of the sheet: it falls out when the sheet is cut, and paint covers its place.';
  if (!cover) {
    return `${falls} Bridge it with ${minimum}, or remove the island, and its area is painted too.`;
  }
  const rim = cover.rim ? `, which is narrower than the ${formatMillimetres(limits.slip)} that sheets may slip` : '';
  return (
    `${falls} But ${coverInWords(cover, Infinity)}${rim}, so the print is the same without it: cut it away, and there ` +
    `is no piece to lose. Or bridge it with ${minimum}.`
  );
}

/** What becomes of the bridges that it has as drawn, where the tool takes them, or next to all of them. */
function lostBridge({ kerf, thinMaterial }: Sheet, { polygon }: Piece): string | undefined {
  const box = boxOfPolygon(polygon);
  const near = lostNecks(thinMaterial).filter(({ middle: { x, y }, length }) =>
    boxesTouch(box, growBox({ minX: x, minY: y, maxX: x, maxY: y }, length + kerf)),
  );
  if (near.length === 0) return undefined;
  const edges = buildSegmentIndex([polygon]);
  const own = near.filter(({ middle, length }) => nearestSegment(edges, middle, length + kerf));
  if (own.length === 0) return undefined;
  return own.every(({ cutWidth }) => cutWidth <= 0)
    ? `Its bridge is thinner than the ${formatMillimetres(kerf)} kerf and burns away.`
    : `What joins it is under ${formatMillimetres(LEAST_SHEET)} wide and cannot be cut.`;
}

/** The necks that the tool takes, or next to all of them: a sheet of many islands is asked for each of them. */
const lostNecks = memoizeByIdentity('lost necks', (thinMaterial: readonly ThinPlace[]) =>
  thinMaterial
    .filter(({ kind, cutWidth }) => kind === 'neck' && cutWidth < LEAST_SHEET)
    .map(({ from, to, length, cutWidth }) => ({ middle: interpolate(from, to, 0.5), length, cutWidth })),
);
