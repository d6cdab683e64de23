/** What the formats print: the report of one file as plain data, freed of its geometry. */

import type { Measure, Related, Severity } from '../checks/finding';
import { UNREADABLE_CONFIG } from '../config/check-id';
import type { ConfigProblem } from '../config/read';
import type { Config, Reading } from '../config/types';
import { effectiveConfig } from '../engine/check/effective-config';
import type { FixesOfFinding } from '../engine/fixes/index';
import { generatorsIn } from '../engine/queries/generators';
import type { Point } from '../geometry/base/curve-types';
import { areaOf } from '../geometry/boolean/index';
import type { ReportedFinding } from '../report/finding-id';
import type { Fix } from '../report/fix';
import type { Generator, GeneratorMarks } from '../report/generator';
import type { Report } from '../report/report';
import { cuttingTimeOf } from '../sheet/cutting-time';
import type { Sheet } from '../sheet/types';
import type { TextEdit } from '../text/text';
import type { Wording } from '../text/wording';
import { type Range, type RangeOf, rangesIn } from './ranges';
import type { Snippet } from './snippet/snippet';

export interface CheckedFile {
  readonly path: string;
  /** mm; undefined for a configuration file. */
  readonly size: { readonly width: number; readonly height: number; readonly stated: boolean } | undefined;
  /** In painting order. */
  readonly layers: readonly CheckedLayer[];
  /** Most serious first, then in the order of the text. */
  readonly findings: readonly PlacedFinding[];
  /** Of all findings, also those that are not listed. */
  readonly counts: SeverityCounts;
}

export type SeverityCounts = Readonly<Record<Severity, number>>;

export interface CheckedLayer {
  readonly name: string;
  readonly reading: Reading;
  /** `#rrggbb` */
  readonly paint: string;
  readonly openings: number;
  /** mm² */
  readonly openingArea: number;
  /** mm² */
  readonly materialArea: number;
  readonly islands: number;
  /** mm */
  readonly cutLength: number;
  /** Seconds, where speed and acceleration are stated. */
  readonly cutTime?: number | undefined;
}

export interface PlacedFinding extends Wording {
  /** A check of the engine, or `UNREADABLE_CONFIG`. */
  readonly check: string;
  readonly severity: Severity;
  readonly layer: string | undefined;
  readonly range: Range;
  readonly at: Point | undefined;
  readonly measure: Measure | undefined;
  readonly related: readonly PlacedRelated[];
  /** Where a program draws it. */
  readonly from?: Generator | undefined;
  readonly mends: readonly PlacedFix[];
  /** The fixes that were tried and cannot be had; for text only where none can. */
  readonly refusals: readonly PlacedRefusal[];
  /** The place, drawn small, where that was asked for. */
  readonly snippet?: Snippet | undefined;
}

export interface PlacedRefusal {
  readonly title: string;
  /** One sentence. */
  readonly reason: string;
}

export interface PlacedRelated {
  readonly message: string;
  /** Another file of the project; undefined in the finding's own. */
  readonly path?: string | undefined;
  readonly range: Range;
  readonly at: Point | undefined;
}

export interface PlacedFix {
  readonly title: string;
  readonly preferred: boolean;
  readonly safe: boolean;
  readonly edits: readonly PlacedEdit[];
  /** What belongs to the same change in other files of the project. */
  readonly others?: readonly PlacedChange[];
}

export interface PlacedChange {
  readonly path: string;
  readonly edits: readonly PlacedEdit[];
}

export interface PlacedEdit {
  readonly range: Range;
  readonly text: string;
}

export interface CheckedFileSource {
  readonly path: string;
  /** The path of another file of the project, by the project's name for it. */
  readonly pathOf: (file: string) => string;
  readonly report: Report;
  /** Those to list: all of the report's, or its shorter choice. */
  readonly findings: readonly ReportedFinding[];
  /** Those to count. */
  readonly counted: readonly ReportedFinding[];
  /** Whether the size comes from the artist: from the file, the configuration or the command line. */
  readonly sizeStated: boolean;
  /** Undefined where none were tried. */
  readonly fixesFor: (finding: ReportedFinding) => FixesOfFinding | undefined;
  /** What a traced program left, where one wrote the file. */
  readonly marks?: GeneratorMarks | undefined;
  /** Draws a finding's place small; undefined where it is not to be drawn. */
  readonly snippetFor?: (finding: ReportedFinding) => Snippet | undefined;
}

