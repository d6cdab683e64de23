/** Extends a colour under later neighbours: by its own outlines where they can be moved, else by a shape more. */

import type { Finding, Subject } from '../../../checks/finding';
import { limitsOf } from '../../../config/limits';
import { formatMillimetres } from '../../../config/values';
import { PLAINLY_BESIDE, SAME_FINDING } from '../../../geometry/base/tolerances';
import type { ReportedFinding } from '../../../report/finding-id';
import { isRefusal, type Refusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { quoted } from '../../../text/wording';
import { effectiveConfig } from '../../check/effective-config';
import { isCourseNear } from '../faults/course';
import { sentenceOf } from '../faults/first';
import type { FixKind, ProvenChange } from '../kind';
import { proveSpread } from '../spread/prove';
import { type Gain, type LaterPaintIn, spreadAcross, spreadUnder } from '../spread/region';
import { byNewShape, byOutlines, type Extension } from '../spread/ways';

/** mm: so near to each other, two seams are at one place. */
const REACH = SAME_FINDING;

/** mm: what a colour's edge is moved more than it must. */
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
  const { sheet } = seam.earlier;
  if (sheet.layer.reading !== 'openings') {
    return refuse(
      `"${sheet.layer.name}" draws what stays or the cut lines: another shape would not extend its colour.`,
    );
  }
  const paintIn: LaterPaintIn = (box) => report.stack.laterPaint.within(box, numberOf(seam));
  const gains = gainsOf(report, seam, paintIn).filter(({ joined }) => joined.length > 0);
  const extensions = gains.map((gain) => extensionOf(report, seam, paintIn, gain));
  const refusals: Refusal<ProvenChange>[] = [];
  for (const waysOf of [byOutlines, byNewShape]) {
    for (const extension of extensions) {
      for (const way of waysOf(extension)) {
        const change = proveSpread(report, sheet, { ...way, gain: extension.gain }, finding);
        if (!isRefusal(change)) return change;
        refusals.push(change);
      }
    }
  }
  return whyNot(refusals, seam, seamBeneath(report, finding, seam));
}

function gainsOf(report: Report, seam: Seam, paintIn: LaterPaintIn): Gain[] {
  const { sheet } = seam.earlier;
  const { slip, bridge } = limitsOf(effectiveConfig(report.settings));
  const limits = { slip, bridge: bridge + sheet.kerf };
  return seam.kind === 'gap'
    ? spreadAcross(sheet, seam.later.sheet, paintIn, seam.gap, limits)
    : spreadUnder(sheet, paintIn, seam.overlap, limits);
}

function extensionOf(report: Report, seam: Seam, paintIn: LaterPaintIn, gain: Gain): Extension {
  const slip = slipOf(report);
  return {
    sheet: seam.earlier.sheet,
    gain,
    paintIn,
    above: report.stack.layers.slice(numberOf(seam) + 1).flatMap((layer) => layer.sheet.layer.shapes),
    places: seam.kind === 'gap' ? [seam.gap.onEarlier] : [seam.overlap.facing, seam.overlap.at],
    slip,
    reach: slip + ROOM + (seam.kind === 'gap' ? seam.gap.width : 0),
  };
}

/** Of all that was tried, what tells the artist most; and what she can do where nothing comes first. */
function whyNot(
  refusals: readonly Refusal<ProvenChange>[],
  seam: Seam,
  beneath: string | undefined,
): Refusal<ProvenChange> {
  const [one, other] = quoted([seam.earlier.sheet.layer.name, seam.later.sheet.layer.name]);
  const told = refusals.find(({ first }) => first) ?? refusals.find(({ anyway }) => anyway);
  const first = told?.first ?? beneath ?? `Draw ${one} farther under ${other} by hand, or lower limits.slip.`;
  return told ? { ...told, first } : { reason: `There is no room here to extend ${one} under ${other}.`, first };
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
