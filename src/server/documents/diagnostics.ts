/** Findings in the form that the editor underlines. */
import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
  DiagnosticTag,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Severity } from '../../config/check-id';
import { UNREADABLE_CONFIG } from '../../config/check-id';
import type { ConfigProblem } from '../../config/read';
import type { FindingId } from '../../engine/index';
import type { FindingFact, RelatedFact } from '../../protocol/facts';
import { oneLine } from '../../text/plain-text';
import type { PageOf } from '../host/platform';
import { type KnownDocument, rangeOf } from './known-document';

export const SOURCE = 'tombolo';

const severities: Record<Severity, DiagnosticSeverity> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** What a diagnostic carries so that it can be told which finding it shows. */
export interface DiagnosticData {
  readonly version: number;
  readonly finding: FindingId;
}

/** @param live the text that it is shown in, where that has changed since it was checked */
export function diagnosticOf(
  finding: FindingFact,
  known: KnownDocument,
  pageOf: PageOf,
  live?: TextDocument,
): Diagnostic {
  const data: DiagnosticData = { version: known.version, finding: finding.id };
  const diagnostic: Diagnostic = {
    range: live ? known.rangeIn(live, finding.span) : rangeOf(finding.span, known.document),
    severity: severities[finding.severity],
    source: SOURCE,
    code: finding.check,
    message: oneLine(finding.message),
    relatedInformation: finding.related.flatMap((related) => relatedOf(related, known)),
    data,
  };
  const href = pageOf(finding.check);
  if (href !== undefined) diagnostic.codeDescription = { href };
  if (finding.severity === 'hint') diagnostic.tags = [DiagnosticTag.Unnecessary];
  return diagnostic;
}

function relatedOf({ message, span, uri }: RelatedFact, known: KnownDocument): DiagnosticRelatedInformation[] {
  const document = known.sibling(uri)?.document;
  return document ? [{ message: oneLine(message), location: { uri, range: rangeOf(span, document) } }] : [];
}

/**
 * Its detail stands on a line of its own: no hover of ours tells it in JSON.
 * @param document the `tombolo.json` itself
 */
export function configDiagnosticOf(
  { message, detail, ...problem }: ConfigProblem,
  document: TextDocument,
  pageOf: PageOf,
): Diagnostic {
  const href = pageOf(UNREADABLE_CONFIG);
  return {
    range: rangeOf(problem.span, document),
    severity: severities[problem.severity],
    source: SOURCE,
    code: UNREADABLE_CONFIG,
    ...(href !== undefined && { codeDescription: { href } }),
    message: detail === undefined ? oneLine(message) : `${oneLine(message)}\n${oneLine(detail)}`,
  };
}
