/** What the lightbulb offers at an island: bridges of several plans, from this island to the whole file. */
import { standInRow } from '../../edits/plan/glyph-row';
import { polygonOf } from '../../edits/strip/strip';
import { boxOfPolygon } from '../../geometry/boolean';
import type { BridgeGhost, Mend, Report } from '../../report/report';
import { count, formatMillimetres } from '../../config/length';
import type { Piece, Sheet } from '../../sheet/types';
import {
  joinBridges,
  proveBridges,
  proveLayerBridges,
  type BridgePlanChoice,
  type PlannedBridge,
  type ProvenBridges,
} from './bridge-islands';

/** How many times as long upright bridges may be in all (common practice, no source). */
const LITTLE = 1.5;

/** The preferred plan first, then other plans for this island, then the layer, then the file. */
export function bridgeMends(report: Report, sheet: Sheet, piece: Piece): Mend[] {
  const preferred = proveBridges(report, sheet, [piece]);
  const offered = [offer(preferred, 'bridge-island', 'Bridge this island'), ...others(report, sheet, piece, preferred)];
  if (islandsOf(sheet).length > 1) {
    const title = `Bridge every island in layer "${sheet.layer.name}"`;
    const layer = proveLayerBridges(report, sheet);
    offered.push(offer(layer, 'bridge-layer', title), upright(report, sheet, layer));
  }
  offered.push(wholeFile(report));
  const mends = offered.filter((mend) => mend !== undefined);
  return mends.map((mend, i) => (i === 0 && mend.kind === 'bridge-island' ? { ...mend, preferred: true } : mend));
}

/** Plans that differ from the preferred one in the number of bridges. */
function others(report: Report, sheet: Sheet, piece: Piece, preferred: ProvenBridges | string): (Mend | undefined)[] {
  const count = typeof preferred === 'string' ? 0 : preferred.bridges.length;
  const plan = (kind: string, title: string, choice: BridgePlanChoice) =>
    offer(proveBridges(report, sheet, [piece], choice), kind, title);
  return [
    count === 1
      ? undefined
      : plan('bridge-island-shortest', 'Bridge it at the shortest place', { count: 1, shortestOnly: true }),
    count === 2 ? undefined : plan('bridge-island-two', 'Bridge it on two opposite sides', { count: 2 }),
  ];
}

/** In lettering, all bridges of the layer upright: where that costs little, and is not so anyway. */
function upright(report: Report, sheet: Sheet, usual: ProvenBridges | string): Mend | undefined {
  const islands = islandsOf(sheet);
  if (typeof usual === 'string' || !standInRow(islands.map(({ polygon }) => boxOfPolygon(polygon)))) return undefined;
  if (usual.bridges.every(isUpright)) return undefined;
  const aligned = proveBridges(report, sheet, islands, { align: 'vertical' });
  if (typeof aligned === 'string' || lengthOf(aligned) > LITTLE * lengthOf(usual)) return undefined;
  return mendFrom(aligned, 'bridge-layer-upright', `Bridge every island in layer "${sheet.layer.name}" upright`);
}

/** mm of all bridges together. */
function lengthOf({ bridges }: ProvenBridges): number {
  return bridges.reduce((sum, { length }) => sum + length, 0);
}

function isUpright({ from, to, length }: PlannedBridge): boolean {
  return Math.abs(from.x - to.x) < 0.1 * length;
}

/** Every layer's bridges together, where more than one layer has islands and each could be proven. */
function wholeFile(report: Report): Mend | undefined {
  const layers = report.sheets.filter((sheet) => islandsOf(sheet).length > 0);
  if (layers.length < 2) return undefined;
  const whole = layers
    .map((sheet) => proveLayerBridges(report, sheet))
    .reduce((first, second) =>
      typeof first === 'string' || typeof second === 'string' ? 'not all' : joinBridges(report, first, second),
    );
  return offer(whole, 'bridge-file', 'Bridge every island in this file');
}

function islandsOf(sheet: Sheet): Piece[] {
  return sheet.pieces.filter((piece) => piece.island);
}

function offer(result: ProvenBridges | string, kind: string, title: string): Mend | undefined {
  return typeof result === 'string' ? undefined : mendFrom(result, kind, title);
}

/** What was proven, as a mend. */
export function mendFrom({ edits, bridges }: ProvenBridges, kind: string, title: string): Mend {
  const width = formatMillimetres(bridges[0]?.cutWidth ?? 0);
  return {
    kind,
    check: 'floating-island',
    edits,
    safe: false,
    preferred: false,
    title: `${title} (${count(bridges.length, 'bridge')} of ${width})`,
    bridges: bridges.map(ghostOf),
  };
}

/** The bridge as hosts show it. */
export function ghostOf({ layer, strip, from, to, cutWidth, length, hiddenShare = 0 }: PlannedBridge): BridgeGhost {
  return { layer, strip: polygonOf(strip), from, to, width: cutWidth, length, shown: 1 - hiddenShare };
}
