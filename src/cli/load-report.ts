/** From a file's name to the engine's report on it. */
import { check, type Settings } from '../engine';
import type { Report } from '../report';
import { EXIT_CODES } from './exit-codes';
import { Failure } from './failure';
import type { ConfigFinder, LoadedConfig } from './find-config';
import type { Host } from './host';
import { nameOf, settingsFrom, type ReadingOptions } from './options';
import { oneLine } from './plain-text';
import { readInput, type Input } from './read-input';

export interface LoadedReport {
  /** As messages call it. */
  readonly name: string;
  readonly input: Input;
  readonly config: LoadedConfig;
  readonly settings: Settings;
  readonly report: Report;
}

/** @throws Failure when the file or its configuration cannot be read */
export async function loadReport(file: string, options: ReadingOptions, finder: ConfigFinder): Promise<LoadedReport> {
  const name = nameOf(file, options);
  const input = await readInput(file, name);
  const config = await finder.configFor(name);
  const settings = settingsFrom(options, config.config);
  return { name, input, config, settings, report: check(input.text, settings) };
}

/** What could not be read was not worked on either: whoever does not see the findings must be told. */
export function warnOfUnreadable({ name, report }: LoadedReport, host: Host): void {
  const unreadable = report.complete.filter(({ check: id, severity }) => (
    severity === 'error' && (id === 'unreadable-markup' || id === 'unreadable-path')));
  if (unreadable.length === 0) return;
  host.say(`${oneLine(name)}: parts of the file could not be read; tombolo check shows them`);
  host.endWith(EXIT_CODES.findings);
}

/** @throws Failure that lists the layers there are, when none is called `layer` */
export function requireLayer({ name, report }: LoadedReport, layer: string | undefined): void {
  const layers = report.sheets.map((sheet) => sheet.layer.name);
  if (layer === undefined || layers.includes(layer)) return;
  const known = layers.length > 0 ? `its layers are ${layers.map((other) => `"${other}"`).join(', ')}` : 'it has none';
  throw new Failure(`${name}: no layer is called "${layer}"; ${known}`);
}
