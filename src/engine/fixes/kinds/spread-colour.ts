/** Extends a colour under a later neighbour: one new shape in its own layer, proven before it is offered. */

import type { Finding, Subject } from '../../../checks/finding';
import { limitsOf } from '../../../config/limits';
import { formatMillimetres } from '../../../config/values';
import { drawBeside, shapeBeside } from '../../../edits/element/draw-beside';
import { extendOpenings } from '../../../edits/opening/extend-openings';
import { joinBoxes } from '../../../geometry/base/ring';
import { PLAINLY_BESIDE, SAME_FINDING } from '../../../geometry/base/tolerances';
import { boxOfPolygon, intersection, offset, union } from '../../../geometry/boolean/index';
import type { ReportedFinding } from '../../../report/finding-id';
import { type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { effectiveConfig } from '../../check/effective-config';
import { isCourseNear } from '../faults/course';
import { sentenceOf } from '../faults/first';
import { type FixKind, type ProvenChange, proveAttempt } from '../kind';
import { type Gain, type LaterPaintIn, spreadAcross, spreadUnder } from '../spread-region';

/** mm: so near to each other, two seams are at one place. */
const REACH = SAME_FINDING;

/** mm: where else the sheet may change, for curves that are written down and flattened again. */
const ROOM = PLAINLY_BESIDE;

/** For a finding of a short overlap or a bare gap, in the file of the earlier colour. */
export const spreadColour: FixKind = {
  kind: 'spread-colour',
  scope: 'place',
  safe: false,
  effects: [],
  preferred: true,
  offer: (report, finding) => {
    const seam = seamOf(finding);
    if (!seam) return undefined;
    const [earlier, later] = [seam.earlier.sheet.layer.name, seam.later.sheet.layer.name];
    return `Extend "${earlier}" ${formatMillimetres(slipOf(report))} under "${later}"`;
  },
  prove: (report, finding) => {
    const seam = seamOf(finding);
    return seam && spread(report, finding, seam);
  },
};

type Seam = Extract<Subject, { kind: 'overlap' | 'gap' }>;

function seamOf({ subject }: Finding): Seam | undefined {
  return subject?.kind === 'overlap' || subject?.kind === 'gap' ? subject : undefined;
}

/** Of the earlier layer, in the stack. */
function numberOf(seam: Seam): number {
  return seam.kind === 'gap' ? seam.gap.earlier : seam.overlap.earlier;
}

/** mm */
function slipOf({ settings }: Report): number {
  return limitsOf(effectiveConfig(settings)).slip;
}

function spread(report: Report, finding: ReportedFinding, seam: Seam): Result<ProvenChange> {
  const [{ sheet }, later] = [seam.earlier, seam.later.sheet];
  if (sheet.layer.reading !== 'openings') {
    return refuse(
      `"${sheet.layer.name}" draws what stays or the cut lines: another shape would not extend its colour.`,
    );
  }
  const { slip, bridge } = limitsOf(effectiveConfig(report.settings));
  const limits = { slip, bridge: bridge + sheet.kerf };
  const paintIn: LaterPaintIn = (box) => report.stack.laterPaint.within(box, numberOf(seam));
  const gain =
    seam.kind === 'gap'
      ? spreadAcross(sheet, later, paintIn, seam.gap, limits)
      : spreadUnder(sheet, paintIn, seam.overlap, limits);
  if (gain.joined.length === 0) {
    const first = seamBeneath(report, finding, seam);
    return { reason: 'Between these edges no way was found to extend the colour.', ...(first && { first }) };
  }
  const reach = slip + ROOM + (seam.kind === 'gap' ? seam.gap.width : 0);
  const moved = spreadInPlace(report, finding, { sheet, paintIn, gain, slip, reach });
  if (!('reason' in moved)) return moved;
  const places = seam.kind === 'gap' ? [seam.gap.onEarlier] : [seam.overlap.facing, seam.overlap.at];
  const model = shapeBeside(sheet, places);
  if (!model) return refuse(`Layer "${sheet.layer.name}" has no shape that the new one could be drawn beside.`);
  const outcome = { edits: drawBeside(sheet.drawing, model, gain.joined) };
  return proveAttempt(report, sheet, { outcome, within: offset(gain.joined, ROOM), gone: [finding] });
}

interface Extension {
  readonly sheet: Sheet;
  readonly paintIn: LaterPaintIn;
  readonly gain: Gain;
  /** mm */
  readonly slip: number;
  /** mm beyond the colour's edge. */
  readonly reach: number;
}

/** The colour's own outlines move out: no shape comes to the drawing, and what was straight stays so. */
function spreadInPlace(
  report: Report,
  finding: ReportedFinding,
  { sheet, paintIn, gain, slip, reach }: Extension,
): Result<ProvenChange> {
  const outcome = extendOpenings(sheet, gain.added, reach);
  // Outlines that turn there go a little farther, under later colours.
  const around = offset(gain.joined, slip);
  const hidden = intersection(around, paintIn(joinBoxes(around.map(boxOfPolygon))));
  return proveAttempt(report, sheet, { outcome, within: union([offset(gain.joined, ROOM), hidden]), gone: [finding] });
}

/** Where a later colour ends at a seam of earlier ones, it is that seam which opens. */
function seamBeneath({ complete }: Report, finding: Finding, seam: Seam): string | undefined {
  const beneath = complete.find((other) => {
    const { subject } = other;
    if (other === finding || subject?.kind !== 'overlap' || !finding.at) return false;
    const { x, y } = finding.at;
    return (
      subject.later === seam.earlier && isCourseNear([{ ax: x, ay: y, bx: x, by: y }], subject.overlap.course, REACH)
    );
  });
  return beneath && sentenceOf(beneath);
}
