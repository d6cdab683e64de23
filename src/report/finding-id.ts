/** A name for each finding, by which every host asks about it: it holds as long as what was found may hold. */
import type { Finding } from '../checks/finding';
import type { Generator } from './generator';

declare const brand: unique symbol;

/**
 * `file@version/check/ordinal`. The version stands for all that the check has read: a finding in a text that has not
 * changed keeps its name while other files of the project change, unless it lies between them.
 */
export type FindingId = string & { readonly [brand]: 'finding' };

/** A finding in a report. */
export interface ReportedFinding extends Finding {
  readonly id: FindingId;
  /** How many findings of its check it stands for, which are left out. */
  readonly leftOut?: number;
  /** Where a program draws what it is about, where the text says so. */
  readonly from?: Generator;
}

/**
 * Names findings in the order in which the checks found them.
 * @param versionOf what stands for all that a check has read
 */
export function withIds(
  findings: readonly Finding[],
  file: string,
  versionOf: (check: string) => string,
): ReportedFinding[] {
  const counts = new Map<string, number>();
  return findings.map((finding) => {
    const ordinal = counts.get(finding.check) ?? 0;
    counts.set(finding.check, ordinal + 1);
    return { ...finding, id: findingId(file, versionOf(finding.check), finding.check, ordinal) };
  });
}

function findingId(file: string, version: string, check: string, ordinal: number): FindingId {
  return `${file}@${version}/${check}/${ordinal}` as FindingId;
}

/** For what stands for all findings of a check that are left out. */
export function idOfRest(first: FindingId): FindingId {
  return `${first.slice(0, first.lastIndexOf('/'))}/rest` as FindingId;
}

/** The file that a finding lies in, as the project names it; empty for a file that stands alone. */
export function fileOfFinding(id: FindingId): string {
  return id.slice(0, id.lastIndexOf('@'));
}
