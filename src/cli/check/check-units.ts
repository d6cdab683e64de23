/** What can be checked apart: single files, and the files of one project together. */
import { internalFailure } from '../failure';
import { changedFiles } from '../files/changed-files';
import { drawingsFor } from '../files/drawings-for';
import type { LoadedConfig } from '../files/find-config';
import { nameIn } from '../files/load-project';
import type { ReportLoader } from '../files/load-report';
import type { Host } from '../host';
import { type FindingOptions, nameOf } from '../options';

/** Files by the names they were given, in the order in which they are told of. */
export interface CheckUnit {
  readonly files: readonly string[];
  /** The configuration of the project that they are; undefined for a file by itself. */
  readonly project: LoadedConfig | undefined;
}

/** One of several shares of the work: share 2 of 5. */
export interface Shard {
  readonly share: number;
  readonly of: number;
}

export interface Naming {
  readonly loader: ReportLoader;
  /** Gets the configurations that were named. */
  readonly configs: Set<LoadedConfig>;
  readonly options: Pick<FindingOptions, 'changed'>;
}

/** Every file once, those of projects in the order of their layers. */
export async function filesNamed(named: readonly string[], naming: Naming, host: Host): Promise<string[]> {
  const { loader, configs, options } = naming;
  const files = new Set<string>();
  for (const argument of named) {
    try {
      for (const one of await drawingsFor(argument, loader)) {
        const config = await loader.configOf(one);
        if (config) configs.add(config);
        for (const file of await loader.filesOf(one)) files.add(file);
      }
    } catch (error) {
      host.fail(internalFailure(argument, error));
    }
  }
  if (!options.changed) return [...files];
  const changed = await changedFiles();
  return [...files].filter((file) => changed.has(file));
}

/** The files of a project are together where the first of them stands. */
export async function unitsOf(files: readonly string[], loader: ReportLoader, options: FindingOptions) {
  const units: { files: string[]; project: LoadedConfig | undefined }[] = [];
  const projects = new Map<LoadedConfig, string[]>();
  for (const file of files) {
    const project = await projectOf(file, loader, options);
    const together = project && projects.get(project);
    if (together) together.push(file);
    else {
      const unit = { files: [file], project };
      if (project) projects.set(project, unit.files);
      units.push(unit);
    }
  }
  return units satisfies CheckUnit[];
}

/** A configuration that cannot be read is told of when its file is checked. */
async function projectOf(
  file: string,
  loader: ReportLoader,
  options: FindingOptions,
): Promise<LoadedConfig | undefined> {
  const name = nameOf(file, options);
  const config = await loader.configBeside(name).catch(() => undefined);
  return config && nameIn(config, name) !== undefined ? config : undefined;
}

/** Each unit is in one share of however many there are, whoever asks. */
export function sharedOut<Unit extends CheckUnit>(units: readonly Unit[], shard: Shard | undefined): readonly Unit[] {
  return shard ? units.filter((_unit, i) => i % shard.of === shard.share - 1) : units;
}
