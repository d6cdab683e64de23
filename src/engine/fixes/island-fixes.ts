/** What the lightbulb offers at an island: bridges of several plans, from this island to the whole file. */

import { count, formatMillimetres } from '../../config/length';
import { formGlyphRow } from '../../edits/plan/glyph-row';
import { polygonOf } from '../../edits/strip/strip';
import { boxOfPolygon } from '../../geometry/boolean/index';
import type { BridgePreview, Fix, Report } from '../../report/report';
import type { Piece, Sheet } from '../../sheet/types';
import {
  type BridgePlanChoice,
  joinBridges,
  type PlannedBridge,
  type VerifiedBridges,
  verifyBridges,
  verifyLayerBridges,
} from './bridge-islands';

/** How many times as long upright bridges may be in all (common practice, no source). */
const MAX_LENGTH_RATIO = 1.5;

/** The preferred plan first, then other plans for this island, then the layer, then the file. */
export function bridgeFixes(report: Report, sheet: Sheet, piece: Piece): Fix[] {
  const preferred = verifyBridges(report, sheet, [piece]);
  const offered = [
    fixOrNone(preferred, 'bridge-island', 'Bridge this island'),
    ...alternativePlans(report, sheet, piece, preferred),
  ];
  if (islandsOf(sheet).length > 1) {
    const title = `Bridge every island in layer "${sheet.layer.name}"`;
    const layer = verifyLayerBridges(report, sheet);
    offered.push(fixOrNone(layer, 'bridge-layer', title), uprightPlan(report, sheet, layer));
  }
  offered.push(wholeFile(report));
  const mends = offered.filter((mend) => mend !== undefined);
  return mends.map((mend, i) => (i === 0 && mend.kind === 'bridge-island' ? { ...mend, preferred: true } : mend));
}

/** Plans that differ from the preferred one in the number of bridges. */
function alternativePlans(
  report: Report,
  sheet: Sheet,
  piece: Piece,
  preferred: VerifiedBridges | string,
): (Fix | undefined)[] {
  const count = typeof preferred === 'string' ? 0 : preferred.bridges.length;
  const plan = (kind: string, title: string, choice: BridgePlanChoice) =>
    fixOrNone(verifyBridges(report, sheet, [piece], choice), kind, title);
  return [
    count === 1
      ? undefined
      : plan('bridge-island-shortest', 'Bridge it at the shortest place', { count: 1, shortestOnly: true }),
    count === 2 ? undefined : plan('bridge-island-two', 'Bridge it on two opposite sides', { count: 2 }),
  ];
}

/** In lettering, all bridges of the layer upright: where that costs little, and is not so anyway. */
function uprightPlan(report: Report, sheet: Sheet, usual: VerifiedBridges | string): Fix | undefined {
  const islands = islandsOf(sheet);
  if (typeof usual === 'string' || !formGlyphRow(islands.map(({ polygon }) => boxOfPolygon(polygon)))) return undefined;
  if (usual.bridges.every(isUpright)) return undefined;
  const aligned = verifyBridges(report, sheet, islands, { align: 'vertical' });
  if (typeof aligned === 'string' || lengthOf(aligned) > MAX_LENGTH_RATIO * lengthOf(usual)) return undefined;
  return fixFrom(aligned, 'bridge-layer-upright', `Bridge every island in layer "${sheet.layer.name}" upright`);
}

/** mm of all bridges together. */
function lengthOf({ bridges }: VerifiedBridges): number {
  return bridges.reduce((sum, { length }) => sum + length, 0);
}

function isUpright({ from, to, length }: PlannedBridge): boolean {
  return Math.abs(from.x - to.x) < 0.1 * length;
}

/** Every layer's bridges together, where more than one layer has islands and each could be proven. */
function wholeFile(report: Report): Fix | undefined {
  const layers = report.sheets.filter((sheet) => islandsOf(sheet).length > 0);
  if (layers.length < 2) return undefined;
  const whole = layers
    .map((sheet) => verifyLayerBridges(report, sheet))
    .reduce((first, second) =>
      typeof first === 'string' || typeof second === 'string' ? 'not all' : joinBridges(report, first, second),
    );
  return fixOrNone(whole, 'bridge-file', 'Bridge every island in this file');
}

function islandsOf(sheet: Sheet): Piece[] {
  return sheet.pieces.filter((piece) => piece.island);
}

function fixOrNone(result: VerifiedBridges | string, kind: string, title: string): Fix | undefined {
  return typeof result === 'string' ? undefined : fixFrom(result, kind, title);
}

/** What was proven, as a mend. */
export function fixFrom({ edits, bridges }: VerifiedBridges, kind: string, title: string): Fix {
  const width = formatMillimetres(bridges[0]?.cutWidth ?? 0);
  return {
    kind,
    check: 'floating-island',
    edits,
    safe: false,
    preferred: false,
    title: `${title} (${count(bridges.length, 'bridge')} of ${width})`,
    bridges: bridges.map(bridgePreviewOf),
  };
}

/** The bridge as hosts show it. */
export function bridgePreviewOf({
  layer,
  strip,
  from,
  to,
  cutWidth,
  length,
  hiddenShare = 0,
}: PlannedBridge): BridgePreview {
  return { layer, strip: polygonOf(strip), from, to, width: cutWidth, length, shown: 1 - hiddenShare };
}
