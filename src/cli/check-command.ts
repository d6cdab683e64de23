/** `tombolo check`: reports on each file, whatever becomes of the others. */
import { type Command, Option } from 'commander';
import { count } from '../config/values';
import type { FixesOfFinding, ReportedFinding } from '../engine/index';
import type { GeneratorMarks } from '../report/generator';
import type { Report } from '../report/report';
import { writeBaselines } from './baseline';
import { type CheckedFile, checkedConfig, checkedFile } from './checked-file';
import { coloursFor } from './colours';
import { EXIT_CODES, internalFailure } from './failure';
import type { LoadedConfig } from './files/find-config';
import { pathIn } from './files/load-project';
import { type LoadedReport, ReportLoader } from './files/load-report';
import type { Input } from './files/read-input';
import type { Format } from './format/format';
import { formatJson } from './format/json';
import { formatSarif } from './format/sarif';
import { formatText } from './format/text';
import { formatUnix } from './format/unix';
import type { Host } from './host';
import { FixVerifier } from './mend-prover';
import { addReadingOptions, nameOf, parseCount, type ReadingOptions } from './options';
import { oneLine } from './plain-text';
import { errorsOnly, exitCodeFor, summarize } from './summary';

/** What prints reports, by its name. */
export const FORMATS = {
  text: formatText,
  json: formatJson,
  sarif: formatSarif,
  unix: formatUnix,
} satisfies Record<string, Format>;

type FormatName = keyof typeof FORMATS;

export interface CheckOptions extends ReadingOptions {
  readonly format: FormatName;
  readonly maxWarnings: number;
  readonly mends: boolean;
  readonly quiet?: boolean;
  readonly writeBaseline?: boolean;
  readonly color?: boolean;
  readonly atGenerator?: boolean;
}

export function addCheckCommand(program: Command, host: Host): void {
  const command = program
    .command('check')
    .summary('report what would tear, fall out or not cut')
    .description(
      'Reports what would tear, fall out or not cut. Ends with 1 when there are errors, or more warnings ' +
        'than allowed; with 2 when something could not be read.',
    )
    .argument('<files...>', 'SVG files, a tombolo.json or its folder; - reads standard input');
  addReportOptions(addReadingOptions(command))
    .option('--write-baseline', 'let pass from now on what is found now; tombolo.json keeps it')
    .addHelpText('after', EXAMPLES)
    .action((files: string[], options: CheckOptions) => runCheck(files, options, host));
}

/** What is said of the findings, and how; the same wherever findings are reported. */
export function addReportOptions(command: Command): Command {
  return command
    .addOption(new Option('--format <name>', 'what to print').choices(Object.keys(FORMATS)).default('text'))
    .addOption(new Option('--max-warnings <number>', 'warnings to let pass').argParser(parseCount).default(0))
    .option('--quiet', 'print errors alone; the counts and the exit code still heed the rest')
    .option(
      '--no-mends',
      'prove no fixes, which is faster: json and sarif list none, text does not say where there is none',
    )
    .option('--at-generator', "sarif: put what a program draws (data-tombolo-from) at the program's lines")
    .option('--color', 'colour the text even where no terminal listens')
    .option('--no-color', 'never colour the text');
}

const EXAMPLES = `
Examples:
  tombolo check heron.svg
  tombolo check layers/*.svg --width 148mm --max-warnings 5
  tombolo check tombolo.json
  tombolo check heron.svg --format json --no-mends > report.json
  some-generator | tombolo check - --stdin-filename heron.svg`;

async function runCheck(files: readonly string[], options: CheckOptions, host: Host): Promise<void> {
  if (options.writeBaseline) return saveBaseline(new Set(files), options, host);
  const checked = await checkAll(new Set(files), options, host);
  host.print(reportText(checked, options, host));
  host.endWith(exitCodeFor(summarize(checked), options.maxWarnings));
}

