/** Bridges of a plan that was made for an earlier build of a drawing, put into the build that there is now. */
import { whyNot } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Piece, Sheet } from '../../../sheet/types';
import { quoted } from '../../../text/wording';
import { type BridgeOutcome, outcomeOf } from '../bridge-islands';
import type { PlannedBridge, ProvenCut } from '../bridging/cut';
import { oneAfterTheOther } from '../bridging/joined';
import { bridgeTogether } from '../bridging/together';
import { islandOf, nameOfIsland } from './names';
import { type IslandNow, islandNamed, islandsNow, type KeptBridge } from './place';
import { asManyAsStand, type Wanted } from './standing';

export type { IslandName } from './names';
export type { KeptBridge } from './place';

export interface KeptOutcome extends BridgeOutcome {
  /** Bridges that stand elsewhere than the plan has them, an island each. */
  readonly moved: readonly string[];
  /** How many islands are loose that the plan does not name. */
  readonly unnamed: number;
}

/** The plan's name for what a bridge holds, by which the next build can be given the same. */
export function keptBridgeOf(report: Report, bridge: PlannedBridge): KeptBridge | undefined {
  const sheet = report.sheets.find(({ layer }) => layer.id === bridge.layerId);
  const piece = sheet && islandOf(sheet, bridge);
  const island = piece && nameOfIsland(sheet, piece);
  return island && { island, from: bridge.from, to: bridge.to, width: bridge.cutWidth };
}

/** Below this share of the islands that it names, a plan is one for another drawing. */
const SAME_DRAWING = 0.5;

/**
 * Puts the bridges of a plan into every layer. An island whose bridges cannot be placed gets new ones near by.
 * @returns one sentence where the plan is for another drawing
 */
export function keepBridges(report: Report, plan: readonly KeptBridge[]): KeptOutcome | string {
  const other = otherDrawing(report, plan);
  if (other !== undefined) return other;
  const refusals: { message: string }[] = [];
  const moved: string[] = [];
  let whole: ProvenCut | undefined;
  for (const { layer } of report.sheets) {
    const before = whole?.after ?? report;
    const sheet = before.sheets.find((each) => each.layer.id === layer.id);
    const wanted = plan.filter(({ island }) => island.layer === layer.name);
    if (!sheet || wanted.length === 0) continue;
    const kept = keepInLayer(before, sheet, wanted);
    moved.push(...kept.moved);
    refusals.push(...kept.lost.map((message) => ({ message: `Layer ${quoted([layer.name])[0]}: ${message}` })));
    if (kept.proven) whole = whole ? oneAfterTheOther(whole, kept.proven, report.text) : kept.proven;
  }
  return { ...outcomeOf(report, whole, refusals), moved, unnamed: unnamedIn(whole?.after ?? report, plan) };
}

function unnamedIn({ sheets }: Report, plan: readonly KeptBridge[]): number {
  const loose = sheets.flatMap((sheet) => islandsNow(sheet));
  const isNamed = ({ name }: Pick<IslandNow, 'name'>): boolean =>
    plan.some(({ island }) => island.layer === name.layer && islandNamed(island, [{ name }]) !== undefined);
  return loose.filter((island) => !isNamed(island)).length;
}

function otherDrawing({ sheets }: Report, plan: readonly KeptBridge[]): string | undefined {
  const named = new Map(plan.map(({ island }) => [JSON.stringify(island), island]));
  const here = sheets.flatMap((sheet) => islandsNow(sheet).map((now) => ({ layer: sheet.layer.name, now })));
  const found = [...named.values()].filter((name) =>
    islandNamed(
      name,
      here.flatMap(({ layer, now }) => (layer === name.layer ? [now] : [])),
    ),
  );
  if (named.size === 0) return 'The plan has no bridges.';
  if (found.length >= SAME_DRAWING * named.size) return undefined;
  return `The plan is for another drawing: of the ${named.size} islands that it names, ${found.length} are here.`;
}

interface KeptInLayer {
  readonly proven: ProvenCut | undefined;
  readonly moved: readonly string[];
  readonly lost: readonly string[];
}

function keepInLayer(report: Report, sheet: Sheet, plan: readonly KeptBridge[]): KeptInLayer {
  const islands = islandsNow(sheet);
  const wanted = plan.map((kept) => ({ kept, now: islandNamed(kept.island, islands) }));
  const gone = wanted.filter(({ now }) => !now).map(({ kept }) => `${wordsOf(kept)} is not here any more.`);
  const { proven, moved, left } = asManyAsStand(report, sheet, wanted);
  const others = anew(report, sheet, proven, wanted);
  const isLoose = (kept: KeptBridge): boolean => others.waiting.some((each) => each.kept === kept);
  const fewer = [...left].flatMap(([kept, why]) => (isLoose(kept) ? [] : `${wordsOf(kept)} has a bridge less: ${why}`));
  const elsewhere = [...moved, ...others.held].map((kept) => `${wordsOf(kept)} has bridges at other places.`);
  return {
    proven: others.proven,
    moved: [...new Set(elsewhere)],
    lost: [...new Set([...gone, ...fewer, ...others.lost])],
  };
}

interface BridgedAnew {
  readonly proven: ProvenCut | undefined;
  /** Those of the plan whose islands none of its bridges holds. */
  readonly waiting: readonly { readonly kept: KeptBridge; readonly piece: Piece }[];
  /** Of those the ones whose islands have new bridges. */
  readonly held: readonly KeptBridge[];
  /** Why the others have none. */
  readonly lost: readonly string[];
}

/** New bridges for islands of the plan that are still loose. */
function anew(report: Report, sheet: Sheet, before: ProvenCut | undefined, wanted: readonly Wanted[]): BridgedAnew {
  const now = before?.after ?? report;
  const sheetNow = now.sheets.find(({ layer }) => layer.id === sheet.layer.id) ?? sheet;
  const loose = islandsNow(sheetNow);
  const waiting = wanted.flatMap(({ kept, now: island }) => {
    const still = island && islandNamed(kept.island, loose);
    return still ? [{ kept, piece: still.piece }] : [];
  });
  if (waiting.length === 0) return { proven: before, waiting, held: [], lost: [] };
  const pieces = [...new Set(waiting.map(({ piece }) => piece))];
  const { proven, left } = bridgeTogether(now, sheetNow, pieces, {});
  const why = (piece: Piece): string => {
    const refusal = left.get(piece);
    return refusal ? whyNot(refusal) : 'No bridge fits there.';
  };
  const isLeft = ({ piece }: { readonly piece: Piece }): boolean => left.has(piece);
  return {
    proven: proven && before ? oneAfterTheOther(before, proven, report.text) : (proven ?? before),
    waiting,
    held: waiting.filter((each) => !isLeft(each)).map(({ kept }) => kept),
    lost: waiting.filter(isLeft).map(({ kept, piece }) => `${wordsOf(kept)} has no bridge: ${why(piece)}`),
  };
}

function wordsOf({ island: { id, ordinal } }: KeptBridge): string {
  return id ? `The island in ${quoted([id])[0]}` : `The island in element ${ordinal + 1}`;
}
