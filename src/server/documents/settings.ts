/** The editor's settings for the server. */
import { readSeverities, type ShownSeverities } from './shown-severities';

export interface ServerSettings {
  /** When documents are checked. */
  readonly run: 'onType' | 'onSave' | 'manual';
  /** Milliseconds of rest after a keystroke before a check. */
  readonly delay: number;
  /** How serious the findings of some checks are shown. */
  readonly severity: ShownSeverities;
}

export const DEFAULT_SETTINGS: ServerSettings = { run: 'onType', delay: 250, severity: {} };

/** Reads what the editor sent; whatever is missing or odd takes its default. */
export function readSettings(sent: unknown): ServerSettings {
  if (typeof sent !== 'object' || sent === null) return DEFAULT_SETTINGS;
  const { run, delay, severity } = sent as Record<string, unknown>;
  return {
    run: run === 'onSave' || run === 'manual' ? run : DEFAULT_SETTINGS.run,
    delay: typeof delay === 'number' && delay >= 0 ? Math.min(delay, 10_000) : DEFAULT_SETTINGS.delay,
    severity: readSeverities(severity),
  };
}