/** What the format makes of what was found. */
export function reportText(checked: readonly CheckedFile[], options: CheckOptions, host: Host): string {
  return FORMATS[options.format]({
    files: options.quiet ? errorsOnly(checked) : checked,
    summary: summarize(checked),
    colours: coloursFor({ wanted: options.color, isTerminal: host.isTerminal, environment: host.environment }),
    quiet: options.quiet === true,
    atGenerator: options.atGenerator === true,
  });
}

async function saveBaseline(named: ReadonlySet<string>, options: CheckOptions, host: Host): Promise<void> {
  const loader = new ReportLoader({ ...options, withoutBaseline: true });
  const reports: LoadedReport[] = [];
  for (const file of await filesNamed(named, loader, new Set(), host)) reports.push(await loader.file(file));
  if (host.exitCode !== EXIT_CODES.failed) await writeBaselines(reports, host);
}

/** What a program left beside the files that are checked. */
export interface Traced {
  /** By the names that the files have in messages. */
  readonly marks: ReadonlyMap<string, GeneratorMarks>;
  /** What stands for files that are on no disk, by name. */
  readonly given: ReadonlyMap<string, Input>;
}

/** Checks every file that the arguments name, and the configurations that hold for them. */
export async function checkAll(
  named: ReadonlySet<string>,
  options: CheckOptions,
  host: Host,
  traced?: Traced,
): Promise<CheckedFile[]> {
  const loader = new ReportLoader(options, traced?.given);
  const configs = new Set<LoadedConfig>();
  const checked: CheckedFile[] = [];
  const whyNone = new FixVerifier(WHY_NONE_BUDGET);
  for (const file of await filesNamed(named, loader, configs, host)) {
    try {
      const loaded = await loader.file(file);
      configs.add(loaded.config);
      checked.push(checkOne(loaded, options, whyNone, host, traced?.marks.get(file)));
    } catch (error) {
      host.fail(internalFailure(nameOf(file, options), error));
    }
  }
  for (const config of configs) checked.push(...(await configWithProblems(config, loader)));
  return checked;
}

/** Every file once, those of projects in the order of their layers. */
async function filesNamed(
  named: ReadonlySet<string>,
  loader: ReportLoader,
  configs: Set<LoadedConfig>,
  host: Host,
): Promise<ReadonlySet<string>> {
  const files = new Set<string>();
  for (const argument of named) {
    try {
      const config = await loader.configOf(argument);
      if (config) configs.add(config);
      for (const file of await loader.filesOf(argument)) files.add(file);
    } catch (error) {
      host.fail(internalFailure(argument, error));
    }
  }
  return files;
}

/** Milliseconds for one file, where fixes are listed. */
const FIXES_BUDGET = 60_000;
/** Milliseconds for the whole run, where it is only said of what there is no fix for. */
const WHY_NONE_BUDGET = 2000;

interface Provers {
  readonly prover: FixVerifier;
  readonly whyNone: FixVerifier;
}

/** What the format has a place for. */
function triedFixes(
  report: Report,
  finding: ReportedFinding,
  { mends, format }: CheckOptions,
  { prover, whyNone }: Provers,
): FixesOfFinding | undefined {
  if (!mends || format === 'unix') return undefined;
  return format === 'text' ? whyNone.whyBeyondMending(report, finding) : prover.fixesFor(report, finding);
}

function checkOne(
  { name, report, config: found }: LoadedReport,
  options: CheckOptions,
  whyNone: FixVerifier,
  host: Host,
  marks: GeneratorMarks | undefined,
): CheckedFile {
  const { config } = found;
  const forPrograms = options.format !== 'text';
  const lengths = [options.width, options.height, config.width, config.height];
  const prover = new FixVerifier(FIXES_BUDGET);
  const file = checkedFile({
    path: name,
    pathOf: (file) => pathIn(found, file),
    report,
    findings: forPrograms ? report.complete : report.findings,
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
