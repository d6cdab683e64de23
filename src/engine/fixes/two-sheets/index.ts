/**
 * A layer as two sheets in one paint, each with bridges where the other has none: planned, cut, and proven one by one, and
 * then written and proven as two layers that are one painted region.
 */
import type { Effect } from '../../../checks/meta';
import { limitsOf } from '../../../config/limits';
import { formatMillimetres } from '../../../config/values';
import { writeTwoLayers } from '../../../edits/layer/second-layer';
import { planTwoSets, type TwoBridgeSets } from '../../../edits/plan/two-sets';
import { perimeter } from '../../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import { isRefusal, type Refusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import type { TextEdit } from '../../../text/text';
import { effectiveConfig } from '../../check/effective-config';
import { verifyCut } from '../bridging/cut';
import { bridgeWidthFor, hiddenOn, islandsOf } from '../bridging/plan';
import { BRIDGING_EFFECTS } from '../bridging/together';
import { distanceApart, proveTwoLayers, type TwoSheets } from './proof';

export type { TwoSheets } from './proof';

/** Two sheets, written into the file of the layer. */
export interface TwoLayers extends TwoSheets {
  readonly edits: readonly TextEdit[];
}

/** mm: beside the least distance, for edges that are written and flattened anew. */
const ROOM = DRAWN_ALIKE;

/** How near a bridge of one sheet may come to one of the other, in mm: what a sheet may slip, and the kerf. */
export function leastApart(report: Report, { kerf }: Sheet): number {
  return limitsOf(effectiveConfig(report.settings)).slip + kerf;
}

/** Two sets of bridges for all islands of a layer, or why there are none. Nothing is written into one file yet. */
export function verifyTwoSheets(report: Report, sheet: Sheet, bridgeWidth?: number): Result<TwoSheets> {
  const islands = islandsOf(sheet);
  if (islands.length === 0) return refuse('There is no island to bridge.');
  if (sheet.layer.with !== undefined) return refuse('It is a second sheet already.');
  const width = bridgeWidthFor(report, sheet, bridgeWidth);
  const options = { width, hidden: hiddenOn(report, sheet), unseen: true };
  const plans: TwoBridgeSets[] = [];
  let refusal: Refusal<never> | undefined;
  for (const plan of planTwoSets(sheet, islands, options, leastApart(report, sheet) + ROOM)) {
    if (plan.unbridged.length > 0) {
      refusal = noRoomFor(report, sheet, plan.unbridged, width);
      continue;
    }
    const both = verifyBoth(report, sheet, islands, plan, []);
    if (!isRefusal(both)) return both;
    plans.push(plan);
  }
  // A part of an island that would lift still beats an island that falls out.
  for (const plan of plans) {
    const both = verifyBoth(report, sheet, islands, plan, BRIDGING_EFFECTS);
    if (!isRefusal(both)) return both;
    refusal = { reason: both.reason };
  }
  return refusal ?? refuse('No two sets of bridges were found.');
}

function verifyBoth(
  report: Report,
  sheet: Sheet,
  islands: readonly Piece[],
  plan: TwoBridgeSets,
  effects: readonly Effect[],
): Result<TwoSheets> {
  const first = verifyCut(report, sheet, plan.first, islands, effects);
  if (isRefusal(first)) return { reason: first.reason };
  const second = verifyCut(report, sheet, plan.second, islands, effects);
  if (isRefusal(second)) return { reason: second.reason };
  const nearest = distanceApart(report, sheet, { first, second });
  const least = leastApart(report, sheet);
  if (nearest >= least) return { first, second };
  const [had, needed] = [nearest, least].map(formatMillimetres);
  return refuse(`A bridge would be ${had} from one of the other sheet, and ${needed} is the minimum.`);
}

/** The same, written as two layers and proven; remembered, for each island of the layer offers it. */
export function verifyTwoLayers(report: Report, sheet: Sheet): Result<TwoLayers> {
  return report.session.remember(`two sheets of ${sheet.layer.id}`, () => {
    const sheets = verifyTwoSheets(report, sheet);
    return isRefusal(sheets) ? refuse(sheets.reason) : asTwoLayers(report, sheet, sheets);
  });
}

/** Two sheets written into the layer's file, one behind the other. */
export function asTwoLayers(report: Report, sheet: Sheet, sheets: TwoSheets): Result<TwoLayers> {
  const { first, second } = sheets;
  const written = writeTwoLayers(sheet, first.edits, second.edits, report.sheets.length === 1);
  if ('refusal' in written) return refuse(written.refusal);
  const failed = proveTwoLayers(report, sheet, sheets, written.edits);
  return failed === undefined ? { ...sheets, edits: written.edits } : refuse(failed);
}

/**
 * Why there is no place: round an island there must be room for a bridge of either sheet and for the distance on both
 * sides between them.
 */
function noRoomFor(report: Report, sheet: Sheet, islands: readonly Piece[], width: number): Refusal<never> {
  const [island] = [...islands].sort((a, b) => roundOf(a) - roundOf(b));
  if (!island) return refuse('There is no island to bridge.');
  const { x, y } = island.label;
  const where = `the island at ${x.toFixed(1)}, ${y.toFixed(1)} mm`;
  const [had, needed] = [roundOf(island), 2 * (width + leastApart(report, sheet))];
  const lengths = `${formatMillimetres(needed)} all round needed, ${formatMillimetres(had)} there`;
  return had < needed
    ? refuse(`No room for two bridges round ${where}: ${lengths}.`)
    : refuse(`No bridge fits ${where} far enough from the other sheet's: ${lengths}.`);
}

/** mm all round an island. */
function roundOf({ polygon }: Piece): number {
  return perimeter(polygon.outer);
}
