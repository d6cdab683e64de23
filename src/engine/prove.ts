/**
 * The proof of a mend: the edited text is checked again, and the mend is only offered if what it promises came true
 * and nothing else got worse.
 */
import { symmetricDifference } from '../geometry/compare-regions';
import { distance } from '../geometry/point';
import { areaOf, difference } from '../geometry/polygons';
import type { Region } from '../geometry/region';
import type { Finding } from '../checks/finding';
import type { FileEdits, ProjectPart, Report } from '../report';
import type { CheckId, Severity } from '../sheet/check-id';
import { applyEdits, type TextEdit } from '../text';
import { check } from './check';
import { checkProject } from './check-project';

/** What a mend promises about the sheets it touches. */
export interface Pledge {
  /** The findings that must be gone. */
  readonly gone: readonly Finding[];
  /** For each layer by name, where openings may change; nowhere for layers that are not named. In mm. */
  readonly within: ReadonlyMap<string, Region>;
  /** Findings that the artist asks for by asking for the change. */
  readonly mayCome?: readonly CheckId[];
}

/** Two findings at places nearer than this, in mm, are the same one. */
const SAME_PLACE = 0.5;

/** Measures that get worse by less than this, in mm, are as good as before. */
const MEASURE_TOLERANCE = 0.01;

/** Area in mm² for each mm of cut line that may differ through rounding: twice the 1 µm that edits are written to. */
const AREA_PER_CUT_LENGTH = 0.002;

const RANK: Readonly<Record<Severity, number>> = { hint: 0, info: 1, warning: 2, error: 3 };

/**
 * Checks the edited text, together with the other files of its project.
 * @param others edits of other files of the project that belong to the same change
 * @returns the report on the edited text if the whole pledge holds, else the sentence that says what fails
 */
export function prove(
  before: Report, edits: readonly TextEdit[], pledge: Pledge, others: readonly FileEdits[] = [],
): Report | string {
  const after = checkEdited(before, edits, others);
  const stays = pledge.gone.find((finding) => after.complete.some((other) => isSame(finding, other)));
  if (stays) return `The ${stays.check} would still be there.`;
  for (const [old, now] of pairs(before, after)) {
    const worse = now.complete.find((finding) => isNewOrWorse(finding, old, pledge));
    if (worse) return `A ${worse.check} would come of it: ${worse.message}`;
    const stray = strayChange(old, now, old === before ? pledge.within : NOWHERE);
    if (stray) return stray;
  }
  return after;
}

const NOWHERE: Pledge['within'] = new Map();

/** The report on the edited text, as a part of the same project. */
export function checkEdited(before: Report, edits: readonly TextEdit[], others: readonly FileEdits[] = []): Report {
  const text = applyEdits(before.text, edits);
  if (!before.project) return check(text, before.settings, before);
  const { file, report } = before.project;
  const texts = new Map([...report.files].map(([name, { text: old }]) => [name, old]));
  for (const other of others) texts.set(other.file, applyEdits(texts.get(other.file) ?? '', other.edits));
  return checkProject(texts.set(file, text), report.settings, report).files.get(file) as Report;
}

/** The reports on each file before and after, this one first. */
function pairs(before: Report, after: Report): [Report, Report][] {
  const rest = neighbours(before.project).map(([name, old]): [Report, Report] =>
    [old, after.project?.report.files.get(name) as Report]);
  return [[before, after], ...rest];
}

function neighbours(project: ProjectPart | undefined): [string, Report][] {
  return [...project?.report.files ?? []].filter(([name]) => name !== project?.file);
}

function isSame(a: Finding, b: Finding): boolean {
  if (a.check !== b.check || a.layer !== b.layer) return false;
  return a.at && b.at ? distance(a.at, b.at) < SAME_PLACE : a.message === b.message;
}

function isNewOrWorse(finding: Finding, before: Report, { gone, mayCome = [] }: Pledge): boolean {
  if (RANK[finding.severity] < RANK.warning || mayCome.includes(finding.check)) return false;
  const old = before.complete.filter((other) => isSameOrMoved(finding, other) && !gone.includes(other));
  return !old.some((other) => RANK[other.severity] >= RANK[finding.severity] && !isFarther(finding, other));
}

/** A cut may part an opening that comes too near to the edge: the rest is as near as it was, but elsewhere. */
function isSameOrMoved(finding: Finding, old: Finding): boolean {
  return isSame(finding, old) ||
    (finding.check === 'edge-opening' && old.check === 'edge-opening' && finding.layer === old.layer);
}

/** Whether a length came out farther on the wrong side of its limit than it was. The areas of islands may change. */
function isFarther({ measure }: Finding, { measure: old }: Finding): boolean {
  if (measure?.unit !== 'mm' || !old) return false;
  const more = measure.value - old.value;
  return (measure.value > measure.limit ? more : -more) > MEASURE_TOLERANCE;
}

function strayChange(before: Report, after: Report, within: Pledge['within']): string | undefined {
  if (before.sheets.length !== after.sheets.length) return 'The layers would be others than before.';
  for (const [i, old] of before.sheets.entries()) {
    const now = after.sheets[i];
    if (!now || now.layer.name !== old.layer.name) return 'The layers would be others than before.';
    if (now.layer.reading !== old.layer.reading) return `Layer "${old.layer.name}" would be read in another way.`;
    const allowed = within.get(old.layer.name) ?? [];
    const changed = symmetricDifference(old.openings, now.openings);
    if (changed.length === 0) continue;
    const stray = areaOf(difference(changed, allowed));
    if (stray > AREA_PER_CUT_LENGTH * old.cutLength) {
      return `${stray.toFixed(3)} mm² of layer "${old.layer.name}" would change elsewhere.`;
    }
  }
  return undefined;
}
