/**
 * A standing bridge as it would stand elsewhere or in another width, before any text is written: quick enough to follow
 * a pointer. The sheet without the bridge is measured once and kept; each further place in the gap is only planned.
 */

import { ALL_CHECKS } from '../../checks/all';
import { changedRegion, cutStrips, ROUNDING_ROOM, stripsFor } from '../../edits/bridge/cut';
import { removeBridge } from '../../edits/bridge/remove-bridge';
import { composeEdits } from '../../edits/path/text-edits';
import { bridgeAcrossGap } from '../../edits/plan/at-point';
import type { StandingBridge } from '../../edits/plan/standing/detect';
import type { Bridge } from '../../edits/plan/types';
import { regionOfStrip } from '../../edits/roots/outline';
import { shapesNearStrips } from '../../edits/strip/shapes-near';
import { polygonOf, type Strip, stripAlong } from '../../edits/strip/strip';
import type { Point } from '../../geometry/base/curve-types';
import type { Polygon, Region } from '../../geometry/base/polygon-types';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { add, distance, dot, normalise, scale, subtract } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import { buildSegmentIndex, nearestSegment } from '../../geometry/spatial/segment-index';
import type { BridgePreview, Report } from '../../report/report';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { effectiveConfig } from '../check/effective-config';
import { bridgeWidthFor, hiddenOn, rootsOn } from './bridging/plan';
import { checkEdited } from './verify';

/** Where a bridge shall stand, sheet mm, and how wide, mm as cut; what is left out stays. */
export interface BridgeTarget {
  readonly to?: Point;
  readonly width?: number;
}

/** A change that can be made; whether it may be is not proven. */
export interface PlannedChange {
  readonly bridge: BridgePreview;
  readonly edits: readonly TextEdit[];
  /** Where the change may alter the openings, sheet mm. */
  readonly within: Region;
}

/** A sheet with one of its bridges taken out. */
export interface OpenedGap {
  readonly sheet: Sheet;
  /** What takes the bridge out of the text. */
  readonly edits: readonly TextEdit[];
}

/** mm: a place this near to where the bridge stands is its own: there it keeps its direction. */
const SAME_PLACE = PLAINLY_BESIDE;
const NOT_AGAIN = 'The bridge cannot be drawn anew in its place.';
/** mm: places outside of the gap are taken so far inside of it. */
const INSIDE = PLAINLY_BESIDE;

/** The sheet without a bridge; remembered, for all that may become of the bridge begins with it. */
export function gapUnder(report: Report, sheet: Sheet, bridge: StandingBridge): OpenedGap | string {
  const { x, y } = bridge.centre;
  return report.session.remember(`gap under ${sheet.layer.id} ${x} ${y}`, () => {
    const removed = removeBridge(sheet, bridge);
    if ('refusal' in removed) return removed.refusal;
    const opened = sheetOnceEdited(report, removed.edits, sheet);
    return opened ? { sheet: opened, edits: removed.edits } : 'This would change the layers.';
  });
}

/**
 * Where a bridge would stand, sheet mm: at the nearest place of its gap, for a pointer need not stay in it. No text is
 * written: see `planChange`.
 */
export function ghostOf(
  report: Report,
  sheet: Sheet,
  bridge: StandingBridge,
  target: BridgeTarget,
): BridgePreview | string {
  const gap = gapUnder(report, sheet, bridge);
  if (typeof gap === 'string') return gap;
  const opening = target.to && openingUnder(gap, bridge);
  const near = target.to && opening ? { ...target, to: nearestWithin(opening, target.to) } : target;
  const placed = placeIn(report, sheet, bridge, gap, near);
  return typeof placed === 'string' ? placed : previewOf(sheet, placed.planned, placed.strip);
}

/** @returns the sentence that says why the change cannot be made, where it cannot */
export function planChange(
  report: Report,
  sheet: Sheet,
  bridge: StandingBridge,
  target: BridgeTarget,
): PlannedChange | string {
  const gap = gapUnder(report, sheet, bridge);
  if (typeof gap === 'string') return gap;
  const placed = placeIn(report, sheet, bridge, gap, target);
  if (typeof placed === 'string') return placed;
  const { planned, strip } = placed;
  const cut = cutStrips(gap.sheet, [strip]);
  if ('refusal' in cut) return cut.refusal;
  return {
    bridge: previewOf(sheet, planned, strip),
    edits: composeEdits(report.text, gap.edits, cut.edits),
    within: [...removalRegion(sheet, bridge), ...changedRegion(gap.sheet, [strip])],
  };
}

