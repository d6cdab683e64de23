/**
 * The proof of a mend: the edited text is checked again, and the mend is only offered if what it promises came true
 * and nothing else got worse.
 */
import { symmetricDifference } from '../../geometry/polygon/diff';
import { scaling } from '../../geometry/base/matrix';
import { distance } from '../../geometry/base/vector';
import { areaOf, difference } from '../../geometry/boolean/index';
import type { Region } from '../../geometry/base/polygon-types';
import type { Finding } from '../../checks/finding';
import { transformRegion } from '../../geometry/polygon/transform';
import type { FileEdits, ProjectPart, Report } from '../../report/report';
import { rankOf, type CheckId } from '../../config/check-id';
import type { Sheet } from '../../sheet/types';
import { applyEdits, type TextEdit } from '../../text/text';
import { check } from '../check/check-file';
import { checkProject } from '../check/check-project';
import { DRAWN_ALIKE, FLATTENING, SAME_FINDING, WRITTEN_STEP } from '../../geometry/base/tolerances';

/** What a mend promises about the sheets it touches. */
export interface Expectations {
  /** The findings that must be gone. */
  readonly gone: readonly Finding[];
  /** For each layer by name, where openings may change; nowhere for layers that are not named. In mm. */
  readonly within: ReadonlyMap<string, Region>;
  /** The same for the other files that are edited, by the project's names for them. */
  readonly elsewhere?: ReadonlyMap<string, ReadonlyMap<string, Region>>;
  /** Findings that the artist asks for by asking for the change. */
  readonly mayCome?: readonly CheckId[];
  /** How many times as large everything in the edited files comes out. The places above are those before. */
  readonly scale?: number;
}

/** Two findings at places nearer than this, in mm, are the same one. */
const SAME_PLACE = SAME_FINDING;

/** Measures that get worse by less than this, in mm, are as good as before. */
const MEASURE_TOLERANCE = DRAWN_ALIKE;

/** Area in mm² for each mm of cut line that may differ through rounding: twice the 1 µm that edits are written to. */
const AREA_PER_CUT_LENGTH = 2 * WRITTEN_STEP;

const MAY_BE_PARTED: readonly CheckId[] = ['edge-opening', 'doubled-cut'];

const BETWEEN_LAYERS: readonly CheckId[] = ['bare-gap', 'short-overlap'];

/**
 * Checks the edited text, together with the other files of its project.
 * @param others edits of other files of the project that belong to the same change
 * @returns the report on the edited text if the whole pledge holds, else the sentence that says what fails
 */
export function verify(
  before: Report,
  edits: readonly TextEdit[],
  pledge: Expectations,
  others: readonly FileEdits[] = [],
): Report | string {
  const after = checkEdited(before, edits, others);
  const stays = pledge.gone.find((finding) => after.complete.some((other) => isSame(finding, other)));
  if (stays) return `The ${stays.check} would still be there.`;
  const known = [before, ...neighbours(before.project).map(([, old]) => old)];
  for (const { file, old, now } of pairs(before, after)) {
    const isEdited = old === before || others.some((other) => other.file === file);
    const terms = { ...pledge, scale: isEdited ? (pledge.scale ?? 1) : 1 };
    const earlier = [...old.complete, ...known.filter((each) => each !== old).flatMap(betweenLayers)];
    const worse = now.complete.find((finding) => isNewOrWorse(finding, earlier, terms));
    if (worse) return `A ${worse.check} would come of it: ${worse.message}`;
    const within = old === before ? pledge.within : (pledge.elsewhere?.get(file) ?? NOWHERE);
    const stray = strayChange(old, now, within, terms.scale);
    if (stray) return stray;
  }
  return after;
}

/** What lies between two files may be told in the one before and in the other after. */
function betweenLayers({ complete }: Report): Finding[] {
  return complete.filter(({ check: id }) => BETWEEN_LAYERS.includes(id));
}

const NOWHERE: ReadonlyMap<string, Region> = new Map();

/** The report on the edited text, as a part of the same project. */
export function checkEdited(before: Report, edits: readonly TextEdit[], others: readonly FileEdits[] = []): Report {
  const text = applyEdits(before.text, edits);
  if (!before.project) return check(text, before.settings, before);
  const { file, report } = before.project;
  const texts = new Map([...report.files].map(([name, { text: old }]) => [name, old]));
  for (const other of others) texts.set(other.file, applyEdits(texts.get(other.file) ?? '', other.edits));
  return checkProject(texts.set(file, text), report.settings, report).files.get(file) as Report;
}

