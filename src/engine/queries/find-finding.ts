/** From the name of a finding to the finding. */
import { type FindingId, fileOfFinding, type ReportedFinding } from '../../report/finding-id';
import type { Report } from '../../report/report';

/** The finding and the report that it stands in: the given one, or that of another file of the same project. */
export function findingById(
  report: Report,
  id: FindingId,
): { readonly report: Report; readonly finding: ReportedFinding } | undefined {
  const owner = report.project ? report.project.report.files.get(fileOfFinding(id)) : report;
  const isIt = (each: ReportedFinding): boolean => each.id === id;
  const finding = owner?.findings.find(isIt) ?? owner?.complete.find(isIt);
  return owner && finding && { report: owner, finding };
}
