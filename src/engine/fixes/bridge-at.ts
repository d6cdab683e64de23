/** A bridge at a place that the artist points to: in the picture, or by the caret in the text. */

import type { Finding } from '../../checks/finding';
import { bridgeAcrossGap } from '../../edits/plan/at-point';
import type { Point } from '../../geometry/base/curve-types';
import type { Polygon } from '../../geometry/base/polygon-types';
import { NEAR_EDGE } from '../../geometry/base/tolerances';
import { regionContains } from '../../geometry/boolean/index';
import { pointAt } from '../../geometry/curve/index';
import { buildSegmentIndex, nearestSegment, type SegmentIndex } from '../../geometry/spatial/segment-index';
import type { ReportedFinding } from '../../report/finding-id';
import { type Fix, type FixRefusal, fixId, refusalOf } from '../../report/fix';
import { isRefusal, type Result, refuse } from '../../report/refusal';
import type { Report } from '../../report/report';
import type { Piece, Sheet } from '../../sheet/types';
import { verifyBridges } from './bridge-islands';
import { bridgesAsChange, islandBridgesAsChange } from './bridges-as-change';
import { type VerifiedBridges, verifyCut } from './bridging/cut';
import { type BridgePlanChoice, bridgeWidthFor, hiddenOn } from './bridging/plan';
import { fixResult } from './fix-of';

/** mm: how far an edge may lie from where flattening and offsetting have put it. */
const EDGE_SLACK = NEAR_EDGE;

/** In the picture, across whatever gap is there. */
const BRIDGE_HERE = { kind: 'bridge-here', scope: 'place', safe: false, title: 'Bridge the gap here' } as const;

/** In the text, for the island of a finding. */
export const BRIDGE_ISLAND_HERE = {
  kind: 'bridge-island-here',
  scope: 'place',
  safe: false,
  title: 'Add a bridge at the cursor',
} as const;

/**
 * A bridge as near to `point` as can be: for the island there, or across the opening where none borders on it.
 * @param point sheet mm
 * @param bridgeWidth mm as cut; by default the limit
 * @returns why there can be none, where there cannot
 */
export function bridgeAt(report: Report, sheet: Sheet, point: Point, bridgeWidth?: number): Result<Fix> {
  const change = bridgesAsChange(verifyBridgeAt(report, sheet, point, bridgeWidth), BRIDGE_HERE.title);
  return fixResult(report, BRIDGE_HERE, { ...BRIDGE_HERE, layerId: sheet.layer.id }, change);
}

function verifyBridgeAt(report: Report, sheet: Sheet, point: Point, bridgeWidth?: number): Result<VerifiedBridges> {
  const islands = sheet.pieces.filter(({ island }) => island);
  const on = islands.find(({ polygon }) => regionContains([polygon], point));
  const gap = on ? undefined : sheet.openings.find((opening) => regionContains([opening], point));
  if (!on && !gap) {
    return refuse(`There is no gap to bridge here: point at ${islands.length > 0 ? 'an island or ' : ''}an opening.`);
  }
  const island = on ?? (gap && nearestNeighbour(islands, gap, sheet.kerf, point));
  if (!island) return bridgeAcross(report, sheet, point, bridgeWidth);
  return bridgesNear(report, sheet, island, { near: point, ...(bridgeWidth === undefined ? {} : { bridgeWidth }) });
}

/**
 * One bridge where the artist wants it, for this island alone: others can be placed after it, one by one. Where none can
 * stand by itself, as many as the island needs.
 */
function bridgesNear(report: Report, sheet: Sheet, island: Piece, choice: BridgePlanChoice): Result<VerifiedBridges> {
  const one = verifyBridges(report, sheet, [island], { ...choice, count: 1, alone: true });
  if (!isRefusal(one)) return one;
  const more = verifyBridges(report, sheet, [island], choice);
  return isRefusal(more) ? one : more;
}

/** Where no island asks for it: a further bridge for what hangs already, or one that parts a long opening. */
function bridgeAcross(report: Report, sheet: Sheet, point: Point, bridgeWidth?: number): Result<VerifiedBridges> {
  const options = { width: bridgeWidthFor(report, sheet, bridgeWidth), hidden: hiddenOn(report, sheet) };
  const bridge = bridgeAcrossGap(sheet, point, options);
  if (!bridge) return refuse('No straight bridge fits here. Try where the sides run parallel.');
  return verifyCut(report, sheet, [bridge], []);
}

/** Of the islands that border on an opening, the one that is nearest to a place in it. */
function nearestNeighbour(islands: readonly Piece[], gap: Polygon, kerf: number, point: Point): Piece | undefined {
  const edges = buildSegmentIndex([gap]);
  const beside = islands.filter(({ polygon }) => isAdjacent(polygon, edges, kerf / 2 + EDGE_SLACK));
  const index = buildSegmentIndex(beside.map(({ polygon }) => polygon));
  const near = nearestSegment(index, point);
  return near && beside[index.polygon[near.edge] ?? 0];
}

function isAdjacent({ outer }: Polygon, gap: SegmentIndex, reach: number): boolean {
  for (let i = 0; i + 1 < outer.length; i += 2) {
    if (nearestSegment(gap, { x: outer[i] ?? 0, y: outer[i + 1] ?? 0 }, reach)) return true;
  }
  return false;
}

/**
 * A bridge where the command at the caret draws the edge of the island that was found.
 * @param offset of the caret, in UTF-16 code units
 * @returns undefined where the caret is at no such command
 */
export function bridgeAtCaret(report: Report, finding: ReportedFinding, offset: number): Fix | FixRefusal | undefined {
  const { subject } = finding;
  if (subject?.kind !== 'island') return undefined;
  const { sheet, piece } = subject;
  const near = edgeAtCaret(finding, offset);
  if (!near) return undefined;
  const { kind, scope, title } = BRIDGE_ISLAND_HERE;
  const whose = { id: fixId(finding.id, kind), finding: finding.id, layerId: sheet.layer.id };
  const key = `bridge of ${sheet.layer.id}/${sheet.pieces.indexOf(piece)} at ${near.x} ${near.y}`;
  const proven = report.session.remember(key, () => bridgesNear(report, sheet, piece, { near }));
  const change = islandBridgesAsChange(proven, title, piece, false);
  const result = fixResult(report, BRIDGE_ISLAND_HERE, { title, layerId: sheet.layer.id }, change);
  return isRefusal(result) ? refusalOf({ ...whose, kind, scope, title }, result) : { ...result, ...whose };
}

/** The place, in sheet mm, at which the command at the caret draws the edge of the island that was found. */
export function edgeAtCaret({ subject }: Finding, offset: number): Point | undefined {
  if (subject?.kind !== 'island') return undefined;
  const { sheet, piece } = subject;
  const edges = buildSegmentIndex([piece.polygon]);
  return placesDrawnAt(sheet, offset).find((place) => nearestSegment(edges, place, sheet.kerf / 2 + EDGE_SLACK));
}

/** The middles of the curves that the command at an offset draws, in sheet mm. */
export function placesDrawnAt({ layer: { shapes, reading } }: Sheet, offset: number): Point[] {
  const chains = shapes.flatMap(
    ({ subpaths, centreline }) => (reading === 'outlines' ? centreline : [...subpaths, ...(centreline ?? [])]) ?? [],
  );
  return chains.flatMap(({ curves, spans }) =>
    curves.flatMap((curve, i) => {
      const span = spans[i];
      return span && span.from <= offset && offset <= span.to ? [pointAt(curve, 0.5)] : [];
    }),
  );
}
