/** From the name of a finding to the finding. */
import { fileOfFinding, type FindingId, type ReportedFinding } from '../../report/finding-id';
import type { Report } from '../../report/report';

/** The finding and the report that it stands in: the given one, or that of another file of the same project. */
export function findingById(
  report: Report,
  id: FindingId,
): { readonly report: Report; readonly finding: ReportedFinding } | undefined {
  const owner = report.project ? report.project.report.files.get(fileOfFinding(id)) : report;
  const finding = owner?.findings.find((each) => each.id === id);
  return owner && finding && { report: owner, finding };
}
