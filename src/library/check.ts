/** From texts to reports. */

import { check as checkText } from '../engine/check/check-file';
import { checkProject as checkTexts } from '../engine/check/check-project';
import { projectFiles } from '../engine/check/project-layers';
import type { ProjectReport as EngineProject, LayerFault, Settings } from '../report/report';
import type { Config } from './config';
import {
  anyLength,
  callback,
  type Length,
  positiveLength,
  type Reader,
  readOptions,
  type Signal,
  StencilError,
  signalOption,
  svgText,
  throwIfAborted,
  truth,
  whileWanted,
  words,
} from './failure';
import { engineReport, StencilReport } from './report';

/**
 * How a drawing is read. Lengths are numbers of millimetres or texts with their unit.
 *
 * @example
 * ```js
 * check(svgText, { width: '148mm', kerf: 0.1, file: 'heron.svg' });
 * ```
 */
export interface CheckOptions {
  /** How wide the sheet is, whatever the drawing says. mm, or a text with its unit. */
  readonly width?: Length;
  /** How high the sheet is. mm, or a text with its unit. */
  readonly height?: Length;
  /** What the cutter takes away along its path; the cut files are then taken as not compensated. mm, or a text with its unit. */
  readonly kerf?: Length;
  /** The settings of the project, from {@link readConfig}; the defaults where there are none. */
  readonly config?: Config;
  /** Whether the whole file is one layer. */
  readonly oneLayer?: boolean;
  /** How reports call the file, and `tombolo.json` in its baseline and acceptances. */
  readonly file?: string;
  /**
   * Whether a drawing is worked on to the end, however much it asks for. Else what takes far more work than its length
   * suggests, or more than two minutes, is left out, and a finding says so.
   */
  readonly noLimit?: boolean;
  /** Ends the work where nobody waits for it any more. */
  readonly signal?: Signal;
}

const configOption: Reader<Config> = (value, name) => {
  if (typeof value === 'object' && value !== null && 'limits' in value && 'layers' in value && 'checks' in value) {
    return value as Config;
  }
  throw new StencilError(`${name} is what readConfig() gives, or DEFAULT_CONFIG with changes.`);
};

const CHECK_READERS = {
  width: positiveLength,
  height: positiveLength,
  kerf: anyLength,
  config: configOption,
  oneLayer: truth,
  file: words,
  noLimit: truth,
  signal: signalOption,
};

/** @throws StencilError where an option is wrong or unknown */
export function settingsOf(options: unknown, asker: string): { settings: Settings; signal: Signal | undefined } {
  const read = readOptions<CheckOptions>(options, asker, CHECK_READERS) as Settings & CheckOptions;
  const { signal, noLimit, ...settings } = read;
  return { settings: { ...settings, ...(noLimit && { budget: Infinity }) }, signal };
}

/**
 * Checks one drawing that stands alone. Whatever is wrong with the text is among the findings.
 *
 * @param svg the text of the file
 * @param options lengths in mm or with their unit
 * @param earlier the report on an earlier state of the same drawing: only what an edit has changed is worked out again
 * @returns the findings, with places in mm on the sheet and in the text
 * @throws StencilError where an option is wrong; the signal's reason where it ends the work
 * @example
 * ```js
 * import { check } from 'tombolo-stencil';
 *
 * const report = check(svgText, { width: '148mm' });
 * for (const { severity, message } of report.findings) console.log(severity, message);
 * ```
 */
export function check(svg: string, options?: CheckOptions, earlier?: StencilReport): StencilReport {
  const text = svgText(svg, 'check()');
  const { settings, signal } = settingsOf(options, 'check()');
  const before = earlier && engineReport(earlier, 'check()');
  const report = whileWanted(signal, () => checkText(text, settings, before));
  return new StencilReport(report, settings.file ?? '');
}

/**
 * What a check found in the files of a project, each as a part of the whole stack. Plain data, as {@link StencilReport}.
 *
 * @example
 * ```js
 * const { files, missing } = checkProject(texts, { config });
 * for (const [name, { findings }] of Object.entries(files)) console.log(name, findings.length); // how many
 * ```
 */
