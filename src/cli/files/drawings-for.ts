/** From what was named on the command line to drawings and projects: folders are entered, patterns are followed. */
import { readdir, stat } from 'node:fs/promises';
import { dirname, extname, join, relative } from 'node:path';
import { glob, isDynamicPattern } from 'tinyglobby';
import { CONFIG_NAME } from '../../config/types';
import { isPicture } from '../../engine/index';
import { Failure, failureAt } from '../failure';
import type { LoadedConfig } from './find-config';
import type { ReportLoader } from './load-report';
import { readPlainFile, STANDARD_INPUT } from './read-input';

/** Never entered: what other programs keep. */
const ELSEWHERE = ['**/node_modules/**', '**/.*/**'];

/**
 * What `ReportLoader.filesOf` takes. A folder stands for its project, else for all drawings and projects in it and below,
 * but for what its `tombolo.json` ignores and for pictures that were made of stencils; a pattern for what it matches.
 * @throws Failure where there is nothing of the kind
 */
export async function drawingsFor(argument: string, loader: ReportLoader): Promise<string[]> {
  if (argument === STANDARD_INPUT) return [argument];
  const kind = await kindOf(argument);
  if (kind === 'folder') return drawingsBelow(argument, loader);
  if (kind === 'other' || !isDynamicPattern(argument)) return [argument];
  const found = await glob(argument.replace(/\\/g, '/'), { ignore: ELSEWHERE, expandDirectories: false });
  if (found.length === 0) throw new Failure(`${argument}: no file matches`);
  return found.sort();
}

async function drawingsBelow(folder: string, loader: ReportLoader): Promise<string[]> {
  const own = (await readNames(folder)).includes(CONFIG_NAME) ? await loader.configOf(folder) : undefined;
  if (own && own.config.layers.length > 0) return [folder];
  const found = await glob(['**/*.svg', '**/*.SVG', `**/${CONFIG_NAME}`], { cwd: folder, ignore: ELSEWHERE });
  const names = found.map((name) => join(folder, name)).sort();
  const configs = await configsAmong(names, loader);
  const around = own ?? (await loader.configBeside(join(folder, 'any.svg')));
  const ignored = await ignoredBy([around, ...configs.values()]);
  const there = names.filter((file) => !ignored.has(relative('.', file)));
  const projects = there.filter((file) => (configs.get(file)?.config.layers.length ?? 0) > 0);
  const drawings: string[] = [];
  for (const file of there) {
    if (!file.endsWith(CONFIG_NAME) && !(await isMadePicture(file))) drawings.push(file);
  }
  if (projects.length + drawings.length === 0) throw new Failure(`${folder}: is a folder without SVG files`);
  return [...projects, ...drawings];
}

async function configsAmong(files: readonly string[], loader: ReportLoader): Promise<Map<string, LoadedConfig>> {
  const configs = new Map<string, LoadedConfig>();
  for (const file of files) {
    const config = file.endsWith(CONFIG_NAME) ? await loader.configOf(file) : undefined;
    if (config) configs.set(file, config);
  }
  return configs;
}

/** Each configuration speaks of its own folder and what is below. */
async function ignoredBy(configs: readonly LoadedConfig[]): Promise<ReadonlySet<string>> {
  const ignored = new Set<string>();
  for (const { path, config } of configs) {
    if (path === undefined || config.ignore.length === 0) continue;
    const found = await glob([...config.ignore], { cwd: dirname(path), ignore: ELSEWHERE });
    for (const name of found) ignored.add(relative('.', join(dirname(path), name)));
  }
  return ignored;
}

/** What cannot be read is no picture: it is told when it is checked. */
async function isMadePicture(file: string): Promise<boolean> {
  try {
    return isPicture((await readPlainFile(file)).text);
  } catch {
    return false;
  }
}

async function kindOf(path: string): Promise<'folder' | 'other' | undefined> {
  try {
    return (await stat(path)).isDirectory() ? 'folder' : 'other';
  } catch {
    return extname(path).toLowerCase() === '.json' ? 'other' : undefined;
  }
}

async function readNames(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    throw failureAt(folder, error);
  }
}
