/** The names of the checks. They are ours, and stable: files and configurations refer to them. */
export const CHECK_IDS = [
  'floating-island',
  'thin-bridge',
  'narrow-opening',
  'small-opening',
  'loose-tongue',
  'edge-opening',
  'oversize-sheet',
  'unstated-size',
  'open-outline',
  'doubled-cut',
  'crossed-outline',
  'not-cuttable',
  'frame-mismatch',
  'bare-gap',
  'short-overlap',
  'buried-opening',
  'unsafe-material',
  'unreadable-markup',
  'unreadable-path',
  'unsupported',
  'unused-acceptance',
  'unfinished',
] as const;

export type CheckId = (typeof CHECK_IDS)[number];

/** The most serious first. */
export const SEVERITIES = ['error', 'warning', 'info', 'hint'] as const;

export type Severity = (typeof SEVERITIES)[number];

/** 0 for the most serious. */
export function rankOf(severity: Severity): number {
  return SEVERITIES.indexOf(severity);
}

/** Findings about the reading of the file itself cannot be accepted: what they hide is unknown. */
export const UNACCEPTABLE: readonly CheckId[] = [
  'unreadable-markup',
  'unreadable-path',
  'unused-acceptance',
  'unfinished',
];
