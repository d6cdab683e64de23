/**
 * Register marks in every sheet of a stack: a corner notch, an angle that points to the sheet's upper left corner, and
 * a plain cross-hair in each of the two corners beside it. Far apart, they also show a sheet that lies turned.
 */

import { defined } from '../../base/defined';
import type { Finding } from '../../checks/finding';
import { kerfOf, limitsOf } from '../../config/limits';
import type { Config } from '../../config/types';
import type { Drawing } from '../../drawing/types';
import { joinInserts } from '../../edits/bridge/add-strips';
import { formatNumber } from '../../edits/path/path-style';
import { decimalsFor } from '../../edits/path/precision';
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply, invert, maxScale } from '../../geometry/base/matrix';
import type { Box, Region } from '../../geometry/base/polygon-types';
import { ringOfPoints } from '../../geometry/base/ring';
import { areaOf, difference, intersection, offset } from '../../geometry/boolean/index';
import { attributeOf, prefixOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';
import { isRefusal, type Refusal, type Result, refuse } from '../../report/refusal';
import type { FileEdits, Report } from '../../report/report';
import type { Sheet } from '../../sheet/types';
import { registrationMarks } from '../../stack/registration-marks';
import type { TextEdit } from '../../text/text';
import { effectiveConfig } from '../check/effective-config';
import type { ProvenChange } from './kind';
import { verify } from './verify';

/** mm: arms of this length are found again by eye. Common practice, no source. */
const DEFAULT_SIZE = 5;
const MIN_SIZE = 3;
const SIZE_STEP = 0.5;

/** mm beyond the least widths, so that no mark is at a limit. */
const CLEARANCE = 0.3;

interface Mark {
  readonly kind: 'corner-notch' | 'cross-hair';
  /** The outline in sheet mm. */
  readonly outline: readonly Point[];
}

/** Whether a layer of the report's own file has no marks, in a stack where they would be of use. */
export function lacksMarks(report: Report): boolean {
  return report.stack.layers.length > 1 && report.sheets.some(({ layer }) => registrationMarks(layer).length === 0);
}

/**
 * Cuts the marks in every layer of the stack that has none, in all its files.
 * @param gone the findings that ask for them
 * @returns a sentence where a layer cannot be given them, or where the margin has no room for them and an opening is in
 * their way
 */
export function proveMarks(report: Report, gone: readonly Finding[]): Result<ProvenChange> {
  const first = report.stack.layers[0];
  if (!first) return refuse('There is no sheet to cut register marks in.');
  const marks = freeMarks(report, effectiveConfig(report.settings));
  if ('reason' in marks) return marks;
  const own = report.project?.file ?? '';
  const files = new Map<string, TextEdit[]>();
  for (const { file, sheet } of report.stack.layers) {
    if (registrationMarks(sheet.layer).length > 0) continue;
    const edit = marksIn(sheet, marks);
    if (!edit)
      return refuse(
        `Register marks cannot be drawn in layer "${sheet.layer.name}" without changing what is cut there.`,
      );
    files.set(file, joinInserts([...(files.get(file) ?? []), edit]));
  }
  const others = [...files].filter(([file]) => file !== own).map(([file, edits]): FileEdits => ({ file, edits }));
  return verifyMarks(report, gone, marks, { edits: files.get(own) ?? [], others });
}

/**
 * The largest marks that stand free in the corners of every sheet: what would come nearer to an opening than a bridge is
 * wide would run together with it, and register nothing.
 */
function freeMarks({ stack }: Report, config: Config): readonly Mark[] | Refusal<never> {
  const clear = clearanceOf(config);
  const room = config.margin - 2 * clear;
  const largest = room >= MIN_SIZE ? Math.min(room, DEFAULT_SIZE) : DEFAULT_SIZE;
  const frame = defined(stack.layers[0]).sheet.frame;
  const sheets = stack.layers.map(({ sheet }) => sheet);
  const unmarked = sheets.filter(({ layer }) => registrationMarks(layer).length === 0);
  for (let size = largest; size >= MIN_SIZE; size -= SIZE_STEP) {
    const marks = marksOfSize(frame, config, size);
    const around = offset(regionOf(marks), clear - CLEARANCE);
    if (unmarked.every(({ openings }) => intersection(around, openings).length === 0)) return marks;
  }
  const margin = Math.ceil(DEFAULT_SIZE + 2 * clear);
  return {
    reason: 'The art leaves no free sheet in the corners for register marks.',
    first: `Set "margin": "${margin}mm" in tombolo.json first.`,
  };
}

/** mm from a mark to an opening or to the edge of the sheet. */
function clearanceOf(config: Config): number {
  return limitsOf(config).bridge + kerfOf(config) + CLEARANCE;
}

function marksOfSize(frame: Box, config: Config, size: number): Mark[] {
  const clear = clearanceOf(config);
  const bar = Math.max(limitsOf(config).opening + CLEARANCE, size / 6);
  const inset = config.margin - 2 * clear >= MIN_SIZE ? config.margin / 2 : clear + size / 2;
  const [left, right, top, bottom] = [frame.minX + inset, frame.maxX - inset, frame.minY + inset, frame.maxY - inset];
  return [
    { kind: 'corner-notch', outline: angle({ x: left - size / 2, y: top - size / 2 }, size, bar) },
    { kind: 'cross-hair', outline: cross({ x: right, y: top }, size / 2, bar / 2) },
    { kind: 'cross-hair', outline: cross({ x: left, y: bottom }, size / 2, bar / 2) },
  ];
}

/** @param corner the outer one */
function angle({ x, y }: Point, size: number, bar: number): Point[] {
  return [
    [0, 0],
    [size, 0],
    [size, bar],
    [bar, bar],
    [bar, size],
    [0, size],
  ].map(([across = 0, down = 0]) => ({ x: x + across, y: y + down }));
}

/** @param reach of the arms from the middle */
function cross({ x, y }: Point, reach: number, half: number): Point[] {
  const arm = [
    [-half, -reach],
    [half, -reach],
    [half, -half],
  ];
  return [0, 1, 2, 3].flatMap((turn) =>
    arm.map(([across = 0, down = 0]) => {
      let [u, v] = [across, down];
      for (let quarter = 0; quarter < turn; quarter += 1) [u, v] = [-v, u];
      return { x: x + u, y: y + v };
    }),
  );
}

/** The insertion that cuts the marks in a layer; undefined where nothing that is added would be cut as it should. */
function marksIn({ layer, drawing }: Sheet, marks: readonly Mark[]): TextEdit | undefined {
  if (layer.reading === 'sheet') return undefined;
  const place = placeIn(layer.element ?? drawing.document.root, drawing);
  const toUser = place && invert(place.toMm);
  if (!place || !toUser) return undefined;
  const { text } = drawing.document;
  const decimals = decimalsFor(maxScale(place.toMm));
  const style =
    layer.reading === 'outlines'
      ? `fill="none" stroke="${layer.paint}" stroke-width="${formatNumber(0.1 / maxScale(place.toMm), decimals + 1)}"`
      : `fill="${layer.paint}" stroke="none"`;
  const { prefix, at } = place;
  const [lineStart] = /(?:\r?\n)[ \t]*$/.exec(text.slice(0, at)) ?? [];
  const elements = marks.map(
    ({ kind, outline }) =>
      `<${prefix}path data-tombolo-register="${kind}" ${style} d="${pathData(outline, toUser, decimals)}"/>`,
  );
  const lines = lineStart === undefined ? elements : elements.map((element) => `  ${element}${lineStart}`);
  return { span: { from: at, to: at }, text: lines.join('') };
}

interface Place {
  readonly at: number;
  readonly toMm: Matrix;
  readonly prefix: string;
}

/** Before the end tag of the root, or of a group in it that is not transformed. */
function placeIn(element: ElementNode | undefined, { document: { root }, toMm }: Drawing): Place | undefined {
  if (!element?.endTag) return undefined;
  const isPlainGroup = element.parent === root && element.localName === 'g' && !attributeOf(element, 'transform');
  if (element !== root && !isPlainGroup) return undefined;
  const prefix = prefixOf(element);
  return { at: element.endTag.from, toMm, prefix };
}

function pathData(outline: readonly Point[], toUser: Matrix, decimals: number): string {
  const points = outline.map((point) => apply(toUser, point));
  return `M${points.map(({ x, y }) => `${formatNumber(x, decimals)} ${formatNumber(y, decimals)}`).join('L')}Z`;
}

function regionOf(marks: readonly Mark[]): Region {
  return marks.map(({ outline }) => ({ outer: ringOfPoints(outline), holes: [] }));
}

/** Every layer must end up with the marks as openings of their own, and nothing else change or get worse. */
function verifyMarks(
  report: Report,
  gone: readonly Finding[],
  marks: readonly Mark[],
  { edits, others }: { edits: readonly TextEdit[]; others: readonly FileEdits[] },
): Result<ProvenChange> {
  const region = regionOf(marks);
  const around = offset(region, 0.01);
  const within = new Map(report.stack.layers.map(({ sheet }) => [sheet.layer.id, around]));
  const proof = verify(report, edits, { gone, within }, others);
  if (isRefusal(proof)) return { reason: proof.reason };
  const lacking = proof.after.stack.layers.find(({ sheet }, i) => {
    const before = report.stack.layers[i]?.sheet;
    const added = before && registrationMarks(before.layer).length === 0 ? marks.length : 0;
    const isApart = sheet.openings.length === (before?.openings.length ?? 0) + added;
    const isWhole = areaOf(difference(offset(region, -0.01), sheet.openings)) < 0.01;
    return !isApart || !isWhole || registrationMarks(sheet.layer).length === 0;
  });
  if (lacking) return refuse(`The register marks would not come out whole in layer "${lacking.sheet.layer.name}".`);
  return { edits, brings: proof.brings, ...(others.length > 0 ? { others } : {}) };
}
