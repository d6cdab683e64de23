/** Spreads a colour under a later neighbour: one new shape in its own layer, proven before it is offered. */

import type { Finding } from '../../checks/finding';
import { formatMillimetres } from '../../config/length';
import { limitsOf } from '../../config/limits';
import type { Drawing, Shape } from '../../drawing/types';
import { indentBefore } from '../../edits/element/element-text';
import { formatNumber } from '../../edits/path/path-style';
import { decimalsFor } from '../../edits/path/precision';
import type { Cubic, Line, Point } from '../../geometry/base/curve-types';
import { apply, invert, maxScale } from '../../geometry/base/matrix';
import type { Region } from '../../geometry/base/polygon-types';
import { ringsOf } from '../../geometry/base/ring';
import { offset } from '../../geometry/boolean/index';
import { fitRing } from '../../geometry/curve/fit';
import { simplifyRing } from '../../geometry/polygon/simplify';
import { prefixOf } from '../../markup/query';
import type { Fix, Report } from '../../report/report';
import { SourceIndex } from '../../sheet/source-index';
import type { Sheet } from '../../sheet/types';
import type { TextEdit } from '../../text/text';
import { effectiveConfig } from '../check/effective-config';
import { verifyCandidate } from './candidate';
import { spreadAcross, spreadUnder } from './spread-region';

/** mm: how near the written curves come to what was worked out. */
const FIT = 0.015;

/** mm: where else the sheet may change, for curves that are written down and flattened again. */
const ROOM = 0.05;

/** For a finding of a short overlap or a bare gap, in the file of the earlier colour. */
export function spreadFixes(report: Report, finding: Finding): Fix[] {
  const { subject } = finding;
  if (subject?.kind !== 'overlap' && subject?.kind !== 'gap') return [];
  const [{ sheet }, later] = [subject.earlier, subject.later.sheet];
  const { slip } = limitsOf(effectiveConfig(report.settings));
  const region =
    subject.kind === 'gap'
      ? spreadAcross(sheet, later, subject.gap, slip)
      : spreadUnder(sheet, later, subject.overlap, slip);
  const places = subject.kind === 'gap' ? [subject.gap.onEarlier] : [subject.overlap.facing, subject.overlap.at];
  const model = sheet.layer.reading === 'openings' && region.length > 0 ? modelFor(sheet, places) : undefined;
  const edits = model ? insertShape(sheet.drawing, model, region) : [];
  if (edits.length === 0) return [];
  return verifyCandidate(report, finding, sheet, {
    kind: 'spread-colour',
    title: `Spread "${sheet.layer.name}" under "${later.layer.name}", to ${formatMillimetres(slip)}`,
    outcome: { edits },
    within: offset(region, ROOM),
    preferred: true,
  });
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
