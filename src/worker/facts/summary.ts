import { effectiveConfig } from '../../engine/check/effective-config';
import type { ConfigFile } from '../../protocol/engine-worker';
import type { Summary } from '../../protocol/index';
import type { Report } from '../../report/report';
import { cuttingTimeOf } from '../../sheet/cutting-time';

/** What the status item says of a report. */
export function summaryOf(report: Report, config: ConfigFile | undefined): Summary {
  const counts = { error: 0, warning: 0, info: 0, hint: 0 };
  for (const { severity } of report.findings) counts[severity] += 1;
  const { width, height, sizeStated } = report.drawing;
  const settled = effectiveConfig(report.settings);
  const times = report.sheets.flatMap((sheet) => cuttingTimeOf(sheet, settled) ?? []);
  return {
    width,
    height,
    sizeStated,
    counts,
    readings: [...new Set(report.sheets.map(({ layer }) => layer.reading))],
    layers: report.sheets.length,
    elapsed: report.elapsed,
    config: config?.uri,
    ...(times.length > 0 && { cutTime: times.reduce((sum, time) => sum + time, 0) }),
  };
}