export function checkedFile({
  path,
  pathOf,
  report,
  findings,
  counted,
  sizeStated,
  fixesFor: fixesOf,
  marks,
  snippetFor = () => undefined,
}: CheckedFileSource): CheckedFile {
  const places: Places = { own: rangesIn(report.text), other: neighboursOf(report, pathOf) };
  const { width, height } = report.drawing;
  const traced = marks && generatorsIn(report.drawing.document, marks);
  return {
    path,
    size: { width, height, stated: sizeStated },
    layers: report.sheets.map((sheet) => checkedLayer(sheet, effectiveConfig(report.settings))),
    findings: findings.map((finding) => ({
      ...placeFinding(traced ? { ...finding, from: traced(finding.span) } : finding, fixesOf(finding), places),
      snippet: snippetFor(finding),
    })),
    counts: countSeverities(counted),
  };
}

/** Looks up other files of the project, each read into lines once. */
function neighboursOf({ project }: Report, pathOf: (file: string) => string): Places['other'] {
  const known = new Map<string, Neighbour>();
  return (file) => {
    const text = project?.report.files.get(file)?.text;
    if (text === undefined) return undefined;
    const found = known.get(file) ?? { path: pathOf(file), rangeOf: rangesIn(text) };
    known.set(file, found);
    return found;
  };
}

/** The problems of a configuration file, in the shape of findings. */
export function checkedConfig(path: string, text: string, problems: readonly ConfigProblem[]): CheckedFile {
  const rangeOf = rangesIn(text);
  const findings = problems.map(
    ({ message, detail, severity, span }): PlacedFinding => ({
      check: UNREADABLE_CONFIG,
      severity,
      message,
      ...(detail !== undefined && { detail }),
      layer: undefined,
      range: rangeOf(span),
      at: undefined,
      measure: undefined,
      related: [],
      mends: [],
      refusals: [],
    }),
  );
  return { path, size: undefined, layers: [], findings, counts: countSeverities(findings) };
}

function countSeverities(findings: readonly { readonly severity: Severity }[]): SeverityCounts {
  const counts = { error: 0, warning: 0, info: 0, hint: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return counts;
}

/** Of all findings of all files, also of those that are not listed. */
export function summarize(files: readonly Pick<CheckedFile, 'counts'>[]): SeverityCounts {
  const sum = (severity: keyof SeverityCounts) => files.reduce((total, { counts }) => total + counts[severity], 0);
  return { error: sum('error'), warning: sum('warning'), info: sum('info'), hint: sum('hint') };
}

function checkedLayer(sheet: Sheet, config: Config): CheckedLayer {
  const { layer, openings, material, pieces, cutLength } = sheet;
  return {
    name: layer.name,
    reading: layer.reading,
    paint: layer.paint,
    openings: openings.length,
    openingArea: areaOf(openings),
    materialArea: areaOf(material),
    islands: pieces.filter((piece) => piece.island).length,
    cutLength,
    cutTime: cuttingTimeOf(sheet, config),
  };
}

interface Neighbour {
  readonly path: string;
  readonly rangeOf: RangeOf;
}

/** From spans to ranges, in the file itself and in others of its project. */
interface Places {
  readonly own: RangeOf;
  readonly other: (file: string) => Neighbour | undefined;
}

type Found = Omit<ReportedFinding, 'from'> & { readonly from?: Generator | undefined };

function placeFinding(finding: Found, tried: FixesOfFinding | undefined, places: Places): PlacedFinding {
  const { fixes, refusals } = tried ?? NONE_TRIED;
  return {
    check: finding.check,
    severity: finding.severity,
    message: finding.message,
    ...(finding.detail !== undefined && { detail: finding.detail }),
    layer: finding.layer,
    range: places.own(finding.span),
    at: finding.at,
    measure: finding.measure,
    related: finding.related.flatMap((related) => placeRelated(related, places)),
    from: finding.from,
    mends: fixes.map((fix) => placeFix(fix, places)),
    refusals: refusals.map(({ title, reason }) => ({ title, reason })),
  };
}

const NONE_TRIED: FixesOfFinding = { fixes: [], refusals: [] };

function placeRelated({ message, span, at, file }: Related, { own, other }: Places): PlacedRelated[] {
  const place = file === undefined ? { path: undefined, rangeOf: own } : other(file);
  return place ? [{ message, path: place.path, range: place.rangeOf(span), at }] : [];
}

function placeFix({ title, preferred, safe, edits, others = [] }: Fix, { own, other }: Places): PlacedFix {
  return {
    title,
    preferred,
    safe,
    edits: edits.map((edit) => placeEdit(edit, own)),
    others: others.flatMap(({ file, edits: theirs }) => {
      const place = other(file);
      return place ? [{ path: place.path, edits: theirs.map((edit) => placeEdit(edit, place.rangeOf)) }] : [];
    }),
  };
}

function placeEdit({ span, text }: TextEdit, rangeOf: RangeOf): PlacedEdit {
  return { range: rangeOf(span), text };
}
