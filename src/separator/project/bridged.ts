/** Separated sheets, bridged and mended by the engine that checks all sheets, each change proven. */
import {
  applyEdits,
  bridgeIslands,
  candidatesFor,
  check,
  type Fix,
  proveFix,
  type Report,
  type Settings,
} from '../../engine/index';
import { isRefusal } from '../../report/refusal';

export interface LookedOver {
  readonly text: string;
  /** Islands that are left. */
  readonly islands: number;
  readonly bridges: number;
  /** How many findings of each check there are, warnings and worse. */
  readonly findings: Readonly<Record<string, number>>;
}

/** What a separation may leave that is narrower than the limits: where outlines only just pass each other. */
const TOO_NARROW = ['thin-bridge', 'narrow-opening', 'small-opening', 'floating-island'];

/** Milliseconds in which fixes are sought; what is left after that is told. */
const TIME_FOR_FIXES = 30_000;

/** @param text the drawing of all layers */
export function lookedOver(text: string, settings: Settings, bridge: boolean): LookedOver {
  const report = check(text, settings);
  if (!bridge) return { text, bridges: 0, ...countsOf(report) };
  const { text: bridged, bridges } = bridgeIslands(report);
  const after = bridges > 0 ? check(bridged, settings, report) : report;
  const fixed = withFixes(after, settings);
  return { text: fixed.text, bridges, ...countsOf(fixed) };
}

/** Makes the first fix that is proven for a place that is too narrow, one after the other, as long as there is one. */
function withFixes(start: Report, settings: Settings): Report {
  const end = Date.now() + TIME_FOR_FIXES;
  const tried = new Set<string>();
  let report = start;
  for (;;) {
    const next = report.findings.find((finding) => TOO_NARROW.includes(finding.check) && !tried.has(keyOf(finding)));
    if (!next || Date.now() > end) return report;
    tried.add(keyOf(next));
    const fix = firstFix(report, next);
    if (fix) report = check(applyEdits(report.text, fix.edits), settings, report);
  }
}

/** A finding that is only accepted is not fixed. */
function firstFix(report: Report, finding: Report['findings'][number]): Fix | undefined {
  for (const candidate of candidatesFor(report, finding)) {
    const result = candidate.kind === 'accept' ? undefined : proveFix(report, candidate);
    if (result && !isRefusal(result)) return result;
  }
  return undefined;
}

function keyOf({ check: id, at }: Report['findings'][number]): string {
  return `${id} ${at?.x.toFixed(1)} ${at?.y.toFixed(1)}`;
}

function countsOf({ findings }: Report): Pick<LookedOver, 'islands' | 'findings'> {
  const counts: Record<string, number> = {};
  for (const { check: id, severity } of findings) {
    if (severity === 'error' || severity === 'warning') counts[id] = (counts[id] ?? 0) + 1;
  }
  return { islands: counts['floating-island'] ?? 0, findings: counts };
}
