/** Findings in the form that the editor underlines. */
import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
  DiagnosticTag,
  type Range,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Finding, Related, Severity } from '../../checks/finding';
import type { ConfigProblem } from '../../config/read';
import type { Span } from '../../text/text';
import type { CheckedDocument } from './checked-document';

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
  /** Index into the findings of that version's report. */
  readonly finding: number;
}

/** @param pageOf the address of a check's page, where there is one */
export function diagnosticOf(
  finding: Finding,
  index: number,
  checked: CheckedDocument,
  pageOf: (check: string) => string | undefined,
): Diagnostic {
  const { document } = checked;
  const data: DiagnosticData = { version: document.version, finding: index };
  const diagnostic: Diagnostic = {
    range: rangeOf(finding.span, document),
    severity: severities[finding.severity],
    source: SOURCE,
    code: finding.check,
    message: finding.message,
    relatedInformation: finding.related.flatMap((related) => relatedOf(related, checked)),
    data,
  };
  const href = pageOf(finding.check);
  if (href !== undefined) diagnostic.codeDescription = { href };
  if (finding.severity === 'hint') diagnostic.tags = [DiagnosticTag.Unnecessary];
  return diagnostic;
}

function relatedOf({ message, span, file }: Related, checked: CheckedDocument): DiagnosticRelatedInformation[] {
  const document = (file === undefined ? checked : checked.named(file))?.document;
  return document ? [{ message, location: { uri: document.uri, range: rangeOf(span, document) } }] : [];
}

/** @param document the `tombolo.json` itself */
export function configDiagnosticOf(problem: ConfigProblem, document: TextDocument): Diagnostic {
  return {
    range: rangeOf(problem.span, document),
    severity: severities[problem.severity],
    source: SOURCE,
    message: problem.message,
  };
}

export function rangeOf(span: Span, document: TextDocument): Range {
  return { start: document.positionAt(span.from), end: document.positionAt(span.to) };
}
