/** Which `tombolo.json` holds for a file, and what it says. */
import { access } from 'node:fs/promises';
import { dirname, join, relative, resolve } from 'node:path';
import { CONFIG_NAME, type Config, DEFAULT_CONFIG } from '../../config/types';
import { type ConfigProblem, readConfig } from '../../engine/index';
import { MAX_CONFIG_SIZE } from '../../text/file-size';
import { failureAt } from '../failure';
import { readPlainFile } from './read-input';

export interface LoadedConfig {
  /** As it is shown; undefined where no file was found and the defaults hold. */
  readonly path: string | undefined;
  readonly text: string;
  readonly config: Config;
  readonly problems: readonly ConfigProblem[];
}

const NO_CONFIG: LoadedConfig = { path: undefined, text: '', config: DEFAULT_CONFIG, problems: [] };

/** Finds and reads configurations for one run, each once. */
export class ConfigFinder {
  private readonly stated: string | undefined;
  private readonly loaded = new Map<string, Promise<LoadedConfig>>();

  /** @param stated the path given with `--config`, which then holds for every file */
  constructor(stated?: string) {
    this.stated = stated;
  }

  /** @throws Failure when the configuration is there but cannot be read, or a stated one is not there */
  async configFor(file: string): Promise<LoadedConfig> {
    const path = this.stated ?? (await findUpward(dirname(resolve(file))));
    return path === undefined ? NO_CONFIG : this.load(path);
  }

  /** The configuration that was stated, else the file at this path. */
  configAt(path: string): Promise<LoadedConfig> {
    return this.load(this.stated ?? path);
  }

  private load(path: string): Promise<LoadedConfig> {
    const key = resolve(path);
    const known = this.loaded.get(key) ?? loadConfig(path);
    this.loaded.set(key, known);
    return known;
  }
}

async function loadConfig(path: string): Promise<LoadedConfig> {
  const { text } = await readPlainFile(path, MAX_CONFIG_SIZE);
  return { path, text, ...readConfig(text) };
}

/** The nearest `tombolo.json` in `folder` or above it, relative to the current folder where it lies within. */
async function findUpward(folder: string): Promise<string | undefined> {
  const candidate = join(folder, CONFIG_NAME);
  if (await exists(candidate)) return shorten(candidate);
  const parent = dirname(folder);
  return parent === folder ? undefined : findUpward(parent);
}

async function exists(path: string): Promise<boolean> {
  try {
    await access(path);
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return false;
    throw failureAt(path, error);
  }
}

function shorten(path: string): string {
  const fromHere = relative(process.cwd(), path);
  return fromHere.startsWith('..') ? path : fromHere;
}
