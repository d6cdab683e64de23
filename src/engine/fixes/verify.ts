/**
 * The proof of a fix: the edited text is checked again, and the fix is only offered if what it promises came true and
 * nothing else got worse. What speaks against it, and what is only told, the checks say themselves (`meta.afterFix`).
 */

import type { Finding } from '../../checks/finding';
import type { AfterFix, Effect } from '../../checks/meta';
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { IDENTITY, maxScale, scaling, translation } from '../../geometry/base/matrix';
import type { Region } from '../../geometry/base/polygon-types';
import { centroidOfRing } from '../../geometry/base/ring';
import { FLATTENING, WRITTEN_STEP } from '../../geometry/base/tolerances';
import { areaOf, difference } from '../../geometry/boolean/index';
import { symmetricDifference } from '../../geometry/polygon/diff';
import { transformRegion } from '../../geometry/polygon/transform';
import type { BroughtFinding } from '../../report/fix';
import { isRefusal, type Refusal, type Result } from '../../report/refusal';
import type { FileEdits, ProjectPart, Report } from '../../report/report';
import type { LayerId } from '../../sheet/layer/layer-id';
import type { Sheet } from '../../sheet/types';
import { applyEdits, type TextEdit } from '../../text/text';
import { metaOf } from '../metas';
import { outcomeOf } from './brought';
import { broughtFindings, findingsOfNewKinds, isStill } from './faults/compare';
import { whatFirst } from './faults/first';

/** What a fix promises about the sheets it touches. */
export interface Expectations {
  /** The findings that must be gone. */
  readonly gone: readonly Finding[];
  /** For each layer of whichever file, where openings may change; nowhere in layers that are not named. In mm. */
  readonly within: ReadonlyMap<LayerId, Region>;
  /** What else the artist asks for by asking for the change. */
  readonly effects?: readonly Effect[];
  /** How many times as large everything in the edited files comes out. The places above are those before. */
  readonly scale?: number;
  /** mm of sheet that the edited files gain round their artwork. The places above are those before. */
  readonly margin?: number;
}

/** That a change does what it promises. */
export interface Proof {
  /** The report on the edited text. */
  readonly after: Report;
  readonly brings: readonly BroughtFinding[];
}

/** Area in mm² for each mm of cut line that may differ through rounding: twice the 1 µm that edits are written to. */
const AREA_PER_CUT_LENGTH = 2 * WRITTEN_STEP;

/** mm²: what changes by less is rounding, along the whole of a cut line. */
const PLAIN_CHANGE = 0.005;

/** Why a change does not hold, and what speaks against it. */
export interface Disproof extends Refusal<Proof> {
  /** Findings that stay though they should be gone. */
  readonly stays: readonly Finding[];
  /** New or worse ones. */
  readonly against: readonly Finding[];
  /** Where openings would change that should stay, in sheet mm. */
  readonly strays: readonly Point[];
}

/**
 * Checks the edited text, together with the other files of its project.
 * @param others edits of other files of the project that belong to the same change
 * @returns the proof if the whole promise holds, else what fails; with the proof as what may be had anyway where only
 * new findings speak against it
 */
export function verify(
  before: Report,
  edits: readonly TextEdit[],
  pledge: Expectations,
  others: readonly FileEdits[] = [],
): Result<Proof> {
  const result = examine(before, edits, pledge, others);
  if (!isRefusal(result)) return result;
  const { stays: _stays, against: _against, strays: _strays, ...refusal } = result;
  return refusal;
}

/** The same, for whoever leaves out of the change what is to blame. */
export function examine(
  before: Report,
  edits: readonly TextEdit[],
  pledge: Expectations,
  others: readonly FileEdits[] = [],
): Proof | Disproof {
  const after = checkEdited(before, edits, others);
  const stays = pledge.gone.filter((finding) => after.complete.some((other) => isStill(finding, other)));
  if (stays[0]) return { reason: `The ${stays[0].check} would still be there.`, stays, against: [], strays: [] };
  const files = pairs(before, after).map((pair) => {
    const isEdited = pair.old === before || others.some(({ file }) => file === pair.file);
    return { ...pair, moved: isEdited ? movedBy(pledge) : IDENTITY };
  });
  const stray = files.flatMap(({ old, now, moved }) => strayChange(old, now, pledge.within, moved) ?? [])[0];
  if (stray) return { ...stray, stays: [], against: [] };
  const worse = broughtFindings(files, pledge.gone);
  const proof = { after, brings: told([...worse, ...files.flatMap(({ old, now }) => findingsOfNewKinds(old, now))]) };
  const against = worse.filter((finding) => refusesFix(finding, pledge.effects));
  if (against.length === 0) return proof;
  const first = whatFirst(
    files.map(({ old }) => old),
    against,
    pledge.gone,
  );
  const mayBeWanted = !against.some((finding) => afterFixOf(finding).never);
  return {
    reason: `It would ${outcomeOf(against)}.`,
    ...(first && { first }),
    ...(mayBeWanted && { anyway: proof }),
    stays: [],
    against,
    strays: [],
  };
}

