/** The one stack that an argument of the command line stands for, with the reports of all its files. */
import type { Config } from '../../config/types';
import { effectiveConfig } from '../../engine/check/effective-config';
import type { Report } from '../../report/report';
import { Failure } from '../failure';
import type { LoadedReport, ReportLoader } from './load-report';

export interface LoadedStack {
  /** As messages call it. */
  readonly name: string;
  readonly config: Config;
  /** Of one of its files; it knows the whole stack. */
  readonly report: Report;
  readonly files: readonly LoadedReport[];
}

/**
 * @param doing what is to be done with it, for messages: "cut"
 * @throws Failure where the argument is no one stack, or nothing that has a size
 */
export async function loadStack(argument: string, loader: ReportLoader, doing: string): Promise<LoadedStack> {
  const [first, ...others] = await loader.filesOf(argument);
  if (first === undefined)
    throw new Failure(`${argument}: names no file that is there, so that there is nothing to ${doing}`);
  const loaded = await loader.file(first);
  if (others.length > 0 && !loaded.report.project) {
    throw new Failure(`${argument}: names no layers, so that it is no one stack; name one of its files`);
  }
  const files = [loaded, ...(await Promise.all(others.map((each) => loader.file(each))))];
  const { width, height } = loaded.report.drawing;
  if (!(width > 0 && height > 0))
    throw new Failure(`${loaded.name}: has no size, so that there is nothing to ${doing}`);
  return { name: argument, config: effectiveConfig(loaded.settings), report: loaded.report, files };
}
