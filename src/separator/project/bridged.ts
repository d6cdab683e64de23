/** Separated sheets, bridged and mended by the engine that checks all sheets, each change proven. */
import {
  applyEdits,
  bridgeIslands,
  candidatesFor,
  check,
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
  /**
   * Layers that are cut as two sheets in one paint, each with bridges where the other has none: the last resort where one sheet
   * has no room for bridges that hold. There is one sheet more to cut and to spray for each.
   */
  readonly twoSheets: readonly string[];
  /** How many findings of each check there are, warnings and worse. */
  readonly findings: Readonly<Record<string, number>>;
  /** Places that the sheets should not have and still do after all mends; none are told where none were asked for. */
  readonly left: readonly LeftPlace[];
}

/** A place that could not be mended. */
export interface LeftPlace {
  readonly check: string;
  readonly layer: string | undefined;
  /** mm on the sheet. */
  readonly at: { readonly x: number; readonly y: number } | undefined;
  readonly message: string;
}

/** What a separation may leave: where outlines only just pass each other, and what bridges bring. */
const MENDED: readonly string[] = [
  'thin-bridge',
  'narrow-opening',
  'small-opening',
  'floating-island',
  'short-overlap',
  'bare-gap',
];

/** What sheets should not have. */
const UNWANTED: readonly string[] = [...MENDED, 'crossed-outline'];

/**
 * So many changes are tried, for each of which the sheets are checked again. Areas are wide enough when they are drawn, so
 * that few places need any.
 */
const MOST_TRIES = 150;

/** @param text the drawing of all layers */
export function lookedOver(text: string, settings: Settings, bridge: boolean): LookedOver {
  const report = check(text, settings);
  if (!bridge) return { text, bridges: 0, twoSheets: doubledIn(report), ...countsOf(report), left: [] };
  const { text: bridged, bridges } = bridgeIslands(report);
  const after = bridges > 0 ? check(bridged, settings, report) : report;
  const fixed = withFixes(after, settings);
  return { text: fixed.text, bridges, twoSheets: doubledIn(fixed), ...countsOf(fixed) };
}

/** Names of layers that have a second sheet. */
function doubledIn({ sheets }: Report): string[] {
  return sheets.flatMap(({ layer }) => (layer.with === undefined ? [] : [layer.with]));
}

/** Makes the first fix that is proven for each place that is too narrow, one after the other, as long as there is one. */
function withFixes(start: Report, settings: Settings): Report {
  const seen = new Set<string>();
  let [report, tries] = [start, 0];
  while (tries < MOST_TRIES) {
    const next = report.findings.find((finding) => MENDED.includes(finding.check) && !seen.has(keyOf(finding)));
    if (!next) break;
    seen.add(keyOf(next));
    // A finding that is only accepted is not fixed.
    for (const candidate of candidatesFor(report, next).filter(({ kind }) => kind !== 'accept')) {
      tries += 1;
      const fix = proveFix(report, candidate);
      if (!fix || isRefusal(fix)) continue;
      report = check(applyEdits(report.text, fix.edits), settings, report);
      break;
    }
  }
  return report;
}

function keyOf({ check: id, at }: Report['findings'][number]): string {
  return `${id} ${at?.x.toFixed(1)} ${at?.y.toFixed(1)}`;
}

function countsOf({ findings }: Report): Pick<LookedOver, 'islands' | 'findings' | 'left'> {
  const counts: Record<string, number> = {};
  const left: LeftPlace[] = [];
  for (const { check: id, severity, layer, at, message } of findings) {
    if (severity !== 'error' && severity !== 'warning') continue;
    counts[id] = (counts[id] ?? 0) + 1;
    if (UNWANTED.includes(id)) left.push({ check: id, layer, at, message });
  }
  return { islands: counts['floating-island'] ?? 0, findings: counts, left };
}