/** What a fix says of findings, each once. */
function told(findings: readonly Finding[]): BroughtFinding[] {
  return [...new Set(findings)].map(({ check: id, message }) => ({ check: id, message }));
}

/** What the check of a finding says of fixes that the finding comes of. */
function afterFixOf({ check: id }: Finding): AfterFix {
  return metaOf(id)?.afterFix ?? { refuses: false };
}

function refusesFix(finding: Finding, effects: readonly Effect[] = []): boolean {
  const { refuses, unless = [] } = afterFixOf(finding);
  return refuses && !unless.some((effect) => effects.includes(effect));
}

/**
 * The report on the edited text, as a part of the same project. The engine keeps what it works out here: checking that
 * very text afterwards finds it there.
 */
export function checkEdited(before: Report, edits: readonly TextEdit[], others: readonly FileEdits[] = []): Report {
  const text = applyEdits(before.text, edits);
  const { session } = before;
  if (!before.project) return session.check(text, before.settings, true);
  const { file, report } = before.project;
  const texts = new Map([...report.files].map(([name, { text: old }]) => [name, old]));
  for (const other of others) texts.set(other.file, applyEdits(texts.get(other.file) ?? '', other.edits));
  return session.checkProject(texts.set(file, text), report.settings, true).files.get(file) as Report;
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

type Stray = Pick<Disproof, 'reason' | 'strays'>;

function strayChange(before: Report, after: Report, within: Expectations['within'], moved: Matrix): Stray | undefined {
  const whole = (reason: string): Stray => ({ reason, strays: [] });
  if (before.sheets.length !== after.sheets.length) return whole('This would change the layers.');
  for (const [i, old] of before.sheets.entries()) {
    const now = after.sheets[i];
    if (!now || now.layer.name !== old.layer.name) return whole('This would change the layers.');
    if (now.layer.reading !== old.layer.reading)
      return whole(`Layer "${old.layer.name}" would be read in another way.`);
    const allowed = movedRegion(within.get(old.layer.id) ?? [], moved);
    const changed = symmetricDifference(movedRegion(old.openings, moved), now.openings);
    if (changed.length === 0) continue;
    const elsewhere = difference(changed, allowed);
    const stray = areaOf(elsewhere);
    if (stray > strayAllowed(old, maxScale(moved))) {
      const reason = `${stray.toFixed(3)} mm² of layer "${old.layer.name}" would change elsewhere.`;
      return { reason, strays: placesOf(elsewhere) };
    }
  }
  return undefined;
}

/** The middles of the parts that are more than rounding. */
function placesOf(elsewhere: Region): Point[] {
  return elsewhere.flatMap((polygon) => (areaOf(polygon) > PLAIN_CHANGE ? (centroidOfRing(polygon.outer) ?? []) : []));
}

/** mm². At another scale curves are cut into other edges, each within the flatness of the curve on both sides. */
function strayAllowed({ cutLength }: Sheet, scale: number): number {
  return scale === 1 ? AREA_PER_CUT_LENGTH * cutLength : 2 * FLATTENING * cutLength * Math.max(1, scale);
}

/** Openings that stay where they are stay the very same, so that they are not compared at length. */
function movedRegion(region: Region, moved: Matrix): Region {
  return moved === IDENTITY ? region : transformRegion(region, moved);
}

/** Where everything in the edited files comes to lie, on the sheet. */
function movedBy({ scale = 1, margin = 0 }: Expectations): Matrix {
  if (margin > 0) return translation(margin, margin);
  return scale === 1 ? IDENTITY : scaling(scale);
}
