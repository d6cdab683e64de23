/** What the formats print: the report of one file as plain data, freed of its geometry. */
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Position } from 'vscode-languageserver-textdocument';
import type { Finding, Measure, Severity } from '../checks/finding';
import { areaOf } from '../geometry/polygons';
import type { Point } from '../geometry/curve';
import type { Mend, Report } from '../report';
import type { ConfigProblem } from '../sheet/read-config';
import type { Reading, Sheet } from '../sheet/sheet';
import type { Span, TextEdit } from '../text';

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
}

export interface PlacedFinding {
  /** A check of the engine, or `CONFIG_CHECK`. */
  readonly check: string;
  readonly severity: Severity;
  readonly message: string;
  readonly layer: string | undefined;
  readonly range: Range;
  readonly at: Point | undefined;
  readonly measure: Measure | undefined;
  readonly related: readonly { readonly message: string; readonly range: Range; readonly at: Point | undefined }[];
  readonly mends: readonly PlacedMend[];
}

/** A stretch of text, by lines and by offsets, all zero-based in UTF-16 code units. */
export interface Range {
  readonly start: Position;
  readonly end: Position;
  readonly from: number;
  readonly to: number;
}

export interface PlacedMend {
  readonly title: string;
  readonly preferred: boolean;
  readonly safe: boolean;
  readonly edits: readonly { readonly range: Range; readonly text: string }[];
}

/** The check id of problems in `tombolo.json`. */
export const CONFIG_CHECK = 'unreadable-config';

export interface CheckedFileSource {
  readonly path: string;
  readonly report: Report;
  /** Those to list: all of the report's, or its shorter choice. */
  readonly findings: readonly Finding[];
  /** Whether the size comes from the artist: from the file, the configuration or the command line. */
  readonly sizeStated: boolean;
  readonly mendsFor: (finding: Finding) => readonly Mend[];
}

export function checkedFile({ path, report, findings, sizeStated, mendsFor }: CheckedFileSource): CheckedFile {
  const rangeOf = rangesIn(report.text);
  const { width, height } = report.drawing;
  return {
    path,
    size: { width, height, stated: sizeStated },
    layers: report.sheets.map(checkedLayer),
    findings: findings.map((finding) => placeFinding(finding, mendsFor(finding), rangeOf)),
    counts: countSeverities(report.complete),
  };
}

/** The problems of a configuration file, in the shape of findings. */
export function checkedConfig(path: string, text: string, problems: readonly ConfigProblem[]): CheckedFile {
  const rangeOf = rangesIn(text);
  const findings = problems.map(({ message, severity, span }): PlacedFinding => ({
    check: CONFIG_CHECK,
    severity,
    message,
    layer: undefined,
    range: rangeOf(span),
    at: undefined,
    measure: undefined,
    related: [],
    mends: [],
  }));
  return { path, size: undefined, layers: [], findings, counts: countSeverities(findings) };
}

function countSeverities(findings: readonly { readonly severity: Severity }[]): SeverityCounts {
  const counts = { error: 0, warning: 0, info: 0, hint: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return counts;
}

function checkedLayer({ layer, openings, material, pieces, cutLength }: Sheet): CheckedLayer {
  return {
    name: layer.name,
    reading: layer.reading,
    paint: layer.paint,
    openings: openings.length,
    openingArea: areaOf(openings),
    materialArea: areaOf(material),
    islands: pieces.filter((piece) => piece.island).length,
    cutLength,
  };
}

type RangeOf = (span: Span) => Range;

function placeFinding(finding: Finding, mends: readonly Mend[], rangeOf: RangeOf): PlacedFinding {
  return {
    check: finding.check,
    severity: finding.severity,
    message: finding.message,
    layer: finding.layer,
    range: rangeOf(finding.span),
    at: finding.at,
    measure: finding.measure,
    related: finding.related.map(({ message, span, at }) => ({ message, range: rangeOf(span), at })),
    mends: mends.map(({ title, preferred, safe, edits }) => (
      { title, preferred, safe, edits: edits.map((edit) => placeEdit(edit, rangeOf)) })),
  };
}

function placeEdit({ span, text }: TextEdit, rangeOf: RangeOf): PlacedMend['edits'][number] {
  return { range: rangeOf(span), text };
}

function rangesIn(text: string): RangeOf {
  const document = TextDocument.create('', '', 0, text);
  return ({ from, to }) => ({ start: document.positionAt(from), end: document.positionAt(to), from, to });
}
