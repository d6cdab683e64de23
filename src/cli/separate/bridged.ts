/** Separated sheets, bridged and looked over by the engine that checks all sheets. */
import type { Config } from '../../config/types';
import { bridgeIslands, check, type Report } from '../../engine/index';
import { settingsFrom } from '../options';

export interface LookedOver {
  readonly text: string;
  /** Islands that are left. */
  readonly islands: number;
  readonly bridges: number;
  /** How many findings of each check there are, warnings and worse. */
  readonly findings: Readonly<Record<string, number>>;
}

/** @param text the drawing of all layers */
export function lookedOver(text: string, config: Config, bridge: boolean): LookedOver {
  const report = check(text, settingsFrom({}, config));
  if (!bridge) return { text, bridges: 0, ...countsOf(report) };
  const { text: bridged, bridges } = bridgeIslands(report);
  const after = bridges > 0 ? check(bridged, settingsFrom({}, config), report) : report;
  return { text: bridged, bridges, ...countsOf(after) };
}

function countsOf({ findings }: Report): Pick<LookedOver, 'islands' | 'findings'> {
  const counts: Record<string, number> = {};
  for (const { check: id, severity } of findings) {
    if (severity === 'error' || severity === 'warning') counts[id] = (counts[id] ?? 0) + 1;
  }
  return { islands: counts['floating-island'] ?? 0, findings: counts };
}
