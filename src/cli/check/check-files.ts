/** Files to findings, each file whatever becomes of the others. */
import { count } from '../../config/values';
import type { Engine, FixesOfFinding, ReportedFinding } from '../../engine/index';
import type { GeneratorMarks } from '../../report/generator';
import type { Report } from '../../report/report';
import { type CheckedFile, checkedConfig, checkedFile } from '../checked-file';
import { internalFailure } from '../failure';
import { changedFiles } from '../files/changed-files';
import { drawingsFor } from '../files/drawings-for';
import type { LoadedConfig } from '../files/find-config';
import { pathIn } from '../files/load-project';
import { type LoadedReport, ReportLoader } from '../files/load-report';
import type { Input } from '../files/read-input';
import type { Host } from '../host';
import { type FindingOptions, nameOf } from '../options';
import { oneLine } from '../plain-text';
import { type BaselineUse, baselineUse } from './baseline';
import { isChosen } from './chosen-checks';
import { FixVerifier } from './mend-prover';

/** Milliseconds for one file, where fixes are listed. */
const FIXES_BUDGET = 60_000;
/** Milliseconds for the whole run, where it is only said of what there is no fix for. */
const WHY_NONE_BUDGET = 2000;

/** Formats that have a place for fixes. */
const WITH_FIXES: ReadonlySet<string> = new Set(['json', 'sarif']);

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
}

/** What goes wrong with one file is said by `host`, and the others are checked. */
export async function checkFiles(
  named: readonly string[],
  options: FindingOptions,
  host: Host,
  { marks, given, engine }: Known = {},
): Promise<CheckedRun> {
  const loader = new ReportLoader(options, given, engine);
  const configs = new Set<LoadedConfig>();
  const checked: CheckedFile[] = [];
  const reports: LoadedReport[] = [];
  const whyNone = new FixVerifier(WHY_NONE_BUDGET);
  for (const file of await filesNamed(named, { loader, configs, options }, host)) {
    try {
      const loaded = await loader.file(file);
      configs.add(loaded.config);
      checked.push(checkOne(loaded, options, whyNone, host, marks?.get(file)));
      reports.push(loaded);
    } catch (error) {
      host.fail(internalFailure(nameOf(file, options), error));
    }
  }
  for (const config of configs) checked.push(...(await configWithProblems(config, loader)));
  return { files: checked, baseline: baselineUse(reports) };
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

interface Naming {
  readonly loader: ReportLoader;
  /** Gets the configurations that were named. */
  readonly configs: Set<LoadedConfig>;
  readonly options: FindingOptions;
}

/** Every file once, those of projects in the order of their layers. */
async function filesNamed(named: readonly string[], naming: Naming, host: Host): Promise<string[]> {
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

function triedFixes(
  report: Report,
  finding: ReportedFinding,
  { mends, format }: FindingOptions,
  { prover, whyNone }: { readonly prover: FixVerifier; readonly whyNone: FixVerifier },
): FixesOfFinding | undefined {
  if (!mends) return undefined;
  if (format === 'text') return whyNone.whyBeyondMending(report, finding);
  return WITH_FIXES.has(format) ? prover.fixesFor(report, finding) : undefined;
}

function checkOne(
  { name, report, config: found }: LoadedReport,
  options: FindingOptions,
  whyNone: FixVerifier,
  host: Host,
  marks: GeneratorMarks | undefined,
): CheckedFile {
  const { config } = found;
  const lengths = [options.width, options.height, config.width, config.height];
  const prover = new FixVerifier(FIXES_BUDGET);
  const chosen = (findings: readonly ReportedFinding[]) => findings.filter(({ check }) => isChosen(check, options));
  const file = checkedFile({
    path: name,
    pathOf: (file) => pathIn(found, file),
    report,
    findings: chosen(options.format === 'text' ? report.findings : report.complete),
    counted: chosen(report.complete),
    sizeStated: report.drawing.sizeStated || lengths.some((length) => length !== undefined),
    fixesFor: (finding) => triedFixes(report, finding, options, { prover, whyNone }),
    marks,
  });
  if (prover.leftOut > 0) {
    host.say(`${oneLine(name)}: the time for proving fixes was over; ${count(prover.leftOut, 'finding')} are without`);
  }
  return file;
}

async function configWithProblems(config: LoadedConfig, loader: ReportLoader): Promise<CheckedFile[]> {
  const { path, text } = config;
  const problems = [...config.problems, ...(await loader.problemsOf(config))];
  return path === undefined || problems.length === 0 ? [] : [checkedConfig(path, text, problems)];
}
