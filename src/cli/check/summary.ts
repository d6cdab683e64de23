/** What follows from the findings for the exit code, and which are printed with `--quiet`. */
import type { CheckedFile, SeverityCounts } from '../../format/checked-file';
import { EXIT_CODES, type ExitCode } from '../failure';

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
