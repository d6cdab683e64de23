/**
 * A code quality report for merge requests.
 * Source: GitLab Docs, "Code Quality", section "Code Quality report format".
 */
import type { Severity } from '../checks/finding';
import { fingerprintsOf } from './fingerprints';
import type { Format } from './format';
import { jsonText } from './json-text';
import { oneLine } from './plain-text';

const SEVERITIES: Readonly<Record<Severity, string>> = {
  error: 'critical',
  warning: 'major',
  info: 'info',
  hint: 'info',
};

export const formatGitlab: Format = ({ files }) =>
  jsonText(
    files.flatMap((file) => {
      const prints = fingerprintsOf(file);
      return file.findings.map(({ check, severity, message, range: { start, end } }, index) => ({
        description: oneLine(message),
        check_name: check,
        fingerprint: prints[index],
        severity: SEVERITIES[severity],
        location: { path: file.path, lines: { begin: start.line + 1, end: end.line + 1 } },
      }));
    }),
  );
