/** A plan of a layer with some of its bridges elsewhere: quick enough to follow a pointer, and proven as a whole. */
import { defined } from '../../../base/defined';
import type { BridgeStyle } from '../../../config/bridge-style';
import { bridgeAcrossGap } from '../../../edits/plan/at-point';
import { designOf } from '../../../edits/plan/design/index';
import { surroundingsOf } from '../../../edits/plan/index';
import type { Bridge } from '../../../edits/plan/types';
import type { Point } from '../../../geometry/base/curve-types';
import { cross, distance, interpolate, normalise, subtract } from '../../../geometry/base/vector';
import type { Fix } from '../../../report/fix';
import type { Result } from '../../../report/refusal';
import { refuse } from '../../../report/refusal';
import type { BridgePreview, Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { verifyCut } from '../bridging/cut';
import { hiddenOn } from '../bridging/plan';
import { BRIDGING_EFFECTS } from '../bridging/together';
import { gapAt, nearestWithin } from '../plan-change';
import { followersOf } from './followers';
import { asFix, layerBridges, layerPlanFix, uncutPreview } from './layer-bridges';

/** A bridge of a plan and where its middle line runs now, sheet mm. */
export interface MovedBridge {
  /** Number in the plan. */
  readonly bridge: number;
  readonly from: Point;
  readonly to: Point;
}

/** A bridge that is being moved. */
export interface BridgeMove {
  readonly bridge: number;
  /** Where its middle shall be, sheet mm: the nearest place of its gap is taken. */
  readonly to: Point;
  /** Whether its mirror twin and its likes stay where they are. */
  readonly apart: boolean;
}

export interface MovedTogether {
  /** The one that is moved first, then those that follow it. */
  readonly bridges: readonly (MovedBridge & { readonly preview: BridgePreview })[];
  /** Why they cannot stand so, as one sentence; those that can are among the bridges. */
  readonly reason?: string;
}

/** mm, and sine: how far a bridge may come to stand from where the one that it follows takes it. */
const FOLLOWS = { place: 0.4, direction: 0.06 };
const NO_ROOM = 'No straight bridge fits there. Try where the sides run parallel.';
const TURNED = 'No bridge in this direction fits there. In another style it may turn.';
const LOOSE = 'A bridge there would not hold this island.';
const ALIKE = 'What is alike has no room there: hold Alt to move this bridge alone.';

/**
 * Where a bridge of a plan, and what follows it, would stand; nothing is proven.
 * @param moved those that stand elsewhere already
 */
export function movedTogether(
  report: Report,
  sheet: Sheet,
  style: BridgeStyle,
  moved: readonly MovedBridge[],
  { bridge: number, to, apart }: BridgeMove,
): MovedTogether {
  const plan = planWith(report, sheet, style, moved);
  const bridge = plan[number];
  if (!bridge) return { bridges: [], reason: 'The plan has no such bridge any more.' };
  const gap = gapAt(sheet, middleOf(bridge));
  const place = gap ? nearestWithin(gap, to) : to;
  const along = keepsDirection(sheet, style, bridge) ? directionOf(bridge) : undefined;
  const placed = placedAt(report, sheet, bridge, place, along);
  if (typeof placed === 'string') return { bridges: [], reason: placed };
  if (along && !isParallel(placed, along)) return { bridges: [], reason: TURNED };
  const first = shown(report, sheet, number, placed);
  if (apart) return { bridges: [first] };
  const others = followersOf(sheet, plan, number).map((follower) => {
    const twin = defined(plan[follower.bridge]);
    const [from, end] = [follower.motion(placed.from), follower.motion(placed.to)];
    const there = placedAt(report, sheet, twin, interpolate(from, end, 0.5), directionOf({ from, to: end }));
    return typeof there !== 'string' && isAlike(there, from, end)
      ? shown(report, sheet, follower.bridge, there)
      : undefined;
  });
  const bridges = [first, ...others.filter((each) => each !== undefined)];
  return others.includes(undefined) ? { bridges, reason: ALIKE } : { bridges };
}

/** The plan with what was moved, cut and proven anew as a whole. */
export function movedPlanFix(
  report: Report,
  sheet: Sheet,
  style: BridgeStyle,
  moved: readonly MovedBridge[],
): Result<Fix> {
  if (moved.length === 0) return layerPlanFix(report, sheet, style);
  const { bridges, left } = layerBridges(report, sheet, style);
  const planned = moved.map((each) => placedAsTold(report, sheet, bridges, each));
  const none = planned.find((each) => typeof each === 'string');
  if (none !== undefined) return refuse(none);
  const islands = [...new Set(bridges.flatMap(({ island, target }) => [island, target]))].filter(
    ({ island }) => island,
  );
  const now = bridges.map((bridge, number) => {
    const at = moved.findIndex((each) => each.bridge === number);
    return at < 0 ? bridge : (planned[at] as Bridge);
  });
  return asFix(report, sheet, verifyCut(report, sheet, now, islands, BRIDGING_EFFECTS), left.size);
}

/** Those that cannot be placed as they are told stay where they were planned. */
function planWith(report: Report, sheet: Sheet, style: BridgeStyle, moved: readonly MovedBridge[]): readonly Bridge[] {
  const { bridges } = layerBridges(report, sheet, style);
  const elsewhere = new Map(moved.map((each) => [each.bridge, placedAsTold(report, sheet, bridges, each)]));
  return bridges.map((bridge, number) => {
    const placed = elsewhere.get(number);
    return placed === undefined || typeof placed === 'string' ? bridge : placed;
  });
}

function placedAsTold(
  report: Report,
  sheet: Sheet,
  bridges: readonly Bridge[],
  { bridge: number, from, to }: MovedBridge,
): Bridge | string {
  const bridge = bridges[number];
  if (!bridge) return 'The plan has no such bridge any more.';
  return placedAt(report, sheet, bridge, interpolate(from, to, 0.5), directionOf({ from, to }));
}

/** The same bridge through another place: one of its ends stays on the island that it was planned for. */
function placedAt(report: Report, sheet: Sheet, bridge: Bridge, place: Point, along?: Point): Bridge | string {
  if (!gapAt(sheet, place)) return NO_ROOM;
  const options = { width: bridge.width, exact: true, hidden: hiddenFor(report, sheet) };
  const around = report.session.remember(`round ${sheet.layer.id} for ${bridge.width}`, () =>
    surroundingsOf(sheet, options),
  );
  const placed = bridgeAcrossGap(sheet, place, options, along, around);
  if (!placed) return NO_ROOM;
  if (placed.island === bridge.island) return placed;
  const { island, target, from, to } = placed;
  return target === bridge.island ? { ...placed, island: target, target: island, from: to, to: from } : LOOSE;
}

/** A style that asks for one direction keeps it, and so does lettering. */
function keepsDirection(sheet: Sheet, style: BridgeStyle, { island }: Bridge): boolean {
  if (style === 'upright' || style === 'level') return true;
  if (style !== 'auto') return false;
  const number = sheet.pieces.indexOf(island);
  return designOf(sheet).rows.some(({ counters }) => counters.some(({ piece }) => piece === number));
}

function isAlike(bridge: Bridge, from: Point, to: Point): boolean {
  const direction = directionOf({ from, to });
  const off = distance(middleOf(bridge), interpolate(from, to, 0.5));
  return off < FOLLOWS.place && direction !== undefined && isParallel(bridge, direction);
}

function isParallel(bridge: Bridge, direction: Point): boolean {
  const is = directionOf(bridge);
  return is !== undefined && Math.abs(cross(is, direction)) < FOLLOWS.direction;
}

function hiddenFor(report: Report, sheet: Sheet) {
  return report.session.remember(`painted over ${sheet.layer.id}`, () => hiddenOn(report, sheet));
}

function shown(report: Report, sheet: Sheet, number: number, bridge: Bridge): MovedTogether['bridges'][number] {
  const { from, to } = bridge;
  return { bridge: number, from, to, preview: uncutPreview(report, sheet, bridge) };
}

const middleOf = ({ from, to }: Pick<Bridge, 'from' | 'to'>): Point => interpolate(from, to, 0.5);
const directionOf = ({ from, to }: Pick<Bridge, 'from' | 'to'>): Point | undefined => normalise(subtract(to, from));
