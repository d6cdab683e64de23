/** The findings that a change brings, in all files that it may have changed. */

import type { Finding, Subject } from '../../../checks/finding';
import { severityRank } from '../../../config/check-id';
import type { Matrix } from '../../../geometry/base/curve-types';
import { apply, IDENTITY } from '../../../geometry/base/matrix';
import type { Region } from '../../../geometry/base/polygon-types';
import { growBox } from '../../../geometry/base/ring';
import { DRAWN_ALIKE, SAME_FINDING } from '../../../geometry/base/tolerances';
import { distance } from '../../../geometry/base/vector';
import { areaOf, boxOfPolygon, difference, intersection, perimeterOf } from '../../../geometry/boolean/index';
import { transformRegion } from '../../../geometry/polygon/transform';
import type { Report } from '../../../report/report';
import type { LayerId } from '../../../sheet/layer/layer-id';
import type { Sheet } from '../../../sheet/types';
import { metaOf } from '../../metas';
import { extentOf, moveExtent } from './extent';
import { bareOf, thinGround } from './thin-ground';
import { AREA_PER_LENGTH, type Fault, newOrWorse } from './worse';

/** One file before and after, and where what it had lies now: elsewhere, or as large again. */
export interface FilePair {
  readonly old: Report;
  readonly now: Report;
  readonly moved: Matrix;
}

/** Two findings at places nearer than this, in mm, are the same one where nothing is known but their places. */
const SAME_PLACE = SAME_FINDING;

/** Measures that get worse by less than this, in mm, are as good as before. */
const MEASURE_TOLERANCE = DRAWN_ALIKE;

interface FindingFault extends Fault {
  readonly finding: Finding;
}

/**
 * The warnings and worse that were not there before, or not as bad.
 * @param gone what the change is to mend: nothing is compared with it
 */
export function broughtFindings(files: readonly FilePair[], gone: readonly Finding[]): Finding[] {
  const placed = { old: [] as FindingFault[], now: [] as FindingFault[] };
  const fresh = files.flatMap((file) => {
    const [old, all] = changedFindings(file, gone);
    const now = all.filter((finding) => !wasBareBefore(files, finding));
    const earlier = old.map((finding) => movedFinding(finding, file.moved));
    placed.old.push(...old.flatMap((finding) => faultOf(finding, file.moved)));
    placed.now.push(...now.flatMap((finding) => faultOf(finding, IDENTITY)));
    return now.filter((finding) => !hasExtent(finding) && isUnlike(finding, earlier));
  });
  const sound = ({ finding }: FindingFault) => soundMaterial(files, finding);
  const worse = newOrWorse({ faults: placed.old, sound }, placed.now);
  return [...fresh, ...worse.map(({ finding }) => finding)];
}

/**
 * The warnings and worse of checks that found nothing as serious in a file before. Where one of their family did, as a slot
 * that was cut off is an opening that is too small now, they are no new fault; but nobody is to meet them untold.
 */
export function findingsOfNewKinds(old: Report, now: Report): Finding[] {
  const known = new Set(old.complete.filter(isSerious).map(({ check }) => check));
  return now.complete.filter((finding) => isSerious(finding) && !known.has(finding.check));
}

function isSerious({ severity }: Finding): boolean {
  return severityRank(severity) >= severityRank('warning');
}

/** What is not word for word and place for place as it was. The first are those before. */
function changedFindings({ old, now, moved }: FilePair, gone: readonly Finding[]): [Finding[], Finding[]] {
  const before = old.complete.filter(isSerious).flatMap((finding) => {
    const all = apartFrom(finding);
    return gone.includes(finding) ? all.slice(1) : all;
  });
  const after = now.complete.filter(isSerious).flatMap(apartFrom);
  if (moved !== IDENTITY) return [before, after];
  const known = new Map<string, Finding[]>();
  for (const finding of before) known.set(markOf(finding), [...(known.get(markOf(finding)) ?? []), finding]);
  const same = new Set<Finding>();
  const changed = after.filter((finding) => {
    const twin = known.get(markOf(finding))?.pop();
    if (twin) same.add(twin);
    return !twin;
  });
  return [before.filter((finding) => !same.has(finding)), changed];
}

/** One finding for each place, where many are told at once. */
function apartFrom(finding: Finding): readonly Finding[] {
  const { check, severity, subject } = finding;
  if ((subject?.kind !== 'thin' && subject?.kind !== 'gap') || !subject.apart) return [finding];
  return subject.apart.map((each) => ({ severity, ...each, check }));
}

/** Alike for findings that say the same of the same place. */
function markOf({ check, severity, layerId, message, at, measure, subject }: Finding): string {
  const numbers = [at, measure?.value, subject && spreadOf(subject)];
  const rounded = JSON.stringify(numbers, (_, value) => (typeof value === 'number' ? value.toFixed(3) : value));
  return [check, severity, layerId, message, rounded].join('\n');
}

