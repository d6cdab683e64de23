/** The mends that the lightbulb offers for a finding. Each is proven before it is in the list. */
import { cutIslandAway, widenNeck } from '../bridges/widen';
import type { Finding } from '../checks/finding';
import type { Region } from '../geometry/region';
import type { ThinPart } from '../geometry/thin-parts';
import type { Mend, Report } from '../report';
import { formatMillimetres } from '../sheet/length';
import { limitsOf } from '../sheet/limits';
import type { Piece, Sheet } from '../sheet/sheet';
import type { TextEdit } from '../text';
import { proveBridges, type ProvenBridges } from './bridge-islands';
import { configOf } from './check';
import { prove } from './prove';

/** In the order in which they are offered: this one, the layer, then what changes the picture more. */
export function mendsFor(report: Report, finding: Finding): readonly Mend[] {
  const { subject } = finding;
  if (subject?.kind === 'island') return islandMends(report, finding, subject.sheet, subject.piece);
  if (subject?.kind === 'thin' && finding.check === 'thin-bridge') {
    return widenMend(report, finding, subject.sheet, subject.part);
  }
  return [];
}

function islandMends(report: Report, finding: Finding, sheet: Sheet, piece: Piece): Mend[] {
  const islands = sheet.pieces.filter((other) => other.island);
  const mends = [bridgeMend(proveBridges(report, sheet, [piece]), 'bridge-island', 'Bridge this island')];
  if (islands.length > 1) {
    const all = proveBridges(report, sheet, islands);
    mends.push(bridgeMend(all, 'bridge-layer', `Bridge every island in layer "${sheet.layer.name}"`));
  }
  mends.push(cutAwayMend(report, finding, sheet, piece));
  const [first, ...rest] = mends.filter((mend) => mend !== undefined);
  if (!first) return [];
  return [{ ...first, preferred: first.kind === 'bridge-island' }, ...rest];
}

function bridgeMend(result: ProvenBridges | string, kind: string, title: string): Mend | undefined {
  if (typeof result === 'string') return undefined;
  const { edits, bridges } = result;
  const count = bridges.length === 1 ? '1 bridge' : `${bridges.length} bridges`;
  const width = formatMillimetres(bridges[0]?.width ?? 0);
  return {
    kind, check: 'floating-island', edits, safe: false, preferred: false, title: `${title} (${count} of ${width})`,
  };
}

function cutAwayMend(report: Report, finding: Finding, sheet: Sheet, piece: Piece): Mend | undefined {
  const cut = cutIslandAway(sheet, piece);
  if ('refusal' in cut) return undefined;
  const within = new Map<string, Region>([[sheet.layer.name, [piece.polygon]]]);
  if (typeof prove(report, cut.edits, { gone: [finding], within }) === 'string') return undefined;
  return mend('cut-island-away', 'Cut the island away (its place is painted)', finding, cut.edits);
}

function widenMend(report: Report, finding: Finding, sheet: Sheet, part: ThinPart): Mend[] {
  const limit = limitsOf(configOf(report.settings)).bridge;
  const cut = widenNeck(sheet, part, limit + sheet.kerf);
  if ('refusal' in cut) return [];
  const within = new Map<string, Region>([[sheet.layer.name, [around(part, limit + sheet.kerf)]]]);
  if (typeof prove(report, cut.edits, { gone: [finding], within }) === 'string') return [];
  return [{ ...mend('widen-bridge', `Widen to ${formatMillimetres(limit)}`, finding, cut.edits), preferred: true }];
}

/** Where widening a neck may change the sheet: a square about its middle that the widened neck cannot leave. */
function around({ from, to, length }: ThinPart, width: number): Region[number] {
  const [x, y, half] = [(from.x + to.x) / 2, (from.y + to.y) / 2, length + 2 * width];
  return {
    outer: Float64Array.of(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half), holes: [],
  };
}

function mend(kind: string, title: string, { check }: Finding, edits: readonly TextEdit[]): Mend {
  return { kind, title, check, edits, preferred: false, safe: false };
}
