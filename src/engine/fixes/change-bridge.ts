/** Bridges that are there already, changed by the same surgery that puts new ones in. */

import type { Effect } from '../../checks/meta';
import { limitsOf } from '../../config/limits';
import { formatMillimetres } from '../../config/values';
import { changedRegion, cutStrips, ROUNDING_ROOM, stripsFor } from '../../edits/bridge/cut';
import { removeBridge } from '../../edits/bridge/remove-bridge';
import { composeEdits } from '../../edits/path/text-edits';
import { bridgeAcrossGap } from '../../edits/plan/at-point';
import { type StandingBridge, standingBridgeAt } from '../../edits/plan/detect';
import type { Bridge } from '../../edits/plan/types';
import { shapesNearStrips } from '../../edits/strip/shapes-near';
import { polygonOf, type Strip, stripAlong } from '../../edits/strip/strip';
import type { Point } from '../../geometry/base/curve-types';
import type { Region } from '../../geometry/base/polygon-types';
import { NEAR_EDGE } from '../../geometry/base/tolerances';
import { add, dot, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import type { Fix } from '../../report/fix';
import { isRefusal, mapResult, type Result, refuse } from '../../report/refusal';
import type { Report } from '../../report/report';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { effectiveConfig } from '../check/effective-config';
import { placesDrawnAt } from './bridge-at';
import { bridgeWidthFor, hiddenOn } from './bridge-islands';
import { type FixFacts, fixResult } from './fix-of';
import { checkEdited, verify } from './verify';

/** What is to become of a bridge. */
export type BridgeChange =
  /** mm as cut. */
  | { readonly kind: 'width'; readonly width: number }
  /** To a place in the same gap, sheet mm. */
  | { readonly kind: 'move'; readonly to: Point }
  | { readonly kind: 'remove' };

/** Wider necks than so many limits are parts of the picture (common practice, no source). */
const MAX_WIDTH = 6;

/** In limits. */
const CANDIDATE_WIDTHS = [1, 1.5, 2];
/** In widths. */
const STEP = 2;
/** mm */
const MIN_WIDTH_CHANGE = NEAR_EDGE;

/** The bridge that the command at an offset of the text draws a side of, and its sheet. */
export function bridgeAtOffset(report: Report, offset: number): { sheet: Sheet; bridge: StandingBridge } | undefined {
  for (const sheet of report.sheets) {
    for (const place of placesDrawnAt(sheet, offset)) {
      const bridge = bridgeStandingAt(report, sheet, place);
      if (bridge) return { sheet, bridge };
    }
  }
  return undefined;
}

/** The bridge at a place of a sheet, in or beside it; sheet mm. */
export function bridgeStandingAt(report: Report, sheet: Sheet, place: Point): StandingBridge | undefined {
  const widest = MAX_WIDTH * limitsOf(effectiveConfig(report.settings)).bridge + sheet.kerf;
  return standingBridgeAt(sheet, place, widest);
}

/**
 * What is worth offering without being told more: the limit and widths above it, a step along the gap, taking it out.
 */
export function changesFor(report: Report, sheet: Sheet, bridge: StandingBridge): BridgeChange[] {
  const limit = limitsOf(effectiveConfig(report.settings)).bridge;
  const widths = CANDIDATE_WIDTHS.map((times) => Math.round(100 * times * limit) / 100).filter(
    (width) => Math.abs(width - (bridge.width - sheet.kerf)) > MIN_WIDTH_CHANGE,
  );
  const step = scale(perpendicular(bridge.along), STEP * Math.max(limit, bridge.width));
  return [
    ...widths.map((width): BridgeChange => ({ kind: 'width', width })),
    { kind: 'move', to: add(bridge.centre, step) },
    { kind: 'move', to: subtract(bridge.centre, step) },
    { kind: 'remove' },
  ];
}

/** @returns why the bridge cannot be changed so, where it cannot */
export function changeBridge(report: Report, sheet: Sheet, bridge: StandingBridge, change: BridgeChange): Result<Fix> {
  if (change.kind === 'remove') return remove(report, sheet, bridge);
  if (change.kind === 'move') return move(report, sheet, bridge, change.to);
  const now = bridge.width - sheet.kerf;
  if (Math.abs(change.width - now) < 2 * ROUNDING_ROOM)
    return refuse(`The bridge is ${formatMillimetres(now)} wide already.`);
  return change.width > now ? widen(report, sheet, bridge, change.width) : narrow(report, sheet, bridge, change.width);
}

function narrow(report: Report, sheet: Sheet, bridge: StandingBridge, width: number): Result<Fix> {
  const title = titleOfChange(sheet, bridge, { kind: 'width', width });
  return replaceBridge(report, sheet, bridge, width, titled('narrow-bridge', title));
}

/** Drawn anew in its place; a neck between two shapes, which cannot be taken out, gets a strip over it. */
function widen(report: Report, sheet: Sheet, bridge: StandingBridge, width: number): Result<Fix> {
  const named = titled('widen-bridge', titleOfChange(sheet, bridge, { kind: 'width', width }));
  const removeAndRebridge = replaceBridge(report, sheet, bridge, width, named);
  if (!isRefusal(removeAndRebridge)) return removeAndRebridge;
  const strip = stripOver(bridge, bridgeWidthFor(report, sheet, width) + ROUNDING_ROOM);
  const outcome = cutStrips(sheet, [strip]);
  if ('refusal' in outcome) return refuse(outcome.refusal);
  return verifiedFix(report, sheet, outcome.edits, { within: changedRegion(sheet, [strip]), ...named });
}

function replaceBridge(
  report: Report,
  sheet: Sheet,
  bridge: StandingBridge,
  width: number,
  named: Titled,
): Result<Fix> {
  return recut(report, sheet, bridge, named, (opened, after) => {
    const options = { width: bridgeWidthFor(report, sheet, width), hidden: hiddenOn(after, opened) };
    return (
      bridgeAcrossGap(opened, bridge.centre, options, bridge.along) ?? 'The bridge cannot be drawn anew in its place.'
    );
  });
}

function move(report: Report, sheet: Sheet, bridge: StandingBridge, to: Point): Result<Fix> {
  const title = titleOfChange(sheet, bridge, { kind: 'move', to });
  return recut(report, sheet, bridge, titled('move-bridge', title), (opened, after) => {
    const gap = opened.openings.find((opening) => regionContains([opening], bridge.centre));
    if (!gap || !regionContains([gap], to)) return 'A bridge can be moved only within its own gap.';
    const options = { width: bridge.width - ROUNDING_ROOM, hidden: hiddenOn(after, opened) };
    const across = bridgeAcrossGap(opened, to, options);
    return across ?? 'No straight bridge fits there. Try where the sides run parallel.';
  });
}

/** What a change is called, as far as that is known before it is made. */
export function titleOfChange(sheet: Sheet, bridge: StandingBridge, change: BridgeChange): string {
  if (change.kind === 'remove') return 'Remove this bridge';
  if (change.kind === 'move') {
    const by = subtract(change.to, bridge.centre);
    return `Move this bridge ${formatMillimetres(Math.hypot(by.x, by.y))} ${directionOf(by)}`;
  }
  const verb = change.width > bridge.width - sheet.kerf ? 'Widen' : 'Narrow';
  return `${verb} this bridge to ${formatMillimetres(change.width)}`;
}

/** As seen on the screen: y runs down. */
function directionOf({ x, y }: Point): string {
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'to the right' : 'to the left';
  return y > 0 ? 'down' : 'up';
}

interface Titled {
  readonly kind: string;
  readonly title: string;
}

function titled(kind: string, title: string): Titled {
  return { kind, title };
}

/** The bridge taken out, and another put into the sheet without it; both as one change. */
function recut(
  report: Report,
  sheet: Sheet,
  bridge: StandingBridge,
  named: Titled,
  plan: (opened: Sheet, after: Report) => Bridge | string,
): Result<Fix> {
  const removed = removeBridge(sheet, bridge);
  if ('refusal' in removed) return refuse(removed.refusal);
  const after = checkEdited(report, removed.edits);
  const opened = sameLayer(after, sheet);
  if (!opened) return refuse('The layers would be others than before.');
  const planned = plan(opened, after);
  if (typeof planned === 'string') return refuse(planned);
  const strips = stripsFor(opened, [planned]);
  const cut = cutStrips(opened, strips);
  if ('refusal' in cut) return refuse(cut.refusal);
  const edits = composeEdits(report.text, removed.edits, cut.edits);
  const within = [...removalRegion(sheet, bridge), ...changedRegion(opened, strips)];
  const mend = verifiedFix(report, sheet, edits, { ...named, within });
  const { from, to, length, hiddenShare = 0 } = planned;
  const ghost = {
    layer: sheet.layer.name,
    layerId: sheet.layer.id,
    strip: polygonOf(strips[0] as Strip),
    from,
    to,
    length,
    shown: 1 - hiddenShare,
  };
  const bridges = [{ ...ghost, width: planned.width - sheet.kerf }];
  return mapResult(mend, (fix) => ({ ...fix, bridges }));
}

function remove(report: Report, sheet: Sheet, bridge: StandingBridge): Result<Fix> {
  const removed = removeBridge(sheet, bridge);
  if ('refusal' in removed) return refuse(removed.refusal);
  const after = sameLayer(checkEdited(report, removed.edits), sheet);
  const fallen = after ? islandArea(after) - islandArea(sheet) : 0;
  const plain = titleOfChange(sheet, bridge, { kind: 'remove' });
  const title = fallen > 0 ? `${plain} (it is the last: ${fallen.toFixed(1)} mm² will fall out)` : plain;
  return verifiedFix(report, sheet, removed.edits, {
    ...titled('remove-bridge', title),
    within: removalRegion(sheet, bridge),
    effects: ['removes-bridge'],
  });
}

function islandArea({ pieces }: Sheet): number {
  return pieces.reduce((sum, { island, area }) => sum + (island ? area : 0), 0);
}

function stripOver(bridge: StandingBridge, width: number): Strip {
  const [from, to] = endsOf(bridge);
  return stripAlong(from, to, width, 0.1 * width);
}

/** The ends of its middle line, beyond the farthest ends of its sides. */
function endsOf({ centre, along, sides }: StandingBridge): readonly [Point, Point] {
  const places = sides.flat().map((end) => dot(subtract(end, centre), along));
  return [add(centre, scale(along, Math.min(...places))), add(centre, scale(along, Math.max(...places)))];
}

/** Where taking a bridge out may change the openings: its own place, and a little of both banks. */
function removalRegion({ layer }: Sheet, bridge: StandingBridge): Region {
  const [from, to] = endsOf(bridge);
  const place = stripAlong(from, to, 1.05 * bridge.width, bridge.width);
  // The ends of lines may be round or slanted: the sides say little about how far they reach.
  const lines = [
    ...shapesNearStrips(
      layer.shapes.filter(({ part }) => part === 'stroke'),
      [place],
    ).keys(),
  ];
  const reach = layer.reading === 'openings' ? Math.max(0, ...lines.map(({ strokeWidth = 0 }) => strokeWidth)) : 0;
  return [polygonOf(stripAlong(from, to, 1.05 * bridge.width + 2 * reach, bridge.width + reach))];
}

interface AllowedChange extends Titled {
  readonly within: Region;
  readonly effects?: readonly Effect[];
}

function verifiedFix(
  report: Report,
  { layer: { id } }: Sheet,
  edits: readonly TextEdit[],
  { kind, title, within, effects = [] }: AllowedChange,
): Result<Fix> {
  const proof = verify(report, edits, { gone: [], within: new Map([[id, within]]), effects });
  const facts: FixFacts = { kind, scope: 'place', safe: false };
  const change = mapResult(proof, ({ brings }) => ({ edits, brings }));
  return fixResult(facts, { title, layerId: id, asked: effects }, change);
}

/** The sheet of the same layer in the report on an edited text. */
function sameLayer({ sheets }: Report, { layer: { id } }: Sheet): Sheet | undefined {
  return sheets.find(({ layer }) => layer.id === id);
}