/** How far a fault goes: one half of what was parted may be told at the same place, and in the same words, as the whole. */
function spreadOf(subject: Subject): unknown {
  switch (subject.kind) {
    case 'thin':
      return [subject.part.length, subject.part.reach, subject.part.extent];
    case 'opening':
      return [boxOfPolygon(subject.opening), areaOf([subject.opening])];
    case 'gap':
      return subject.gap.extent;
    case 'overlap':
      return subject.overlap.length;
    case 'doubled':
      return subject.doubled.stretch.length;
    default:
      return undefined;
  }
}

function hasExtent({ subject }: Finding): boolean {
  return subject !== undefined && subject.kind !== 'open';
}

function faultOf(finding: Finding, moved: Matrix): FindingFault[] {
  const extent = hasExtent(finding) ? extentOf(finding) : undefined;
  if (!extent) return [];
  const rank = severityRank(finding.severity);
  return [{ finding, group: groupOf(finding), rank, extent: moveExtent(extent, moved) }];
}

/** The same for faults that may take each other's place: of one kind, in one layer or between the same two. */
export function groupOf({ check, layerId, subject }: Finding): string {
  const { family = check, ofFile = false } = metaOf(check)?.afterFix ?? {};
  const isSeam = subject?.kind === 'overlap' || subject?.kind === 'gap';
  return `${family} ${isSeam ? `${subject.earlier.sheet.layer.id} ${subject.later.sheet.layer.id}` : ofFile ? '' : layerId}`;
}

/** Whether a gap is ground that was bare before, and as thin: paint that comes beside it parts it from the rest. */
function wasBareBefore(files: readonly FilePair[], { subject, measure }: Finding): boolean {
  if (subject?.kind !== 'gap') return false;
  const slip = measure?.limit ?? 0;
  const { earlier, later, gap } = subject;
  const pair = [earlier, later].flatMap(({ sheet }) => oldSheet(files, sheet.layer.id) ?? []);
  if (pair.length < 2 || files.some(({ moved }) => moved !== IDENTITY)) return false;
  const { extent } = gap;
  const sheets = files.flatMap(({ old }) => old.sheets);
  const before = bareOf(thinGround(pair, extent, slip), sheets, growBox(extent, 3 * slip));
  const now = thinGround([earlier.sheet, later.sheet], extent, slip);
  return areaOf(difference(now, before)) <= AREA_PER_LENGTH * perimeterOf(now);
}

function oldSheet(files: readonly FilePair[], id: LayerId | undefined): Sheet | undefined {
  return files.flatMap(({ old }) => old.sheets).find(({ layer }) => layer.id === id);
}

/** The material that hung safely in the layer of a finding before the change. */
function soundMaterial(files: readonly FilePair[], { layerId }: Finding): Region {
  const file = files.find(({ old }) => old.sheets.some(({ layer }) => layer.id === layerId));
  const pieces = oldSheet(files, layerId)?.pieces.filter(({ island }) => !island) ?? [];
  const region = pieces.map(({ polygon }) => polygon);
  return !file || file.moved === IDENTITY ? region : transformRegion(region, file.moved);
}

function isUnlike(finding: Finding, earlier: readonly Finding[]): boolean {
  const rank = severityRank(finding.severity);
  const old = earlier.filter((other) => isSameFinding(finding, other));
  return !old.some((other) => severityRank(other.severity) >= rank && !isFarther(finding, other));
}

/** Whether a finding that was to be mended is there all the same; of a loose piece, any part of it. */
export function isStill(gone: Finding, now: Finding): boolean {
  const [old, left] = [gone.subject, now.subject];
  if (old?.kind !== 'island' || left?.kind !== 'island') return isSameFinding(gone, now);
  if (gone.check !== now.check || gone.layerId !== now.layerId) return false;
  const shared = intersection([old.piece.polygon], [left.piece.polygon]);
  return areaOf(shared) > AREA_PER_LENGTH * perimeterOf(left.piece.polygon);
}

/** Whether two findings are of one kind and at one place, or say the same where they are at none. */
function isSameFinding(a: Finding, b: Finding): boolean {
  if (a.check !== b.check || a.layerId !== b.layerId) return false;
  return a.at && b.at ? distance(a.at, b.at) < SAME_PLACE : a.message === b.message;
}

/** A finding at its place on the sheet as it comes out. Its measure is what it was. */
function movedFinding(finding: Finding, moved: Matrix): Finding {
  const { at } = finding;
  return at && moved !== IDENTITY ? { ...finding, at: apply(moved, at) } : finding;
}

/** Whether a length came out farther on the wrong side of its limit than it was. */
function isFarther({ measure }: Finding, { measure: old }: Finding): boolean {
  if (measure?.unit !== 'mm' || !old) return false;
  const more = measure.value - old.value;
  return (measure.value > measure.limit ? more : -more) > MEASURE_TOLERANCE;
}
