/** From a file's name to the engine's report on it, or from a project's to those on its files. */
import { readdir, stat } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { CONFIG_NAME } from '../../config/types';
import { metaOf } from '../../engine/check/known-checks';
import {
  type ConfigProblem,
  createEngine,
  type Engine,
  layerProblems,
  type Settings,
  unusedAcceptances,
} from '../../engine/index';
import { oneLine } from '../../format/plain-text';
import type { Report } from '../../report/report';
import { EXIT_CODES, Failure, failureAt } from '../failure';
import type { Host } from '../host';
import { nameOf, type ReadingOptions, settingsFrom } from '../options';
import { ConfigFinder, type LoadedConfig } from './find-config';
import { nameBeside, nameIn, ProjectReader, pathIn } from './load-project';
import { type Input, readInput, STANDARD_INPUT } from './read-input';

export interface LoadedReport {
  /** As messages call it. */
  readonly name: string;
  readonly input: Input;
  readonly config: LoadedConfig;
  readonly settings: Settings;
  readonly report: Report;
}

/** Loads reports for one run. */
export class ReportLoader {
  private readonly finder: ConfigFinder;
  private readonly projects: ProjectReader;

  private readonly options: ReadingOptions;
  private readonly given: ReadonlyMap<string, Input>;

  private readonly engine: Engine;

  /**
   * @param given what stands for files of these names instead of what is on the disk
   * @param engine remembers what it worked out in earlier runs
   */
  constructor(options: ReadingOptions, given: ReadonlyMap<string, Input> = new Map(), engine: Engine = createEngine()) {
    this.options = options;
    this.given = given;
    this.engine = engine;

    this.finder = new ConfigFinder(options.config);
    this.projects = new ProjectReader(options, engine);
  }

  /**
   * One file, as a part of its project where it has one.
   * @throws Failure when the file or its configuration cannot be read
   */
  async file(file: string): Promise<LoadedReport> {
    const name = nameOf(file, this.options);
    const input = this.given.get(file) ?? (await readInput(file, name));
    const config = await this.finder.configFor(name);
    const part = nameIn(config, name);
    if (part !== undefined) {
      const given = file === STANDARD_INPUT ? { name: part, input } : undefined;
      const { settings, report } = await this.projects.load(config, given);
      const found = report.files.get(part);
      if (found) return { name, input, config, settings, report: found };
    }
    const settings = settingsFrom(this.options, config.config, nameBeside(config, name));
    return { name, input, config, settings, report: this.engine.check(input.text, settings, name) };
  }

  /**
   * The files that an argument stands for: itself, or those of the project that it names by its `tombolo.json` or by
   * the folder of that; of one that names no layers, the drawings beside it.
   * @throws Failure when there is no such project
   */
  async filesOf(argument: string): Promise<string[]> {
    const config = await this.configOf(argument);
    if (!config) return [argument];
    const files = [...(await this.projects.inputsOf(config)).keys()].map((name) => pathIn(config, name));
    return config.config.layers.length > 0 ? files : drawingsBeside(config.path ?? argument);
  }

  /**
   * All that the findings of a file depend on beside the settings: names and contents.
   * @throws Failure when one cannot be read
   */
  async partsOf(file: string): Promise<(string | Buffer)[]> {
    const name = nameOf(file, this.options);
    const config = await this.finder.configFor(name);
    const own = [name, config.path ?? '', config.text];
    if (nameIn(config, name) === undefined) return [...own, (await readInput(file, name)).bytes];
    const inputs = await this.projects.inputsOf(config);
    return [...own, ...[...inputs].flatMap(([part, { bytes }]) => [part, bytes])];
  }

  /** The configuration that holds for a file, whether the file is there or not. */
  configBeside(file: string): Promise<LoadedConfig> {
    return this.finder.configFor(file);
  }

  /** What the project of a configuration found amiss in its layers and acceptances. */
  async problemsOf(config: LoadedConfig): Promise<readonly ConfigProblem[]> {
    if (config.config.layers.length === 0) return [];
    const { report } = await this.projects.load(config);
    return [...layerProblems(config.text, report.faults), ...unusedAcceptances(config.text, report)];
  }

  /** The configuration that an argument is, or that stands in the folder that it is; undefined for other files. */
  async configOf(argument: string): Promise<LoadedConfig | undefined> {
    if (argument === STANDARD_INPUT) return undefined;
    if (await isFolder(argument)) {
      const file = join(argument, CONFIG_NAME);
      if (await isThere(file)) return this.finder.configAt(file);
      throw new Failure(`${argument}: is a folder without a ${CONFIG_NAME}; name the files in it`);
    }
    return extname(argument).toLowerCase() === '.json' ? this.finder.configAt(argument) : undefined;
  }
}

export async function isFolder(path: string): Promise<boolean> {
  return (await statOf(path))?.isDirectory() === true;
}

export async function isThere(path: string): Promise<boolean> {
  return (await statOf(path))?.isFile() === true;
}

/** What cannot be looked at is reported when it is read. */
function statOf(path: string): Promise<Awaited<ReturnType<typeof stat>> | undefined> {
  return stat(path).catch(() => undefined);
}

async function drawingsBeside(config: string): Promise<string[]> {
  const folder = join(config, '..');
  try {
    const names = await readdir(folder);
    const drawings = names.filter((name) => extname(name).toLowerCase() === '.svg').sort();
    if (drawings.length > 0) return drawings.map((name) => join(folder, name));
  } catch (error) {
    throw failureAt(folder, error);
  }
  throw new Failure(`${config}: names no layers, and no SVG file stands beside it`);
}

/** What could not be read was not worked on either: whoever does not see the findings must be told. */
export function warnOfUnreadable({ name, report }: LoadedReport, host: Host): void {
  if (!report.complete.some(({ check, severity }) => severity === 'error' && isOfReading(check))) return;
  host.say(`${oneLine(name)}: parts of the file could not be read; tombolo check shows them`);
  host.endWith(EXIT_CODES.findings);
}

/** What cannot be accepted because nobody knows what it hides, and is an error for that. */
function isOfReading(check: string): boolean {
  const meta = metaOf(check);
  return meta !== undefined && !meta.acceptable && meta.severity === 'error';
}

/** @throws Failure that lists the layers there are, when none is called `layer` */
export function requireLayer(name: string, { layers }: Report['stack'], layer: string | undefined): void {
  const names = layers.map(({ sheet }) => sheet.layer.name);
  if (layer === undefined || names.includes(layer)) return;
  const known = names.length > 0 ? `its layers are ${names.map((other) => `"${other}"`).join(', ')}` : 'it has none';
  throw new Failure(`${name}: no layer is called "${layer}"; ${known}`);
}
