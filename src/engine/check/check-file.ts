/** Text and settings to a report. */
import type { Report, Settings } from '../../report/report';
import { beginSession } from '../session';

/**
 * Checks one file that stands alone. Any text gives a report: what cannot be read is among its findings.
 * @param text the SVG, as the artist wrote it
 * @param earlier a report on an earlier state of the text: it leads back to all that was worked out for it, so that
 * what the texts have in common is not worked out again. Without it everything is.
 * @throws Stopped when `settings.cancelled` says so
 */
export function check(text: string, settings: Settings = {}, earlier?: Report): Report {
  return (earlier?.session ?? beginSession()).check(text, settings);
}
