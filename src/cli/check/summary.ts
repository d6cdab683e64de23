/** How many findings of each severity, and what follows for the exit code. */
import type { CheckedFile, SeverityCounts } from '../checked-file';
import { EXIT_CODES, type ExitCode } from '../failure';

export function summarize(files: readonly CheckedFile[]): SeverityCounts {
  const sum = (severity: keyof SeverityCounts) => files.reduce((total, { counts }) => total + counts[severity], 0);
  return { error: sum('error'), warning: sum('warning'), info: sum('info'), hint: sum('hint') };
}

/** @param maxWarnings how many warnings are let pass; errors never are */
export function exitCodeFor(summary: SeverityCounts, maxWarnings: number): ExitCode {
  return summary.error > 0 || summary.warning > maxWarnings ? EXIT_CODES.findings : EXIT_CODES.clean;
}

/** The same files with their errors alone. */
export function errorsOnly(files: readonly CheckedFile[]): CheckedFile[] {
  return files.map((file) => ({
    ...file,
    findings: file.findings.filter((finding) => finding.severity === 'error'),
  }));
}
