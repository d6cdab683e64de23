/** A hole that standing bridges hold although later layers paint over it: cut away with its bridges, as an island is. */

import type { IslandCover } from '../../../checks/finding';
import { coverInWords, islandCover } from '../../../checks/later-paint';
import { limitsOf } from '../../../config/limits';
import { drawnPlace } from '../../../edits/bridge/cut-away';
import { removeBridge } from '../../../edits/bridge/remove-bridge';
import { composeEdits } from '../../../edits/path/text-edits';
import type { StandingBridge } from '../../../edits/plan/standing/detect';
import { polygonOf, stripAlong } from '../../../edits/strip/strip';
import type { Point } from '../../../geometry/base/curve-types';
import type { Polygon } from '../../../geometry/base/polygon-types';
import { boxContainsBox, growBox } from '../../../geometry/base/ring';
import { PLAINLY_BESIDE, WRITTEN_STEP } from '../../../geometry/base/tolerances';
import { add, normalise, scale, subtract } from '../../../geometry/base/vector';
import { areaOf, boxOfPolygon, difference, regionContains } from '../../../geometry/boolean/index';
import type { Fix } from '../../../report/fix';
import { isRefusal, mapResult, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import type { TextEdit } from '../../../text/text';
import { effectiveConfig } from '../../check/effective-config';
import { fixResult } from '../fix-of';
import { endsOf, removalRegion } from '../plan-change';
import { bridgeStandingAt, bridgesOf } from '../standing-bridges';
import { checkEdited, verify } from '../verify';
import { cutCoveredIsland } from './islands';

/** What bridges hold. */
export interface HeldHole {
  readonly place: Polygon;
  readonly bridges: readonly StandingBridge[];
  readonly cover: IslandCover;
}

/** In widths of a bridge: how far what parts it from the sheet reaches over its ends. */
const REACH = 0.1;

const KIND = 'cut-held';

/** What a bridge holds, if later layers paint over all of it; remembered. */
export function heldUnderPaint(report: Report, sheet: Sheet, bridge: StandingBridge): HeldHole | undefined {
  const { x, y } = bridge.centre;
  return report.session.remember(`held under paint ${sheet.layer.id} ${x} ${y}`, () => {
    const isLast = report.stack.layers.at(-1)?.sheet.layer.id === sheet.layer.id;
    return isLast ? undefined : findHeld(report, sheet, bridge);
  });
}

function findHeld(report: Report, sheet: Sheet, bridge: StandingBridge): HeldHole | undefined {
  const bridges = bridgesOf(report, sheet);
  const strips = bridges.map((each) => polygonOf(stripOver(each)));
  const { slip } = limitsOf(effectiveConfig(report.settings));
  const inner = growBox(sheet.frame, -WRITTEN_STEP);
  const places = difference(sheet.material, strips).filter((place) => boxContainsBox(inner, boxOfPolygon(place)));
  for (const place of places) {
    if (!beyondEnds(bridge).some((end) => regionContains([place], end))) continue;
    const cover = islandCover(report.stack, sheet, pieceOf(place, bridge.centre), slip);
    const own = bridges.filter((each) => beyondEnds(each).some((end) => regionContains([place], end)));
    if (cover) return { place, bridges: own, cover };
  }
  return undefined;
}

function pieceOf(polygon: Polygon, label: Point): Piece {
  return { polygon, label, area: areaOf(polygon), island: true };
}

function stripOver(bridge: StandingBridge) {
  const [from, to] = endsOf(bridge);
  return stripAlong(from, to, 1.05 * bridge.width, REACH * bridge.width);
}

/** Places in what the bridge joins. */
function beyondEnds(bridge: StandingBridge): Point[] {
  const [from, to] = endsOf(bridge);
  const along = normalise(subtract(to, from));
  if (!along) return [];
  const beyond = scale(along, REACH * bridge.width + PLAINLY_BESIDE);
  return [subtract(from, beyond), add(to, beyond)];
}

/** For the lightbulb. */
export function titleOfHeld({ bridges, cover }: HeldHole): string {
  const gone = bridges.length === 1 ? 'this bridge' : `these ${bridges.length} bridges`;
  return `Cut away ${gone} and what hangs there: ${coverInWords(cover)}`;
}

/** The bridges are taken out one after the other, and what is loose then goes as any island that is painted over. */
export function cutAwayHeld(report: Report, sheet: Sheet, held: HeldHole): Result<Fix> {
  const edits = editsFor(report, sheet, held);
  if (isRefusal(edits)) return refuse(edits.reason);
  const { id, name } = sheet.layer;
  const within = [
    ...drawnPlace(sheet, pieceOf(held.place, { x: 0, y: 0 })),
    ...held.bridges.flatMap((each) => removalRegion(sheet, each)),
  ];
  const effects = ['removes-bridge'] as const;
  const proof = verify(report, edits, { gone: [], within: new Map([[id, within]]), effects });
  const change = mapResult(proof, ({ brings }) => ({
    edits,
    brings,
    cutAway: [{ layer: name, layerId: id, place: held.place }],
  }));
  const facts = { kind: KIND, scope: 'place', safe: false } as const;
  return fixResult(report, facts, { title: titleOfHeld(held), layerId: id, asked: effects }, change);
}

function editsFor(report: Report, { layer: { id } }: Sheet, held: HeldHole): Result<TextEdit[]> {
  let edits: TextEdit[] = [];
  let now = report;
  const sheetNow = () => now.sheets.find(({ layer }) => layer.id === id);
  for (const { centre } of held.bridges) {
    const sheet = sheetNow();
    const bridge = sheet && bridgeStandingAt(now, sheet, centre);
    if (!bridge) return refuse('One of its bridges cannot be taken out; remove it by hand.');
    const removed = removeBridge(sheet, bridge);
    if ('refusal' in removed) return refuse(removed.refusal);
    edits = composeEdits(report.text, edits, removed.edits);
    now = checkEdited(report, edits);
  }
  const sheet = sheetNow();
  const island = sheet?.pieces.find((piece) => piece.island && regionContains([held.place], piece.label));
  if (!sheet || !island) return refuse('Without its bridges it would still hang on the sheet.');
  const cut = cutCoveredIsland(now, sheet, island);
  return isRefusal(cut) ? refuse(cut.reason) : composeEdits(report.text, edits, cut.edits);
}
