/** What the server is told of a checked document. */
import type { Related } from '../../checks/finding';
import { idleAcceptances, outlineOf } from '../../engine/index';
import type { CheckFacts, DocumentFacts, FindingFact, ProjectFaults, RelatedFact } from '../../protocol/facts';
import type { ReportedFinding } from '../../report/finding-id';
import type { CheckedDocument } from '../documents/checked-document';
import type { CheckedProject } from '../documents/checked-project';
import { summaryOf } from './summary';
import { tagFactsOf } from './tag-facts';

export function documentFactsOf(checked: CheckedDocument): DocumentFacts & { readonly name: string } {
  const { file, stencil, report } = checked;
  return {
    name: report.project?.file ?? '',
    uri: file.uri,
    version: file.version,
    open: file.open,
    stencil,
    findings: report.findings.map((finding) => findingFactOf(finding, checked)),
    outline: outlineOf(report),
    tags: tagFactsOf(report),
    summary: summaryOf(report, checked.config),
    programs: [...checked.generators.paths],
  };
}

export function projectFactsOf({ report, documents }: CheckedProject): CheckFacts {
  const amiss: ProjectFaults = { layers: report.faults, acceptances: idleAcceptances(report) };
  return { documents: [...documents.values()].map(documentFactsOf), amiss, elapsed: report.elapsed };
}

function findingFactOf(finding: ReportedFinding, checked: CheckedDocument): FindingFact {
  const { id, check, severity, message, detail, span, related, at, measure, layer } = finding;
  const from = checked.generators.of(span);
  return {
    id,
    check,
    severity,
    message,
    ...(detail !== undefined && { detail }),
    span,
    at,
    measure,
    layer,
    ...(from && { from }),
    related: related.flatMap((each) => relatedFactOf(each, checked)),
  };
}

function relatedFactOf({ message, span, file }: Related, checked: CheckedDocument): RelatedFact[] {
  const document = file === undefined ? checked : checked.named(file);
  return document ? [{ message, uri: document.uri, span }] : [];
}
