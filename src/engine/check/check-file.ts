/** Text and settings to a report: the whole line through markup, drawing, sheets and checks. */
import { underWatch } from '../../geometry/base/checkpoint';
import type { Report, Settings } from '../../report/report';
import { groupShapes } from '../../sheet/layer/layers';
import { stackOfFile } from '../../stack/stack';
import { now } from '../clock';
import { effectiveConfig, measuresAlike } from './effective-config';
import { knownSheets, measureGroups, readText } from './read-sheets';
import { reportOn } from './run-checks';
import { watchOf } from './run-watch';
import { versionOf } from './version';

/**
 * Checks one file that stands alone. Any text gives a report: what cannot be read is among its findings.
 * @param text the SVG, as the artist wrote it
 * @param earlier a report on an earlier state of the text; layers that still draw the same are not measured again
 * @throws Stopped when `settings.cancelled` says so
 */
export function check(text: string, settings: Settings = {}, earlier?: Report): Report {
  const { cancelled: _, ...kept } = settings;
  return underWatch(watchOf(settings), () => checkText(text, kept, earlier));
}

function checkText(text: string, settings: Settings, earlier: Report | undefined): Report {
  const start = now();
  const config = effectiveConfig(settings);
  const known = knownSheets(earlier, earlier !== undefined && measuresAlike(effectiveConfig(earlier.settings), config));
  const read = readText(text, config, earlier?.drawing);
  const file = measureGroups(read, groupShapes(read.drawing, settings.oneLayer), config, known);
  const version = versionOf(text, settings);
  const stack = stackOfFile(file.sheets, earlier?.stack);
  const run = { settings, config, stack, version, stackVersion: version };
  return reportOn(file, run, now() - start);
}