interface Pair {
  readonly file: string;
  readonly old: Report;
  readonly now: Report;
}

/** The reports on each file before and after, this one first. */
function pairs(before: Report, after: Report): Pair[] {
  const rest = neighbours(before.project).map(
    ([file, old]): Pair => ({ file, old, now: after.project?.report.files.get(file) as Report }),
  );
  return [{ file: before.project?.file ?? '', old: before, now: after }, ...rest];
}

function neighbours(project: ProjectPart | undefined): [string, Report][] {
  return [...(project?.report.files ?? [])].filter(([name]) => name !== project?.file);
}

function isSame(a: Finding, b: Finding): boolean {
  if (a.check !== b.check || a.layer !== b.layer) return false;
  return a.at && b.at ? isNear(a, b) : a.message === b.message;
}

function isNewOrWorse(
  finding: Finding,
  earlier: readonly Finding[],
  pledge: Expectations & { scale: number },
): boolean {
  const { gone, mayCome = [], scale } = pledge;
  if (rankOf(finding.severity) > rankOf('warning') || mayCome.includes(finding.check)) return false;
  const old = earlier.filter((other) => !gone.includes(other) && isSameOrMoved(finding, scaled(other, scale)));
  return !old.some((other) => rankOf(other.severity) <= rankOf(finding.severity) && !isFarther(finding, other));
}

/** A finding at its place on the sheet as large as it comes out. Its measure is what it was. */
function scaled(finding: Finding, scale: number): Finding {
  const { at } = finding;
  return at && scale !== 1 ? { ...finding, at: { x: at.x * scale, y: at.y * scale } } : finding;
}

/**
 * A cut may part an opening that comes too near to the edge, or a line that is cut twice: the rest is as it was, but its
 * place is elsewhere.
 */
function isSameOrMoved(finding: Finding, old: Finding): boolean {
  if (isSame(finding, old)) return true;
  if (finding.check !== old.check) return false;
  if (MAY_BE_PARTED.includes(finding.check)) return finding.layer === old.layer;
  return BETWEEN_LAYERS.includes(finding.check) && isNear(finding, old);
}

function isNear({ at }: Finding, { at: other }: Finding): boolean {
  return at !== undefined && other !== undefined && distance(at, other) < SAME_PLACE;
}

/** Whether a length came out farther on the wrong side of its limit than it was. The areas of islands may change. */
function isFarther({ measure }: Finding, { measure: old }: Finding): boolean {
  if (measure?.unit !== 'mm' || !old) return false;
  const more = measure.value - old.value;
  return (measure.value > measure.limit ? more : -more) > MEASURE_TOLERANCE;
}

function strayChange(before: Report, after: Report, within: Expectations['within'], scale: number): string | undefined {
  if (before.sheets.length !== after.sheets.length) return 'The layers would be others than before.';
  for (const [i, old] of before.sheets.entries()) {
    const now = after.sheets[i];
    if (!now || now.layer.name !== old.layer.name) return 'The layers would be others than before.';
    if (now.layer.reading !== old.layer.reading) return `Layer "${old.layer.name}" would be read in another way.`;
    const allowed = scaledRegion(within.get(old.layer.name) ?? [], scale);
    const changed = symmetricDifference(scaledRegion(old.openings, scale), now.openings);
    if (changed.length === 0) continue;
    const stray = areaOf(difference(changed, allowed));
    if (stray > strayAllowed(old, scale)) {
      return `${stray.toFixed(3)} mm² of layer "${old.layer.name}" would change elsewhere.`;
    }
  }
  return undefined;
}

/** mm². At another scale curves are cut into other edges, each within the flatness of the curve on both sides. */
function strayAllowed({ cutLength }: Sheet, scale: number): number {
  return scale === 1 ? AREA_PER_CUT_LENGTH * cutLength : 2 * FLATTENING * cutLength * Math.max(1, scale);
}

/** Openings that are not scaled stay the very same, so that they are not compared at length. */
function scaledRegion(region: Region, scale: number): Region {
  return scale === 1 ? region : transformRegion(region, scaling(scale));
}
