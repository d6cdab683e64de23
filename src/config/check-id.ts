/** How a check is called, in files and configurations: stable. Which checks there are, their own descriptions say. */
export type CheckId = string;

/** The code of problems in `tombolo.json`, and the name of its page. */
export const UNREADABLE_CONFIG = 'unreadable-config';

/** The most serious first. */
export const SEVERITIES = ['error', 'warning', 'info', 'hint'] as const;

export type Severity = (typeof SEVERITIES)[number];

/** 0 for what is least serious. */
export function severityRank(severity: Severity): number {
  return SEVERITIES.length - 1 - SEVERITIES.indexOf(severity);
}

/** What a configuration may name. */
export interface KnownChecks {
  readonly ids: readonly CheckId[];
  /** Those whose findings may be accepted. */
  readonly acceptable: readonly CheckId[];
}
