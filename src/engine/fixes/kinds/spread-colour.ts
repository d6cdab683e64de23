/** Extends a colour under a later neighbour: one new shape in its own layer, proven before it is offered. */

import type { Finding, Subject } from '../../../checks/finding';
import { limitsOf } from '../../../config/limits';
import { formatMillimetres } from '../../../config/values';
import type { Drawing, Shape } from '../../../drawing/types';
import { indentBefore } from '../../../edits/element/element-text';
import { formatNumber } from '../../../edits/path/path-style';
import { decimalsFor } from '../../../edits/path/precision';
import type { Cubic, Line, Point } from '../../../geometry/base/curve-types';
import { apply, invert, maxScale } from '../../../geometry/base/matrix';
import type { Region } from '../../../geometry/base/polygon-types';
import { ringsOf } from '../../../geometry/base/ring';
import { ON_CURVE, PLAINLY_BESIDE, SAME_FINDING } from '../../../geometry/base/tolerances';
import { offset } from '../../../geometry/boolean/index';
import { fitRing } from '../../../geometry/curve/fit';
import { simplifyRing } from '../../../geometry/polygon/simplify';
import { prefixOf } from '../../../markup/query';
import { type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import { SourceIndex } from '../../../sheet/source-index';
import type { Sheet } from '../../../sheet/types';
import type { TextEdit } from '../../../text/text';
import { effectiveConfig } from '../../check/effective-config';
import { isCourseNear } from '../faults/course';
import { sentenceOf } from '../faults/first';
import { type FixKind, type ProvenChange, proveAttempt } from '../kind';
import { spreadAcross, spreadUnder } from '../spread-region';

/** mm: how near the written curves come to what was worked out. */
const FIT = 10 * ON_CURVE;

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

/** mm */
function slipOf({ settings }: Report): number {
  return limitsOf(effectiveConfig(settings)).slip;
}

function spread(report: Report, finding: Finding, seam: Seam): Result<ProvenChange> {
  const [{ sheet }, later] = [seam.earlier, seam.later.sheet];
  if (sheet.layer.reading !== 'openings') {
    return refuse(
      `"${sheet.layer.name}" draws what stays or the cut lines: another shape would not extend its colour.`,
    );
  }
  const { slip, bridge } = limitsOf(effectiveConfig(report.settings));
  const limits = { slip, bridge: bridge + sheet.kerf };
  const region =
    seam.kind === 'gap'
      ? spreadAcross(sheet, later, seam.gap, limits)
      : spreadUnder(sheet, later, seam.overlap, limits);
  if (region.length === 0) {
    const first = seamBeneath(report, finding, seam);
    return { reason: 'Between these edges no way was found to extend the colour.', ...(first && { first }) };
  }
  const places = seam.kind === 'gap' ? [seam.gap.onEarlier] : [seam.overlap.facing, seam.overlap.at];
  const model = modelFor(sheet, places);
  if (!model) return refuse(`Layer "${sheet.layer.name}" has no shape that the new one could be drawn beside.`);
  const outcome = { edits: insertShape(sheet.drawing, model, region) };
  return proveAttempt(report, sheet, { outcome, within: offset(region, ROOM), gone: [finding] });
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

/** The shape that has the edge, if what stands beside it is drawn as it is; else the last of the layer that will do. */
function modelFor({ layer }: Sheet, places: readonly Point[]): Shape | undefined {
  const usable = (shape: Shape): boolean =>
    shape.instances.length === 0 && shape.clips.length === 0 && invert(shape.toMm) !== undefined;
  const sources = new SourceIndex(layer.shapes, false);
  const found = places.map((place) => sources.at(place)?.shape).find((shape) => shape && usable(shape));
  return found ?? layer.shapes.findLast(usable);
}

function insertShape(drawing: Drawing, shape: Shape, region: Region): TextEdit[] {
  const toUser = invert(shape.toMm);
  if (!toUser) return [];
  const data = pathData(region, (point) => apply(toUser, point), decimalsFor(maxScale(shape.toMm)));
  const { element } = shape;
  const prefix = prefixOf(element);
  const { from, to } = element.span;
  const indent = indentBefore(drawing.document.text, from);
  return [
    { span: { from: to, to }, text: `${indent}<${prefix}path${presentationAttributes(drawing, shape)} d="${data}"/>` },
  ];
}

function pathData(region: Region, toUser: (point: Point) => Point, decimals: number): string {
  const pair = (point: Point): string => {
    const { x, y } = toUser(point);
    return `${formatNumber(x, decimals)} ${formatNumber(y, decimals)}`;
  };
  const command = (curve: Line | Cubic): string =>
    curve.kind === 'line'
      ? `L${pair(curve.end)}`
      : `C${pair(curve.control1)} ${pair(curve.control2)} ${pair(curve.end)}`;
  return region
    .flatMap(ringsOf)
    .map((ring) => fitRing(simplifyRing(ring, FIT / 4), FIT))
    .map((curves) => (curves[0] ? `M${pair(curves[0].start)}${curves.map(command).join('')}Z` : ''))
    .join('');
}

/** As its neighbour looks, where that is only filled; else its colour. */
function presentationAttributes({ document, shapes }: Drawing, shape: Shape): string {
  const { element, paint } = shape;
  const alone = shape.part === 'fill' && !shapes.some((other) => other.element === element && other !== shape);
  const kept = element.attributes.filter(
    ({ name }) => name === 'transform' || (alone && PRESENTATION_ATTRIBUTES.includes(name)),
  );
  const written = kept.map(({ span }) => ` ${document.text.slice(span.from, span.to)}`).join('');
  const colour = paint.kind === 'none' ? '#000000' : paint.colour;
  return alone ? written : `${written} style="fill:${colour};stroke:none"`;
}

const PRESENTATION_ATTRIBUTES = ['class', 'style', 'fill', 'fill-opacity', 'opacity'];
