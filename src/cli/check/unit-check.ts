/** One unit checked: what becomes of each of its files, and of the configuration of a project. */

import { type CheckedFile, checkedConfig } from '../../format/checked-file';
import type { GeneratorMarks } from '../../report/generator';
import { type FailureLines, failureLines, internalFailure } from '../failure';
import type { LoadedConfig } from '../files/find-config';
import type { ReportLoader } from '../files/load-report';
import { type FindingOptions, nameOf } from '../options';
import type { CheckUnit } from './check-units';
import { checkLoaded, type FileOutcome } from './file-check';

/** Plain data: it may come from another thread, or from an earlier run. */
export interface UnitResult {
  /** By file, in the order of the unit. */
  readonly files: readonly FileResult[];
  /** The project's configuration, where something is wrong with it. */
  readonly configs: readonly CheckedFile[];
}

export type FileResult = FileOutcome | { readonly failure: FailureLines };

/** @param marks what a program left, by the names that the files have in messages */
export async function checkUnit(
  { files, project }: CheckUnit,
  loader: ReportLoader,
  options: FindingOptions,
  marks?: ReadonlyMap<string, GeneratorMarks>,
): Promise<UnitResult> {
  const results: FileResult[] = [];
  for (const file of files) {
    try {
      results.push(checkLoaded(await loader.file(file), options, marks?.get(file)));
    } catch (error) {
      results.push({ failure: failureLines(internalFailure(nameOf(file, options), error)) });
    }
  }
  return { files: results, configs: project ? await configWithProblems(project, loader) : [] };
}

export async function configWithProblems(config: LoadedConfig, loader: ReportLoader): Promise<CheckedFile[]> {
  const { path, text } = config;
  const problems = [...config.problems, ...(await loader.problemsOf(config))];
  return path === undefined || problems.length === 0 ? [] : [checkedConfig(path, text, problems)];
}
