/**
 * The proof of a mend: the edited text is checked again, and the mend is only offered if what it promises came true
 * and nothing else got worse.
 */
import { symmetricDifference } from '../geometry/compare-regions';
import { distance } from '../geometry/point';
import { areaOf, difference } from '../geometry/polygons';
import type { Region } from '../geometry/region';
import type { Finding } from '../checks/finding';
import type { Report } from '../report';
import type { Severity } from '../sheet/check-id';
import { applyEdits, type TextEdit } from '../text';
import { check } from './check';

/** What a mend promises about the sheets it touches. */
export interface Pledge {
  /** The findings that must be gone. */
  readonly gone: readonly Finding[];
  /** For each layer by name, where openings may change; nowhere for layers that are not named. In mm. */
  readonly within: ReadonlyMap<string, Region>;
}

/** Two findings at places nearer than this, in mm, are the same one. */
const SAME_PLACE = 0.5;

/** Measures that get worse by less than this, in mm, are as good as before. */
const MEASURE_TOLERANCE = 0.01;

/** Area in mm² for each mm of cut line that may differ through rounding: twice the 1 µm that edits are written to. */
const AREA_PER_CUT_LENGTH = 0.002;

const RANK: Readonly<Record<Severity, number>> = { hint: 0, info: 1, warning: 2, error: 3 };

/** @returns the report on the edited text if the whole pledge holds, else the sentence that says what fails */
export function prove(before: Report, edits: readonly TextEdit[], pledge: Pledge): Report | string {
  const after = check(applyEdits(before.text, edits), before.settings, before);
  const stays = pledge.gone.find((finding) => after.complete.some((other) => isSame(finding, other)));
  if (stays) return `The ${stays.check} would still be there.`;
  const worse = after.complete.find((finding) => isNewOrWorse(finding, before, pledge));
  if (worse) return `A ${worse.check} would come of it: ${worse.message}`;
  return strayChange(before, after, pledge) ?? after;
}

function isSame(a: Finding, b: Finding): boolean {
  if (a.check !== b.check || a.layer !== b.layer) return false;
  return a.at && b.at ? distance(a.at, b.at) < SAME_PLACE : a.message === b.message;
}

function isNewOrWorse(finding: Finding, before: Report, { gone }: Pledge): boolean {
  if (RANK[finding.severity] < RANK.warning) return false;
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

function strayChange(before: Report, after: Report, { within }: Pledge): string | undefined {
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
