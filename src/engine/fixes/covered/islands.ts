/** Islands that later layers paint over are cut away: no piece to lose, no bridge, and the same print. */

import type { Finding } from '../../../checks/finding';
import { floatingIsland } from '../../../checks/floating-island/check';
import { limitsOf } from '../../../config/limits';
import { type CutWay, cutAway, drawnPlace, waysToCutAway } from '../../../edits/bridge/cut-away';
import { boxOfPolygon, difference } from '../../../geometry/boolean/index';
import { isRefusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { LayerId } from '../../../sheet/layer/layer-id';
import type { Piece, Sheet } from '../../../sheet/types';
import { isCoveredByLater, withoutHairlines } from '../../../stack/covered-by-later';
import { openingsAsCut } from '../../../stack/openings-as-cut';
import type { TextEdit } from '../../../text/text';
import { effectiveConfig } from '../../check/effective-config';
import { type Proof, verify } from '../verify';

/** Islands of one file that were cut away, proven together. */
export interface CutAway extends Proof {
  readonly edits: readonly TextEdit[];
  readonly cuts: readonly SheetCut[];
}

/** Islands of one sheet, each with the way that it goes. */
export interface SheetCut {
  readonly sheet: Sheet;
  readonly islands: ReadonlyMap<Piece, CutWay>;
}

/** The islands that were found in a sheet, accepted or not, and that later layers paint over. */
export function coveredIslands({ results }: Report, { layer }: Sheet): Piece[] {
  const found = results.find(({ check }) => check === floatingIsland.meta.id)?.findings ?? [];
  return found.flatMap(({ subject, layerId }) =>
    subject?.kind === 'island' && subject.cover && layerId === layer.id ? [subject.piece] : [],
  );
}

/** One island, in the first way that holds. */
export function cutCoveredIsland(report: Report, sheet: Sheet, island: Piece): Result<CutAway> {
  let why = refuse('Its outlines reach beyond it; change the drawing by hand.') as Result<CutAway>;
  for (const way of waysToCutAway(sheet, island)) {
    const result = proveCuts(report, [{ sheet, islands: new Map([[island, way]]) }]);
    if (!isRefusal(result)) return result;
    why = result;
  }
  return why;
}

/** What came of cutting several away. */
export interface CoveredOutcome {
  /** Undefined where none could be. */
  readonly cut: CutAway | undefined;
  /** Those that could not be, and why. */
  readonly left: readonly { readonly sheet: Sheet; readonly island: Piece; readonly reason: string }[];
}

/** All that later layers cover in some sheets of a file, as many of them as go together. */
export function cutCoveredIslands(report: Report, sheets: readonly Sheet[]): CoveredOutcome {
  const left: { sheet: Sheet; island: Piece; reason: string }[] = [];
  let cut: CutAway | undefined;
  for (const sheet of sheets) {
    const islands = coveredIslands(report, sheet);
    const found = islands.length > 0 ? cutTogether(report, sheet, islands) : undefined;
    const joined = found?.cut && (cut ? proveCuts(report, [...cut.cuts, ...found.cut.cuts]) : found.cut);
    for (const [island, reason] of found?.left ?? []) left.push({ sheet, island, reason });
    if (joined && isRefusal(joined)) for (const island of islands) left.push({ sheet, island, reason: joined.reason });
    else cut = joined ?? cut;
  }
  return { cut, left };
}

interface Together {
  readonly cut: CutAway | undefined;
  readonly left: readonly (readonly [Piece, string])[];
}

/** Those that keep others from it are found by halving. */
function cutTogether(report: Report, sheet: Sheet, islands: readonly Piece[]): Together {
  const [first] = islands;
  if (islands.length === 1 && first) {
    const alone = cutCoveredIsland(report, sheet, first);
    return isRefusal(alone) ? { cut: undefined, left: [[first, alone.reason]] } : { cut: alone, left: [] };
  }
  const ways = new Map(
    islands.flatMap((island) =>
      waysToCutAway(sheet, island)
        .slice(0, 1)
        .map((way) => [island, way]),
    ),
  );
  const whole = ways.size < islands.length ? undefined : proveCuts(report, [{ sheet, islands: ways }]);
  if (whole && !isRefusal(whole)) return { cut: whole, left: [] };
  const middle = islands.length >> 1;
  const [a, b] = [islands.slice(0, middle), islands.slice(middle)].map((half) => cutTogether(report, sheet, half));
  const left = [...(a?.left ?? []), ...(b?.left ?? [])];
  if (!a?.cut || !b?.cut) return { cut: a?.cut ?? b?.cut, left };
  const both = proveCuts(report, [{ sheet, islands: new Map([...islandsIn(a.cut), ...islandsIn(b.cut)]) }]);
  if (!isRefusal(both)) return { cut: both, left };
  return { cut: a.cut, left: [...left, ...islandsIn(b.cut).map(([island]) => [island, both.reason] as const)] };
}

function islandsIn({ cuts }: CutAway): [Piece, CutWay][] {
  return cuts.flatMap(({ islands }) => [...islands]);
}

/** Beside what every fix promises: nothing is painted that later layers do not paint over, within the slip. */
function proveCuts(report: Report, cuts: readonly SheetCut[]): Result<CutAway> {
  const edits: TextEdit[] = [];
  for (const { sheet, islands } of cuts) {
    const outcome = cutAway(sheet, islands);
    if ('refusal' in outcome) return refuse(outcome.refusal);
    edits.push(...outcome.edits);
  }
  if (edits.some((edit, i) => edits.slice(0, i).some((other) => touches(edit, other)))) {
    return refuse('They are drawn in one stretch of the text; cut them away one by one.');
  }
  const proof = verify(report, edits, { gone: findingsOf(report, cuts), within: placesOf(cuts) });
  if (isRefusal(proof)) return refuse(proof.reason);
  const seen = cuts.find(({ sheet }) => isSeen(report, proof.after, sheet.layer.id));
  if (seen) return refuse(`In layer "${seen.sheet.layer.name}" it would be seen.`);
  return { ...proof, edits, cuts };
}

const touches = ({ span: a }: TextEdit, { span: b }: TextEdit): boolean => a.from <= b.to && b.from <= a.to;

function findingsOf({ complete }: Report, cuts: readonly SheetCut[]): Finding[] {
  return complete.filter(
    ({ subject }) => subject?.kind === 'island' && cuts.some(({ islands }) => islands.has(subject.piece)),
  );
}

function placesOf(cuts: readonly SheetCut[]) {
  return new Map(
    cuts.map(({ sheet, islands }) => [
      sheet.layer.id,
      [...islands.keys()].flatMap((island) => drawnPlace(sheet, island)),
    ]),
  );
}

/** Whether the layer paints what it did not, and later layers do not paint over it. */
function isSeen(before: Report, after: Report, id: LayerId): boolean {
  const number = after.stack.layers.findIndex(({ sheet }) => sheet.layer.id === id);
  const [old, now] = [before, after].map(({ sheets }) => sheets.find(({ layer }) => layer.id === id));
  if (!old || !now || number < 0) return true;
  const { slip } = limitsOf(effectiveConfig(after.settings));
  const added = withoutHairlines(difference(openingsAsCut(now), openingsAsCut(old)));
  const paint = after.stack.laterPaint;
  return added.some((place) => !isCoveredByLater([place], paint.within(boxOfPolygon(place), number), slip));
}
