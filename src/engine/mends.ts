/** The mends that the lightbulb offers for a finding. Each is proven before it is in the list. */
import type { Finding } from '../checks/finding';
import type { Mend, Report } from '../report';
import { formatMillimetres } from '../sheet/length';
import type { Piece, Sheet } from '../sheet/sheet';
import { proveBridges, type ProvenBridges } from './bridge-islands';

/** In the order in which they are offered: this one, the layer, then what changes the picture more. */
export function mendsFor(report: Report, finding: Finding): readonly Mend[] {
  const { subject } = finding;
  if (subject?.kind === 'island') return islandMends(report, subject.sheet, subject.piece);
  return [];
}

function islandMends(report: Report, sheet: Sheet, piece: Piece): Mend[] {
  const islands = sheet.pieces.filter((other) => other.island);
  const mends = [bridgeMend(proveBridges(report, sheet, [piece]), 'bridge-island', 'Bridge this island')];
  if (islands.length > 1) {
    const all = proveBridges(report, sheet, islands);
    mends.push(bridgeMend(all, 'bridge-layer', `Bridge every island in layer "${sheet.layer.name}"`));
  }
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
