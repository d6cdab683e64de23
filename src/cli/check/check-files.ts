/** Files to findings, each file whatever becomes of the others. */
import type { Engine } from '../../engine/index';
import type { CheckedFile } from '../../format/checked-file';
import type { GeneratorMarks } from '../../report/generator';
import type { LoadedConfig } from '../files/find-config';
import { type LoadedReport, ReportLoader } from '../files/load-report';
import type { Input } from '../files/read-input';
import type { Host } from '../host';
import type { FindingOptions } from '../options';
import { snippetsFor } from '../snippets';
import { type BaselineUse, baselineUse } from './baseline';
import { checkInThreads, threadsFor } from './check-threads';
import { type CheckUnit, filesNamed, type Shard, sharedOut, unitsOf } from './check-units';
import { ReportCache } from './report-cache';
import { ToldInOrder } from './told-in-order';
import { checkUnit, configWithProblems, type UnitResult } from './unit-check';

export interface CheckedRun {
  readonly files: readonly CheckedFile[];
  readonly baseline: BaselineUse;
}

/** What is known beside the files that are checked. */
export interface Known {
  /** What a program left, by the names that the files have in messages. */
  readonly marks?: ReadonlyMap<string, GeneratorMarks>;
  /** What stands for files that are on no disk, by name. */
  readonly given?: ReadonlyMap<string, Input>;
  /** Remembers earlier runs. */
  readonly engine?: Engine;
  /** Is given each file as soon as those before it are done. */
  readonly tell?: (file: CheckedFile) => void;
}

/** How the work is shared out. */
export interface WorkOptions {
  /** How many threads; as many as suit where it is not said. */
  readonly jobs?: number;
  readonly shard?: Shard;
  /** The folder that keeps what was found, by content and settings. */
  readonly cache?: string;
}

/** What goes wrong with one file is said by `host`, and the others are checked. */
export async function checkFiles(
  named: readonly string[],
  asked: FindingOptions & WorkOptions,
  host: Host,
  known: Known = {},
): Promise<CheckedRun> {
  const options = { ...asked, drawnPlaces: drawnPlaces(asked, host, known) };
  const loader = new ReportLoader(options, known.given, known.engine);
  const configs = new Set<LoadedConfig>();
  const files = await filesNamed(named, { loader, configs, options }, host);
  const all = await unitsOf(files, loader, options);
  const units = sharedOut(all, options.shard);
  const mine = new Set(units.flatMap((unit) => unit.files));
  const { tell = () => undefined } = known;
  const told = new ToldInOrder(
    files.filter((file) => mine.has(file)),
    host,
    ({ checked }) => tell(checked),
  );
  const results = await resultsOf(units, loader, options, known, (unit, result) => told.take(unit, result));
  const { outcomes } = told;
  for (const { name } of outcomes) configs.add(await loader.configBeside(name));
  const projects = new Set(all.map(({ project }) => project));
  const ofConfigs = results.flatMap((result) => result.configs);
  for (const config of configs)
    if (!projects.has(config)) ofConfigs.push(...(await configWithProblems(config, loader)));
  ofConfigs.forEach(tell);
  return { files: [...outcomes.map(({ checked }) => checked), ...ofConfigs], baseline: baselineUse(outcomes, configs) };
}

/** Places are drawn in text alone, and unasked where a terminal is told file by file. */
function drawnPlaces(
  { format, snippets }: FindingOptions,
  { isTerminal, environment, columns }: Host,
  { tell }: Known,
) {
  const where = { isTerminal: isTerminal && tell !== undefined, environment };
  return format === 'text' ? snippetsFor(snippets, where, columns) : 0;
}

/** Is told of each unit when it is done. */
type Done = (unit: CheckUnit, result: UnitResult) => void;

/** What is known from before is not worked out again; the rest is shared by threads where there is much of it. */
async function resultsOf(
  units: readonly CheckUnit[],
  loader: ReportLoader,
  options: FindingOptions & WorkOptions,
  known: Known,
  done: Done,
): Promise<readonly UnitResult[]> {
  const cache = options.cache === undefined ? undefined : await ReportCache.open(options.cache, options);
  const kept = await Promise.all(units.map((unit) => cache?.find(unit, loader)));
  units.forEach((unit, i) => {
    const result = kept[i]?.result;
    if (result) done(unit, result);
  });
  const left = units.filter((_unit, i) => kept[i]?.result === undefined);
  const fresh = await checkAll(left, loader, options, known, done);
  const keys = new Map(units.map((unit, i) => [unit, kept[i]?.key]));
  const byUnit = new Map(left.map((unit, i) => [unit, fresh[i]]));
  await Promise.all([...byUnit].map(([unit, result]) => result && cache?.keep(keys.get(unit), result)));
  return units.map((unit, i) => kept[i]?.result ?? byUnit.get(unit)).filter((result) => result !== undefined);
}

async function checkAll(
  units: readonly CheckUnit[],
  loader: ReportLoader,
  options: FindingOptions & WorkOptions,
  known: Known,
  done: Done,
): Promise<UnitResult[]> {
  const isApart = known.given === undefined && known.marks === undefined && known.engine === undefined;
  const threads = isApart ? threadsFor(units, options.jobs) : 1;
  if (threads > 1) return checkInThreads(units, options, threads, done);
  const results: UnitResult[] = [];
  for (const unit of units) {
    const result = await checkUnit(unit, loader, options, known.marks);
    done(unit, result);
    results.push(result);
  }
  return results;
}

/** What `checkFiles` would list, as reports: all that is found, whatever the baseline lets pass. */
export async function reportsOf(
  named: readonly string[],
  options: FindingOptions,
  host: Host,
): Promise<readonly LoadedReport[]> {
  const loader = new ReportLoader({ ...options, withoutBaseline: true });
  const reports: LoadedReport[] = [];
  for (const file of await filesNamed(named, { loader, configs: new Set(), options }, host)) {
    reports.push(await loader.file(file));
  }
  return reports;
}