export interface ProjectReport {
  /** By name, in the order of `layers`. */
  readonly files: Readonly<Record<string, StencilReport>>;
  /** Files that the settings name and that were not given. */
  readonly missing: readonly string[];
  /** Entries of `layers` that name nothing that can be cut. */
  readonly faults: readonly LayerFault[];
}

/**
 * Texts by the names that `layers` gives their files.
 *
 * @example
 * ```js
 * const texts = { 'sky.svg': sky, 'heron.svg': heron }; // or a Map
 * ```
 */
export type Texts = Readonly<Record<string, string>> | ReadonlyMap<string, string>;

/**
 * Checks the files that the settings name in `layers`, as one stack of sheets.
 *
 * @param texts the files' texts, by name; others are not looked at
 * @param options lengths in mm or with their unit; `config` names the layers
 * @throws StencilError where an option is wrong or names no layers; the signal's reason where it ends the work
 * @example
 * ```js
 * import { checkProject, readConfig } from 'tombolo-stencil';
 *
 * const config = readConfig({ size: { width: '148mm' }, layers: [{ from: 'sky.svg' }, { from: 'heron.svg' }] });
 * const { files } = checkProject({ 'sky.svg': sky, 'heron.svg': heron }, { config });
 * ```
 */
export function checkProject(texts: Texts, options: CheckOptions): ProjectReport {
  const { settings, signal } = settingsOf(options, 'checkProject()');
  const files = textsOf(texts, settings, 'checkProject()');
  return projectReport(whileWanted(signal, () => checkTexts(files, settings)));
}

export function projectReport({ files, missing, faults }: EngineProject): ProjectReport {
  const reports = [...files].map(([name, report]) => [name, new StencilReport(report, name)] as const);
  return { files: Object.fromEntries(reports), missing, faults };
}

export function textsOf(texts: Texts, { config }: Settings, asker: string): Map<string, string> {
  if (!config || projectFiles(config).length === 0) {
    throw new StencilError(`${asker} needs a config whose "layers" name the files.`);
  }
  if (typeof texts !== 'object' || texts === null) throw new StencilError(`${asker} takes the texts by their names.`);
  const entries = texts instanceof Map ? [...texts] : Object.entries(texts);
  return new Map(entries.map(([name, text]) => [String(name), svgText(text, asker)]));
}

/**
 * How {@link checkEach} tells how far it is.
 *
 * @example
 * ```js
 * const progress = (done, file) => console.error(`${done} files done, last ${file}`);
 * ```
 */
export interface EachOptions extends Omit<CheckOptions, 'file'> {
  /** Is told how many files are done, and the name of the last. */
  readonly progress?: (done: number, file: string) => void;
}

/**
 * Checks many drawings, each by itself, and gives each report as soon as it is there. Between two files the thread is free: a
 * signal ends the work there, and pages stay alive.
 *
 * @param texts names and texts, as a list, a Map or anything that gives them one by one
 * @param options lengths in mm or with their unit
 * @throws StencilError where an option is wrong; the signal's reason where it ends the work
 * @example
 * ```js
 * import { checkEach } from 'tombolo-stencil';
 *
 * for await (const { path, counts } of checkEach(texts, { width: '60mm', signal: AbortSignal.timeout(5000) })) {
 *   console.log(path, counts.error);
 * }
 * ```
 */
export async function* checkEach(
  texts: Iterable<readonly [string, string]> | AsyncIterable<readonly [string, string]>,
  options: EachOptions = {},
): AsyncGenerator<StencilReport, void, undefined> {
  const { progress, ...rest } = options;
  if (progress !== undefined) callback()(progress, 'progress');
  let done = 0;
  for await (const [file, text] of texts) {
    throwIfAborted(rest.signal);
    const report = check(text, { ...rest, file });
    done += 1;
    progress?.(done, file);
    yield report;
    await nextTurn();
  }
}

/** Lets timers and messages have their turn. */
function nextTurn(): Promise<void> {
  const { setTimeout } = globalThis as unknown as { setTimeout(call: () => void): void };
  return new Promise((settle) => setTimeout(settle));
}
