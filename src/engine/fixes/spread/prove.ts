/** The proof that a colour was extended, and that nothing of it is seen beside what covers it. */
import type { Region } from '../../../geometry/base/polygon-types';
import { growBox, joinBoxes } from '../../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import { areaOf, boxOfPolygon, clipToBox, difference, offset, union } from '../../../geometry/boolean/index';
import type { ReportedFinding } from '../../../report/finding-id';
import { isRefusal, mapResult, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import type { ProvenChange } from '../kind';
import { verify } from '../verify';
import type { Gain } from './region';
import type { Way } from './ways';

/** mm round what is gained, where it is looked at. */
const ROUND = 2;

/** mm²: a smaller spot is not seen, nor a hair narrower than twice `DRAWN_ALIKE`. */
const SPOT = 0.01;

export function proveSpread(
  report: Report,
  sheet: Sheet,
  { outcome, within, gain }: Way & { readonly gain: Gain },
  finding: ReportedFinding,
): Result<ProvenChange> {
  if ('refusal' in outcome) return refuse(outcome.refusal);
  const { edits } = outcome;
  const proof = verify(report, edits, { gone: [finding], within: new Map([[sheet.layer.id, within]]) });
  const after = isRefusal(proof) ? proof.anyway?.after : proof.after;
  const now = after?.sheets.find(({ layer }) => layer.id === sheet.layer.id);
  if (now && isSeen(sheet.openings, now.openings, gain)) {
    return refuse(`"${sheet.layer.name}" would be seen beside what covers it.`);
  }
  return mapResult(proof, ({ brings }) => ({ edits, brings }));
}

/** Whether paint came beside the ground, or went where nothing else is painted. */
function isSeen(old: Region, now: Region, { joined, ground }: Gain): boolean {
  const box = growBox(joinBoxes(joined.map(boxOfPolygon)), ROUND);
  const [before, after] = [clipToBox(old, box), clipToBox(now, box)];
  const gained = difference(difference(after, before), offset(ground, DRAWN_ALIKE));
  const spots = offset(union([gained, difference(before, after)]), -DRAWN_ALIKE);
  return spots.some((polygon) => areaOf(polygon) > SPOT);
}
