/** The mends that the lightbulb offers for a finding. Each is proven before it is in the list. */
import type { Outcome } from '../bridges/outcome';
import { cutIslandAway, removeOpening, widenNeck } from '../bridges/widen';
import type { Finding } from '../checks/finding';
import type { Polygon, Region } from '../geometry/region';
import type { ThinPart } from '../geometry/thin-parts';
import type { Mend, Report } from '../report';
import { formatMillimetres } from '../sheet/length';
import { limitsOf } from '../sheet/limits';
import type { Piece, Sheet } from '../sheet/sheet';
import { proveBridges, proveLayerBridges, type ProvenBridges } from './bridge-islands';
import { configOf } from './check';
import { prove } from './prove';

/** In the order in which they are offered: this one, the layer, then what changes the picture more. */
export function mendsFor(report: Report, finding: Finding): readonly Mend[] {
  const { subject } = finding;
  if (subject?.kind === 'island') return islandMends(report, finding, subject.sheet, subject.piece);
  if (subject?.kind !== 'thin') return [];
  const { sheet, part } = subject;
  if (finding.check === 'thin-bridge') return offer(report, finding, sheet, widening(report, sheet, part));
  const opening = sheet.openings[part.polygon];
  if (finding.check === 'small-opening' && opening) return offer(report, finding, sheet, removing(sheet, opening));
  return [];
}

/** A mend that has not been proven yet. */
interface Attempt {
  readonly kind: string;
  readonly title: string;
  readonly outcome: Outcome;
  /** Where it may change the openings, in sheet mm. */
  readonly within: Region;
  readonly preferred: boolean;
}

function islandMends(report: Report, finding: Finding, sheet: Sheet, piece: Piece): Mend[] {
  const islands = sheet.pieces.filter((other) => other.island);
  const mends = [bridgeMend(proveBridges(report, sheet, [piece]), 'bridge-island', 'Bridge this island')];
  if (islands.length > 1) {
    const all = proveLayerBridges(report, sheet);
    mends.push(bridgeMend(all, 'bridge-layer', `Bridge every island in layer "${sheet.layer.name}"`));
  }
  mends.push(...offer(report, finding, sheet, cuttingAway(sheet, piece)));
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

function cuttingAway(sheet: Sheet, piece: Piece): Attempt {
  return {
    kind: 'cut-island-away',
    title: 'Cut the island away (its place is painted)',
    outcome: cutIslandAway(sheet, piece),
    within: [piece.polygon],
    preferred: false,
  };
}

function widening(report: Report, sheet: Sheet, part: ThinPart): Attempt {
  const limit = limitsOf(configOf(report.settings)).bridge;
  return {
    kind: 'widen-bridge',
    title: `Widen to ${formatMillimetres(limit)}`,
    outcome: widenNeck(sheet, part, limit + sheet.kerf),
    within: [around(part, limit + sheet.kerf)],
    preferred: true,
  };
}

function removing(sheet: Sheet, opening: Polygon): Attempt {
  return {
    kind: 'remove-opening',
    title: 'Remove this opening',
    outcome: removeOpening(sheet, opening),
    within: [opening],
    preferred: false,
  };
}

/** The attempt as a mend, if it could be made and is proven. */
function offer(report: Report, finding: Finding, sheet: Sheet, attempt: Attempt): Mend[] {
  const { outcome, within, kind, title, preferred } = attempt;
  if ('refusal' in outcome) return [];
  const pledge = { gone: [finding], within: new Map([[sheet.layer.name, within]]) };
  if (typeof prove(report, outcome.edits, pledge) === 'string') return [];
  return [{ kind, title, check: finding.check, edits: outcome.edits, preferred, safe: false }];
}

/** Where widening a neck may change the sheet: a square about its middle that the widened neck cannot leave. */
function around({ from, to, length }: ThinPart, width: number): Polygon {
  const [x, y, half] = [(from.x + to.x) / 2, (from.y + to.y) / 2, length + 2 * width];
  return {
    outer: Float64Array.of(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half), holes: [],
  };
}
