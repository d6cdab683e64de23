/** What bridges are planned with: how wide they are, for which islands, and what later layers cover. */
import { SPECK } from '../../../checks/specks';
import { type BridgeRoots, type BridgeStyle, bridgeStyleOf } from '../../../config/bridge-style';
import { limitsOf } from '../../../config/limits';
import { type BridgePlan, type PlanOptions, planBridges } from '../../../edits/plan/index';
import { optionsForStyle } from '../../../edits/plan/style';
import type { Region } from '../../../geometry/base/polygon-types';
import { union } from '../../../geometry/boolean/index';
import type { Report } from '../../../report/report';
import { bendingOf } from '../../../sheet/deflection';
import type { Piece, Sheet } from '../../../sheet/types';
import { effectiveConfig } from '../../check/effective-config';

/** How a plan is to differ from the preferred one. */
export interface BridgePlanChoice
  extends Pick<PlanOptions, 'count' | 'near' | 'shortestOnly' | 'alone' | 'more' | 'thorough' | 'apartFrom'> {
  /** mm as cut; by default the limit. */
  readonly bridgeWidth?: number;
  /** By default as the settings say of the layer. */
  readonly style?: BridgeStyle;
}

export function planFor(report: Report, sheet: Sheet, islands: readonly Piece[], choice: BridgePlanChoice): BridgePlan {
  return planBridges(sheet, islands, optionsOf(report, sheet, choice));
}

export function optionsOf(
  report: Report,
  sheet: Sheet,
  { bridgeWidth, style, ...plan }: BridgePlanChoice,
): PlanOptions {
  const width = bridgeWidthFor(report, sheet, bridgeWidth);
  const config = effectiveConfig(report.settings);
  const wanted = optionsForStyle(style ?? bridgeStyleOf(config, sheet.layer.name));
  return { ...wanted, ...plan, width, bending: bendingOf(config), hidden: hiddenOn(report, sheet) };
}

/** mm as drawn: the width asked for, else the limit, and what the cut takes from it. */
export function bridgeWidthFor(report: Report, sheet: Sheet, bridgeWidth?: number): number {
  return (bridgeWidth ?? limitsOf(effectiveConfig(report.settings)).bridge) + sheet.kerf;
}

/** How bridges meet their banks. */
export function rootsOn(report: Report): BridgeRoots {
  return effectiveConfig(report.settings).bridges.roots ?? 'square';
}

/** What later layers paint over: a bridge there leaves no bare shadow. */
export function hiddenOn({ stack }: Report, sheet: Sheet): Region {
  const { layers, firsts } = stack;
  const own = layers.findIndex((other) => other.sheet.layer.id === sheet.layer.id);
  const later = layers.filter((_, i) => own >= 0 && i > own && firsts[i] !== firsts[own]);
  return union(later.map((other) => other.sheet.openings));
}

/** Those that are worth a bridge: specks are removed rather than held. */
export function islandsOf({ pieces }: Sheet): Piece[] {
  return pieces.filter(({ island, area }) => island && area >= SPECK);
}
