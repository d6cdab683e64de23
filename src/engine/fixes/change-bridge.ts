/** Bridges that are there already, changed by the same surgery that puts new ones in. */

import type { Effect } from '../../checks/meta';
import { limitsOf } from '../../config/limits';
import { formatMillimetres } from '../../config/values';
import { changedRegion, cutStrips, ROUNDING_ROOM } from '../../edits/bridge/cut';
import type { StandingBridge } from '../../edits/plan/standing/detect';
import { type Strip, stripAlong } from '../../edits/strip/strip';
import type { Point } from '../../geometry/base/curve-types';
import type { Region } from '../../geometry/base/polygon-types';
import { NEAR_EDGE } from '../../geometry/base/tolerances';
import { add, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import { lobeOf } from '../../geometry/protrusion/lobe';
import type { Fix } from '../../report/fix';
import { isRefusal, mapResult, type Result, refuse } from '../../report/refusal';
import type { Report } from '../../report/report';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { effectiveConfig } from '../check/effective-config';
import { bridgeWidthFor } from './bridging/plan';
import { type FixFacts, fixResult } from './fix-of';
import { type BridgeTarget, endsOf, gapUnder, planChange, removalRegion } from './plan-change';
import { verify } from './verify';

/** What is to become of a bridge. */
export type BridgeChange =
  /** mm as cut. */
  | { readonly kind: 'width'; readonly width: number }
  /** To a place in the same gap, sheet mm: the nearest one there; where a width is named, in that width. */
  | { readonly kind: 'move'; readonly to: Point; readonly width?: number }
  | { readonly kind: 'remove' };

/** In limits. */
const CANDIDATE_WIDTHS = [1, 1.5, 2];
/** In widths. */
const STEP = 2;
/** mm */
const MIN_WIDTH_CHANGE = NEAR_EDGE;

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

/**
 * Makes a change and proves it; remembered, for the bench asks again for what the text has proven.
 * @returns why the bridge cannot be changed so, where it cannot
 */
export function changeBridge(report: Report, sheet: Sheet, bridge: StandingBridge, change: BridgeChange): Result<Fix> {
  const { x, y } = bridge.centre;
  const what = `change of ${sheet.layer.id} ${x} ${y} ${JSON.stringify(change)}`;
  return report.session.remember(what, () => prove(report, sheet, bridge, change));
}

function prove(report: Report, sheet: Sheet, bridge: StandingBridge, change: BridgeChange): Result<Fix> {
  if (change.kind === 'remove') return remove(report, sheet, bridge);
  const named = { kind: kindOf(sheet, bridge, change), title: titleOfChange(sheet, bridge, change) };
  if (change.kind === 'move') return redraw(report, sheet, bridge, change, named);
  const now = bridge.width - sheet.kerf;
  if (Math.abs(change.width - now) < 2 * ROUNDING_ROOM)
    return refuse(`The bridge is ${formatMillimetres(now)} wide already.`);
  const redrawn = redraw(report, sheet, bridge, change, named);
  return isRefusal(redrawn) && change.width > now ? cover(report, sheet, bridge, change.width, named) : redrawn;
}

function kindOf(sheet: Sheet, bridge: StandingBridge, change: BridgeChange): string {
  if (change.kind !== 'width') return `${change.kind}-bridge`;
  return change.width > bridge.width - sheet.kerf ? 'widen-bridge' : 'narrow-bridge';
}

/** Taken out and put in again, as one change. */
function redraw(
  report: Report,
  sheet: Sheet,
  bridge: StandingBridge,
  target: BridgeTarget,
  named: Titled,
): Result<Fix> {
  const planned = planChange(report, sheet, bridge, target);
  if (typeof planned === 'string') return refuse(planned);
  const { edits, within, bridge: ghost } = planned;
  const mend = verifiedFix(report, sheet, edits, { ...named, within });
  return mapResult(mend, (fix) => ({ ...fix, bridges: [ghost] }));
}

/** A neck between two shapes, which cannot be taken out, gets a strip over it. */
function cover(report: Report, sheet: Sheet, bridge: StandingBridge, width: number, named: Titled): Result<Fix> {
  const strip = stripOver(bridge, bridgeWidthFor(report, sheet, width) + ROUNDING_ROOM);
  const outcome = cutStrips(sheet, [strip]);
  if ('refusal' in outcome) return refuse(outcome.refusal);
  return verifiedFix(report, sheet, outcome.edits, { within: changedRegion(sheet, [strip]), ...named });
}

/** What a change is called, as far as that is known before it is made. */
export function titleOfChange(sheet: Sheet, bridge: StandingBridge, change: BridgeChange): string {
  if (change.kind === 'remove') return holdsAlone(sheet, bridge) ? removalTitle('a piece') : removalTitle();
  if (change.kind === 'move') {
    const by = subtract(change.to, bridge.centre);
    const moved = `Move this bridge ${formatMillimetres(Math.hypot(by.x, by.y))} ${directionOf(by)}`;
    return change.width === undefined ? moved : `${moved}, ${formatMillimetres(change.width)} wide`;
  }
  const verb = change.width > bridge.width - sheet.kerf ? 'Widen' : 'Narrow';
  return `${verb} this bridge to ${formatMillimetres(change.width)}`;
}

/** @param fallen what nothing holds any more */
function removalTitle(fallen?: string): string {
  return `Remove this bridge${fallen === undefined ? '' : ` (it is the last: ${fallen} will fall out)`}`;
}

/**
 * Whether the sheet falls apart without a bridge: then both its sides belong to one ring of the material, which goes
 * round what hangs on it.
 */
function holdsAlone({ material, pieces }: Sheet, { centre, along, width }: StandingBridge): boolean {
  const hangs = pieces.some(({ island, polygon }) => !island && regionContains([polygon], centre));
  const aside = scale(perpendicular(along), width / 2);
  return hangs && lobeOf(material, { from: add(centre, aside), to: subtract(centre, aside) }) !== undefined;
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

function remove(report: Report, sheet: Sheet, bridge: StandingBridge): Result<Fix> {
  const gap = gapUnder(report, sheet, bridge);
  if (typeof gap === 'string') return refuse(gap);
  const fallen = fallsWithout(sheet, gap.sheet);
  const title = fallen > 0 ? removalTitle(`${fallen.toFixed(1)} mm²`) : removalTitle();
  return verifiedFix(report, sheet, gap.edits, {
    kind: 'remove-bridge',
    title,
    within: removalRegion(sheet, bridge),
    effects: ['removes-bridge'],
  });
}

/** mm² that nothing holds once a bridge is gone. */
export function fallsWithout(sheet: Sheet, opened: Sheet): number {
  return islandArea(opened) - islandArea(sheet);
}

function islandArea({ pieces }: Sheet): number {
  return pieces.reduce((sum, { island, area }) => sum + (island ? area : 0), 0);
}

function stripOver(bridge: StandingBridge, width: number): Strip {
  const [from, to] = endsOf(bridge);
  return stripAlong(from, to, width, 0.1 * width);
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
  return fixResult(report, facts, { title, layerId: id, asked: effects }, change);
}
