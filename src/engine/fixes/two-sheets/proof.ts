/** That two layers, written one behind the other, paint together what the one layer painted. */
import type { Finding } from '../../../checks/finding';
import { severityRank } from '../../../config/check-id';
import type { Region } from '../../../geometry/base/polygon-types';
import { WRITTEN_STEP } from '../../../geometry/base/tolerances';
import { areaOf, difference, union } from '../../../geometry/boolean/index';
import { symmetricDifference } from '../../../geometry/polygon/diff';
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { distanceBetween, withoutSlivers } from '../../../stack/near-bridges';
import type { TextEdit } from '../../../text/text';
import { metaOf } from '../../metas';
import type { VerifiedBridges } from '../bridging/cut';
import { islandsOf } from '../bridging/plan';
import { checkEdited } from '../verify';

/** The bridges of either sheet, each set proven as if it were the layer's own. */
export interface TwoSheets {
  readonly first: VerifiedBridges;
  readonly second: VerifiedBridges;
}

/** Area in mm² for each mm of cut line that may differ through rounding. */
const AREA_PER_CUT_LENGTH = 2 * WRITTEN_STEP;

/** mm from the ground that bridges of one sheet keep bare to that of the other, as they are cut; 0 where they share any. */
export function distanceApart(report: Report, sheet: Sheet, { first, second }: TwoSheets): number {
  const at = report.sheets.indexOf(sheet);
  const [one, other] = [first, second].map(({ edits }) => {
    const { openings = [] } = checkEdited(report, edits).sheets[at] ?? {};
    return withoutSlivers(difference(sheet.openings, openings));
  });
  return distanceBetween(one ?? [], other ?? []);
}

/** @returns what does not hold, a sentence; undefined where all does */
export function proveTwoLayers(
  report: Report,
  sheet: Sheet,
  { first, second }: TwoSheets,
  edits: readonly TextEdit[],
): string | undefined {
  const after = checkEdited(report, edits);
  const at = report.sheets.indexOf(sheet);
  if (after.sheets.length !== report.sheets.length + 1) {
    return 'The second sheet would be no layer of its own: tombolo.json, or the file, says what the layers are.';
  }
  const [one, other] = [after.sheets[at], after.sheets[at + 1]];
  if (!one || !other || !areOneRegion(after, one, other)) return 'The two would not be read as one painted region.';
  const alone = [first, second].map(({ edits: own }) => checkEdited(report, own).sheets[at]);
  const expected = report.sheets.flatMap((old) => (old === sheet ? alone : [old]));
  const stray = expected.find((old, i) => !old || !isAlike(old, after.sheets[i]));
  if (stray) return `Layer "${stray.layer.name}" would be cut in another way.`;
  if (!isSame(union([one.openings, other.openings]), sheet.openings, sheet.cutLength)) {
    return 'The two sheets would not paint together what the layer paints.';
  }
  if (islandsOf(one).length + islandsOf(other).length > 0) return 'It would leave an island that falls out.';
  return newBetweenLayers(report, after);
}

function areOneRegion({ stack: { layers, firsts } }: Report, one: Sheet, other: Sheet): boolean {
  const numberOf = (sheet: Sheet) => layers.findIndex((each) => each.sheet.layer.id === sheet.layer.id);
  return firsts[numberOf(one)] === firsts[numberOf(other)];
}

function isAlike(expected: Sheet, now: Sheet | undefined): boolean {
  if (!now || now.layer.reading !== expected.layer.reading || now.layer.paint !== expected.layer.paint) return false;
  return isSame(expected.openings, now.openings, expected.cutLength);
}

function isSame(a: Region, b: Region, cutLength: number): boolean {
  return areaOf(symmetricDifference(a, b)) <= AREA_PER_CUT_LENGTH * cutLength;
}

/** What each sheet has for itself was proven with its bridges; between layers nothing may come that was not there. */
function newBetweenLayers(before: Report, after: Report): string | undefined {
  const [old, now] = [countBetweenLayers(before), countBetweenLayers(after)];
  for (const [check, number] of now) {
    if (number > (old.get(check) ?? 0)) return `It would ${metaOf(check)?.outcome ?? `bring a ${check}`}.`;
  }
  return undefined;
}

/** Thin places and islands are a sheet's own, though later paint may cover them: what is in both sheets is told of both. */
function isOfOneSheet({ subject }: Finding): boolean {
  return subject?.kind === 'thin' || subject?.kind === 'island';
}

function countBetweenLayers(report: Report): Map<string, number> {
  const files = report.project ? [...report.project.report.files.values()] : [report];
  const counts = new Map<string, number>();
  for (const finding of files.flatMap(({ complete }) => complete)) {
    const { check, severity } = finding;
    if (metaOf(check)?.reads !== 'stack' || isOfOneSheet(finding)) continue;
    if (severityRank(severity) < severityRank('warning')) continue;
    counts.set(check, (counts.get(check) ?? 0) + 1);
  }
  return counts;
}
