/** Whether an island that is left would hang at a narrower limit: the sheet is checked as if that were stated, and bridges are proven. */
import { boxContains, edgesIn, ringsOf } from '../../../geometry/base/ring';
import { regionContains } from '../../../geometry/boolean/index';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import { effectiveConfig } from '../../check/effective-config';
import { asManyAsHold } from './attempt';
import { type BridgePlanChoice, bridgeWidthFor, planFor } from './plan';
import { type Vicinity, vicinityOf } from './vicinity';

/** Shares of the width that are tried; much less than half of the limit is no bridge. */
const NARROWER = [0.85, 0.7, 0.55, 0.4];
/** Of larger sheets nothing is said: each limit takes a check of all, and some proofs. */
const MOST_EDGES = 20_000;
/** Proofs for a layer, and for an island at one limit. */
const PROOFS = { layer: 12, each: 3 };

/**
 * @returns mm: the widest limit that was tried by which the island hangs, if need be on islands that hang themselves; undefined
 * where none is known
 */
export type NarrowerLimit = (island: Piece) => number | undefined;

export function narrowerLimitFor(report: Report, sheet: Sheet, choice: BridgePlanChoice): NarrowerLimit {
  const width = bridgeWidthFor(report, sheet, choice.bridgeWidth) - sheet.kerf;
  const { bridgeWidth: _, ...plan } = choice;
  const lowered = new Map<Report, Map<number, Report>>();
  const reportAt = (of: Report, limit: number): Report => {
    const known = lowered.get(of)?.get(limit) ?? checkedAt(of, limit);
    lowered.set(of, (lowered.get(of) ?? new Map<number, Report>()).set(limit, known));
    return known;
  };
  let left = edgesIn(sheet.openings.flatMap(ringsOf)) <= MOST_EDGES && !report.project ? PROOFS.layer : 0;
  const hangsAt = (within: Vicinity, limit: number): boolean => {
    const { island } = within;
    const wide = { ...choice, bridgeWidth: limit, thorough: true };
    if (left <= 0 || planFor(within.report, within.sheet, [island], wide).unbridged[0]) return false;
    const now = reportAt(within.report, limit);
    const own = now.sheets.find(({ layer }) => layer.id === within.sheet.layer.id);
    const piece = own?.pieces.find(({ polygon }) => regionContains([polygon], island.label));
    if (!own || !piece) return false;
    const proofs = { left: Math.min(left, PROOFS.each) };
    left -= proofs.left;
    const spent = { avoid: [], proofs };
    const { proven } = asManyAsHold({ report: now, sheet: own }, [piece], plan, { plan: { thorough: true } }, spent);
    left += proofs.left;
    const its = proven?.bridges.filter((each) => each.island === piece || each.target === piece);
    return its?.every(({ from, to }) => boxContains(within.box, from) && boxContains(within.box, to)) === true;
  };
  return (island) => {
    if (left <= 0) return undefined;
    const within = vicinityOf(report, sheet, island) ?? { report, sheet, island, box: sheet.frame };
    const limits = NARROWER.map((share) => Math.floor(100 * share * width + 1e-6) / 100);
    return limits.find((limit) => hangsAt(within, limit));
  };
}

function checkedAt({ text, settings, session }: Report, bridge: number): Report {
  const config = effectiveConfig(settings);
  return session.check(text, { ...settings, config: { ...config, limits: { ...config.limits, bridge } } }, true);
}
