import { effectiveConfig } from '../../engine/check/effective-config';
import type { ConfigFile } from '../../protocol/engine-worker';
import type { Summary } from '../../protocol/index';
import type { Report } from '../../report/report';
import { cuttingTimeOf } from '../../sheet/cutting-time';

/** The check that reports what a run had no time or memory for. */
const UNFINISHED = 'unfinished';

/** What the status item says of a report. */
export function summaryOf(report: Report, config: ConfigFile | undefined): Summary {
  const counts = { error: 0, warning: 0, info: 0, hint: 0 };
  let leftOut = 0;
  for (const finding of report.findings) {
    counts[finding.severity] += 1;
    leftOut += finding.leftOut ?? 0;
  }
  const { width, height, sizeStated } = report.drawing;
  const settled = effectiveConfig(report.settings);
  const times = report.sheets.flatMap((sheet) => cuttingTimeOf(sheet, settled) ?? []);
  return {
    width,
    height,
    sizeStated,
    ...((settled.width !== undefined || settled.height !== undefined) && { sizeInConfig: true }),
    counts,
    readings: [...new Set(report.sheets.map(({ layer }) => layer.reading))],
    layers: report.sheets.length,
    elapsed: report.elapsed,
    config: config?.uri,
    ...(leftOut > 0 && { leftOut }),
    ...(report.findings.some(({ check }) => check === UNFINISHED) && { unfinished: true }),
    ...(times.length > 0 && { cutTime: times.reduce((sum, time) => sum + time, 0) }),
  };
}
