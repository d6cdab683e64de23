import type { CheckId } from '../../src/config/check-id';
import { check } from '../../src/engine/check/check-file';
import { fixesFor } from '../../src/engine/fixes/index';
import { applyEdits } from '../../src/text/text';

/** The mends for the first finding of a check, by kind, each with the text it gives. */
export function fixed(svg: string, id: CheckId): Map<string, string> {
  const report = check(svg);
  const finding = report.findings.find((each) => each.check === id);
  if (!finding) throw new Error(`no ${id} in ${report.findings.map((each) => each.check)}`);
  return new Map(fixesFor(report, finding).fixes.map(({ kind, edits }) => [kind, applyEdits(svg, edits)]));
}

export const checksIn = (svg: string): string[] => check(svg).findings.map((finding) => finding.check);
