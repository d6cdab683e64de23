/** Projects of several files: read once for each configuration, and checked as one stack. */
import { realpath } from 'node:fs/promises';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { type Engine, type ProjectReport, projectFiles, type Settings } from '../../engine/index';
import { Failure } from '../failure';
import { type ReadingOptions, settingsFrom } from '../options';
import type { LoadedConfig } from './find-config';
import { type Input, readPlainFile } from './read-input';

export interface LoadedProject {
  readonly settings: Settings;
  readonly report: ProjectReport;
  /** By the project's names for the files. */
  readonly inputs: ReadonlyMap<string, Input>;
}

/** What stands for one of a project's files, by the project's name for it. */
interface GivenInput {
  readonly name: string;
  readonly input: Input;
}

/** Keeps the projects of one run. */
export class ProjectReader {
  private readonly loaded = new Map<LoadedConfig, Promise<LoadedProject>>();

  private readonly inputs = new Map<LoadedConfig, Promise<ReadonlyMap<string, Input>>>();

  private readonly options: ReadingOptions;
  private readonly engine: Engine;

  constructor(options: ReadingOptions, engine: Engine) {
    this.options = options;
    this.engine = engine;
  }

  /** @param given what stands for one of its files, such as standard input */
  load(config: LoadedConfig, given?: GivenInput): Promise<LoadedProject> {
    if (given) return this.read(config, given);
    const known = this.loaded.get(config) ?? this.read(config);
    this.loaded.set(config, known);
    return known;
  }

  /** By the project's names for the files, those that are there; read once. */
  inputsOf(config: LoadedConfig): Promise<ReadonlyMap<string, Input>> {
    const known = this.inputs.get(config) ?? readInputs(config);
    this.inputs.set(config, known);
    return known;
  }

  private async read(config: LoadedConfig, given?: GivenInput): Promise<LoadedProject> {
    const inputs = given ? await readInputs(config, given) : await this.inputsOf(config);
    const settings = settingsFrom(this.options, config.config);
    const texts = new Map([...inputs].map(([name, { text }]) => [name, text]));
    return { settings, inputs, report: this.engine.checkProject(texts, settings, config.path) };
  }
}

async function readInputs(config: LoadedConfig, given?: GivenInput): Promise<ReadonlyMap<string, Input>> {
  const inputs = new Map<string, Input>();
  for (const name of projectFiles(config.config)) {
    const input = name === given?.name ? given.input : await readIfThere(config, name);
    if (input) inputs.set(name, input);
  }
  return inputs;
}

/** Whether a path leads into one of the folders, links followed. */
async function liesWithin(path: string, folders: readonly string[]): Promise<boolean> {
  const target = await realpath(path).catch(() => undefined);
  if (target === undefined) return false;
  const roots = await Promise.all(folders.map((folder) => realpath(folder)));
  return roots.some((root) => {
    const way = relative(root, target);
    return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
  });
}

/** The path of a project's file, as it is shown. */
export function pathIn({ path = '.' }: LoadedConfig, name: string): string {
  return join(dirname(path), name);
}

/** What a configuration calls a file, whether its layers name it or not; undefined where there is no configuration. */
export function nameBeside({ path }: LoadedConfig, file: string): string | undefined {
  return path === undefined
    ? undefined
    : relative(dirname(resolve(path)), resolve(file))
        .split(sep)
        .join('/');
}

/** The name that a project has for a file; undefined where its layers do not name it. */
export function nameIn(config: LoadedConfig, file: string): string | undefined {
  if (config.path === undefined) return undefined;
  return projectFiles(config.config).find((name) => relative(resolve(pathIn(config, name)), resolve(file)) === '');
}

/**
 * What cannot be read, or lies neither in the project's folder nor in the current one, is as good as missing: the
 * project's report says so at its place in the configuration.
 */
async function readIfThere(config: LoadedConfig, name: string): Promise<Input | undefined> {
  const path = pathIn(config, name);
  try {
    return (await liesWithin(path, [dirname(config.path ?? '.'), process.cwd()]))
      ? await readPlainFile(path)
      : undefined;
  } catch (error) {
    if (error instanceof Failure) return undefined;
    throw error;
  }
}