interface Placed {
  readonly planned: Bridge;
  readonly strip: Strip;
}

function placeIn(
  report: Report,
  sheet: Sheet,
  bridge: StandingBridge,
  gap: OpenedGap,
  { to = bridge.centre, width }: BridgeTarget,
): Placed | string {
  const opening = openingUnder(gap, bridge);
  if (!opening) return NOT_AGAIN;
  if (!regionContains([opening], to)) return 'A bridge can be moved only within its own gap.';
  const drawn = width === undefined ? bridge.width - ROUNDING_ROOM : bridgeWidthFor(report, sheet, width);
  const along = distance(to, bridge.centre) < SAME_PLACE ? bridge.along : undefined;
  const planned = bridgeAcrossGap(
    gap.sheet,
    to,
    { width: drawn, exact: true, hidden: hiddenUnder(report, sheet) },
    along,
  );
  if (!planned) return along ? NOT_AGAIN : 'No straight bridge fits there. Try where the sides run parallel.';
  // Rounded roots stay so, whatever new bridges get.
  const roots = bridge.flare > 0 ? 'rounded' : rootsOn(report);
  return { planned, strip: stripsFor(gap.sheet, [planned], roots)[0] as Strip };
}

function openingUnder({ sheet }: OpenedGap, { centre }: StandingBridge): Polygon | undefined {
  return gapAt(sheet, centre);
}

/** The opening that a place lies in, sheet mm. */
export function gapAt({ openings }: Sheet, place: Point): Polygon | undefined {
  return openings.find((opening) => regionContains([opening], place));
}

/** A place of a gap that is as near as can be, sheet mm. */
export function nearestWithin(gap: Polygon, place: Point): Point {
  if (regionContains([gap], place)) return place;
  const near = nearestSegment(buildSegmentIndex([gap]), place);
  const inward = near && normalise(subtract(near.point, place));
  return near && inward ? add(near.point, scale(inward, INSIDE)) : place;
}

function hiddenUnder(report: Report, sheet: Sheet): Region {
  return report.session.remember(`painted over ${sheet.layer.id}`, () => hiddenOn(report, sheet));
}

function previewOf(sheet: Sheet, { from, to, length, width, hiddenShare = 0 }: Bridge, strip: Strip): BridgePreview {
  return {
    layer: sheet.layer.name,
    layerId: sheet.layer.id,
    strip: regionOfStrip(strip),
    from,
    to,
    length,
    width: width - sheet.kerf,
    shown: 1 - hiddenShare,
  };
}

/** Measured, but not checked: where a bridge can stand is seen without it, in a fraction of the time. */
function sheetOnceEdited(report: Report, edits: readonly TextEdit[], { layer: { id } }: Sheet): Sheet | undefined {
  return checkEdited(withoutChecks(report), edits).sheets.find(({ layer }) => layer.id === id);
}

function withoutChecks(report: Report): Report {
  const checks = Object.fromEntries(ALL_CHECKS.map(({ meta }) => [meta.id, 'off' as const]));
  const settings = { ...report.settings, config: { ...effectiveConfig(report.settings), checks } };
  const { project } = report;
  if (!project) return { ...report, settings };
  return { ...report, settings, project: { ...project, report: { ...project.report, settings } } };
}

/** The ends of its middle line, beyond the farthest ends of its sides. */
export function endsOf({ centre, along, sides }: StandingBridge): readonly [Point, Point] {
  const places = sides.flat().map((end) => dot(subtract(end, centre), along));
  return [add(centre, scale(along, Math.min(...places))), add(centre, scale(along, Math.max(...places)))];
}

/** Where taking a bridge out may change the openings: its own place, and a little of both banks. */
export function removalRegion({ layer }: Sheet, bridge: StandingBridge): Region {
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
  const aside = Math.max(reach, bridge.flare);
  return [polygonOf(stripAlong(from, to, 1.05 * bridge.width + 2 * aside, bridge.width + reach))];
}
