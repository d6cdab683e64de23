/** What is said of an island that no bridge could be found for: where it is, what was tried, and what would do. */
import { openOutline } from '../../../checks/open-outline/check';
import { thinBridge } from '../../../checks/thin-bridge/check';
import { formatMillimetres } from '../../../config/values';
import { LONGEST_BRIDGE } from '../../../edits/plan/index';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import { inscribedDisc } from '../../../geometry/polygon/inscribed-circle';
import type { Refusal } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { statedName } from '../../../sheet/layer/layers';
import { sourcesOf } from '../../../sheet/source-index';
import type { Piece, Sheet } from '../../../sheet/types';
import { quoted } from '../../../text/wording';
import type { VerifiedBridges } from './cut';
import { type NarrowerLimit, narrowerLimitFor } from './narrower';
import { type BridgePlanChoice, bridgeWidthFor, planFor } from './plan';

/**
 * @param tried why the bridges that were found do not hold; undefined where none was found
 * @param narrower at which limit the island would hang
 */
export function refusalForLeft(
  report: Report,
  sheet: Sheet,
  island: Piece,
  choice: BridgePlanChoice,
  tried: Refusal<VerifiedBridges> | undefined,
  narrower: NarrowerLimit = narrowerLimitFor(report, sheet, choice),
): Refusal<VerifiedBridges> {
  const width = bridgeWidthFor(report, sheet, choice.bridgeWidth) - sheet.kerf;
  const place = placeOf(sheet, island);
  if (tried && !tried.anyway && hasOpenOutline(report, sheet)) {
    return { reason: `Island ${place}: an outline that is not closed lies in its way.`, first: CLOSE };
  }
  const isTooNarrow =
    (!tried || tried.reason.includes(thinBridge.meta.outcome)) &&
    2 * inscribedDisc(island.polygon, DRAWN_ALIKE).radius < width + sheet.kerf;
  if (tried && !isTooNarrow) {
    const [named, plain] = [place, placeIn(island)].map((where) => `Island ${where}: ${whatCame(tried.reason)}`);
    const reason = named && named.length <= LONGEST_REASON ? named : (plain ?? tried.reason);
    // Some say themselves what comes first.
    const first = tried.first ?? (/ first\.$/.test(reason) ? undefined : helpOf(width, narrower(island), MOVE));
    return { ...tried, reason, ...(first && { first }) };
  }
  if (!tried && planFor(report, sheet, [island], choice).reasons.get(island) === 'too-far') {
    const farthest = formatMillimetres(LONGEST_BRIDGE);
    return {
      reason: `No bridge fits the island ${place}: all that hangs on the sheet is over ${farthest} away.`,
      first: REMOVE,
    };
  }
  const why = isTooNarrow
    ? `which is narrower than a bridge of ${formatMillimetres(width)}`
    : 'from any place round it in any direction';
  const reason = `No bridge fits the island ${place}, ${why}.`;
  return { ...tried, reason, first: helpOf(width, narrower(island), REMOVE) };
}

/** What a narrower bridge that holds tells of the limit and of the size. */
function helpOf(width: number, narrower: number | undefined, otherwise: string): string {
  if (narrower === undefined) return otherwise;
  const larger = (Math.ceil((10 * width) / narrower) / 10).toFixed(1);
  const one = `One of ${formatMillimetres(narrower)} would hold`;
  return `${one}: lower limits.bridge, cut the drawing ${larger} times as large, or remove it.`;
}

/** A bridge across an open outline would close it, and so change what is cut out. */
function hasOpenOutline({ complete }: Report, { layer }: Sheet): boolean {
  return complete.some(({ check, layerId }) => check === openOutline.meta.id && layerId === layer.id);
}

const CLOSE = 'Close that outline first.';
const REMOVE = 'Remove it, or redraw what is round it.';
const MOVE = 'Cut it as two sheets, move what is beside it, or remove it.';

/** Where it is, and what the artist calls it. */
function placeOf(sheet: Sheet, island: Piece): string {
  const at = placeIn(island);
  const element = sourcesOf(sheet).along(island.polygon.outer)[0]?.shape.element;
  const name = element && statedName(element);
  // The only thing in a layer often has its name, which is told with the island's anyway.
  return name && name !== sheet.layer.name ? `${quoted([name]).join('')} ${at}` : at;
}

function placeIn({ label }: Piece): string {
  return `at ${label.x.toFixed(1)}, ${label.y.toFixed(1)} mm`;
}

/** Characters. */
const LONGEST_REASON = 120;

/** What came of the bridges that were tried, in the words of proofs but for those that speak of findings and areas. */
function whatCame(reason: string): string {
  if (/^The floating-island would/.test(reason)) return 'a bridge would not come through to it.';
  if (/would change elsewhere\.$/.test(reason)) return 'a bridge would change what is painted beside it.';
  return reason.replace(/^It would/, 'any bridge would').replace(/^(The|This) /, (word) => word.toLowerCase());
}
