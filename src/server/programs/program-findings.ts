/** Findings at the lines that drew what they are about. */
import { type Diagnostic, type DiagnosticRelatedInformation, DiagnosticTag, type Range } from 'vscode-languageserver';
import type { Generator } from '../../engine/index';
import type { FindingFact } from '../../protocol/facts';
import { oneLine } from '../../text/plain-text';
import { diagnosticOf } from '../documents/diagnostics';
import { type KnownDocument, rangeOf } from '../documents/known-document';
import type { PageOf, ProgramFiles } from '../host/platform';

/** How many places of a drawing are named beside one finding of a program, at most. */
const MOST_PLACES = 20;

/** What is found of one kind in all that one place of a program draws. */
export interface ProgramFinding {
  readonly uri: string;
  readonly range: Range;
  readonly known: KnownDocument;
  /** The most serious first. */
  readonly findings: readonly DrawnFinding[];
}

export type DrawnFinding = FindingFact & { readonly from: Generator };

export interface PlacesOfDrawing {
  readonly places: ProgramFiles;
  uriOf(name: string): string | undefined;
}

/** @returns without those of which nobody says what draws them, or whose program is not there */
export function programFindings(known: KnownDocument, { places, uriOf }: PlacesOfDrawing): ProgramFinding[] {
  const groups = new Map<string, ProgramFinding & { readonly findings: DrawnFinding[] }>();
  for (const finding of known.facts.findings) {
    const { from, check } = finding;
    const uri = from && uriOf(from.path);
    if (!from || uri === undefined) continue;
    const { line, character } = from.range.start;
    const key = JSON.stringify([uri, line, character, check]);
    const group = groups.get(key) ?? { uri, known, range: places.rangeOf(uri, from), findings: [] };
    groups.set(key, group);
    group.findings.push({ ...finding, from });
  }
  return [...groups.values()];
}

/** As it is underlined in the program: one for all that is alike, with the places of the drawing beside it. */
export function programDiagnostic(found: ProgramFinding, pageOf: PageOf, places: PlacesOfDrawing): Diagnostic[] {
  const { known, range, findings } = found;
  const [first, ...others] = findings;
  if (!first) return [];
  const { tags = [], ...shown } = diagnosticOf(first, known, pageOf);
  const more = others.length === 0 ? '' : `; ${others.length} more like it`;
  return [
    {
      ...shown,
      range,
      message: `${oneLine(first.message)} (${oneLine(first.from.drawn)}${more})`,
      relatedInformation: [
        ...findings.slice(0, MOST_PLACES).map((finding) => drawingPlace(finding, known)),
        ...callersOf(first.from, places),
        ...(shown.relatedInformation ?? []),
      ],
      // A line that draws something is never without need.
      tags: tags.filter((tag) => tag !== DiagnosticTag.Unnecessary),
    },
  ];
}

function drawingPlace({ from, span }: DrawnFinding, known: KnownDocument): DiagnosticRelatedInformation {
  const name = from.drawn.split(',')[0] ?? '';
  return {
    message: `In the drawing: ${oneLine(name)}`,
    location: { uri: known.uri, range: rangeOf(span, known.document) },
  };
}

function callersOf({ callers }: Generator, { places, uriOf }: PlacesOfDrawing): DiagnosticRelatedInformation[] {
  return callers.flatMap((caller) => {
    const uri = uriOf(caller.path);
    return uri === undefined
      ? []
      : [{ message: 'Called from here', location: { uri, range: places.rangeOf(uri, caller) } }];
  });
}
