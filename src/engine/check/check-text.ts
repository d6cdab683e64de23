/** One file that stands alone: text and settings to a report, through markup, drawing, sheets and checks. */

import { now } from '../../base/clock';
import type { Layering } from '../../config/types';
import type { Report, Settings } from '../../report/report';
import { groupShapes } from '../../sheet/layer/layers';
import { hashOfText } from '../../text/hash';
import { type LayerPlan, readFile } from './read-file';
import { beginRun, type Origin } from './run';
import { reportOn } from './run-checks';
import { RunWatch } from './run-watch';
import { settleSeams, stackFrom } from './stack-of-run';
import { versionOf } from './version';

/**
 * Checks a text. What cannot be read is among its findings.
 * @throws Stopped when `settings.cancelled` says so
 */
export function checkText(origin: Origin, text: string, settings: Settings): Report {
  const { cancelled: _, ...kept } = settings;
  const watch = new RunWatch(settings);
  return watch.over(() => {
    const start = now();
    const run = beginRun(origin, kept, watch);
    const hash = hashOfText(text);
    const file = readFile(run, '', { text, hash }, planOf(kept, run.config.layering));
    const placed = file.value.sheets.map((_sheet, ordinal) => ({ file, ordinal, name: '' }));
    const stack = stackFrom(run, placed);
    const version = versionOf(hash, kept);
    const report = reportOn(run, { file, stack, version, stackVersion: version }, now() - start);
    settleSeams(run, placed);
    return report;
  });
}

function planOf({ oneLayer = false }: Settings, layering: Layering | undefined): LayerPlan {
  return {
    key: `alone ${oneLayer} ${layering}`,
    groupsOf: (drawing) => groupShapes(drawing, { oneLayer, layering }).map((group) => ({ ...group, entry: 0 })),
  };
}
