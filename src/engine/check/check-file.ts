/** Text and settings to a report: the whole line through markup, drawing, sheets and checks. */

import type { Report, Settings } from '../../report/report';
import { groupShapes } from '../../sheet/layer/layers';
import { stackOfFile } from '../../stack/stack';
import { now } from '../clock';
import { effectiveConfig, measuresAlike } from './effective-config';
import { drawingOf, knownSheets, measureGroups } from './read-sheets';
import { reportOn } from './run-checks';

/** Milliseconds: long enough for any sheet that a person draws; a run that takes longer stops between its steps. */
export const DEFAULT_BUDGET = 20_000;

/**
 * Checks one file that stands alone. Any text gives a report: what cannot be read is among its findings.
 * @param text the SVG, as the artist wrote it
 * @param earlier a report on an earlier state of the text; layers that still draw the same are not measured again
 */
export function check(text: string, settings: Settings = {}, earlier?: Report): Report {
  const start = now();
  const late = () => now() - start > (settings.budget ?? DEFAULT_BUDGET);
  const config = effectiveConfig(settings);
  const known = knownSheets(earlier, earlier !== undefined && measuresAlike(effectiveConfig(earlier.settings), config));
  const drawing = drawingOf(text, config, earlier?.drawing);
  const file = measureGroups(drawing, groupShapes(drawing, settings.oneLayer), config, known, late);
  const run = { settings, config, stack: stackOfFile(file.sheets, earlier?.stack), late };
  return reportOn(file, run, now() - start);
}
