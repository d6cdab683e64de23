/** `tombolo check`: reports on each file, whatever becomes of the others. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Command, Option } from 'commander';
import { CONFIG_NAME } from '../config/types';
import { count } from '../config/values';
import { type CheckedFile, summarize } from '../format/checked-file';
import type { FormatInput } from '../format/format';
import { FORMATS, type FormatName } from '../format/formats';
import { jsonText } from '../format/json-text';
import { textOfCounts, textOfFile } from '../format/text';
import { sayStale, writeBaselines } from './check/baseline';
import { checkFiles, reportsOf, type WorkOptions } from './check/check-files';
import { parseCheck, parseChecks } from './check/chosen-checks';
import { explanationOf } from './check/explain';
import { statisticsOf } from './check/statistics';
import { errorsOnly, exitCodeFor } from './check/summary';
import { coloursFor } from './colours';
import { EXIT_CODES } from './failure';
import { ConfigFinder } from './files/find-config';
import { isFolder } from './files/load-report';
import { writeAtomically } from './files/write-output';
import type { Host } from './host';
import { addReadingOptions, type FindingOptions, nameOf, parseCount, parseJobs, parseShard } from './options';
import { snippetStyleFor } from './snippets';

export interface CheckOptions extends FindingOptions, WorkOptions {
  readonly format: FormatName;
  readonly maxWarnings: number;
  readonly quiet?: boolean;
  readonly writeBaseline?: boolean;
  readonly outputFile?: string;
  readonly statistics?: boolean;
  readonly printConfig?: boolean;
  readonly explain?: string;
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
    .argument('[files...]', 'SVG files, folders, patterns, or a tombolo.json; - reads standard input', ['.']);
  addReportOptions(addReadingOptions(command))
    .option('--changed', 'only files that git holds to be changed since the last commit')
    .addOption(
      new Option('--jobs <number>', 'threads that share the files; for many files, one a core').argParser(parseJobs),
    )
    .addOption(new Option('--shard <share>', 'only one share of the files, such as 2/5').argParser(parseShard))
    .option('--cache <folder>', 'keep there what was found, and work out anew only what has changed')
    .option('--output-file <file>', 'write there instead of to standard output')
    .option('--statistics', 'also say how often each check found something')
    .option('--print-config', 'print the settings that hold for the files, and check nothing')
    .addOption(new Option('--explain <check>', 'print what a check looks for').argParser(parseCheck))
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
      '--mends',
      'also prove the fixes, which takes longer: json and sarif list them with their edits, text says where there is none',
    )
    .addOption(new Option('--only <checks>', 'tell of these checks alone').argParser(parseChecks))
    .addOption(new Option('--skip <checks>', 'do not tell of these checks').argParser(parseChecks))
    .option('--at-generator', "sarif: put what a program draws (data-tombolo-from) at the program's lines")
    .option('--color', 'colour the text even where no terminal listens')
    .option('--no-color', 'never colour the text')
    .option('--snippets', 'text: draw the place of each error and warning; a terminal gets a few of a file')
    .option('--no-snippets', 'never draw places');
}

const EXAMPLES = `
Examples:
  tombolo check heron.svg
  tombolo check layers/*.svg --width 148mm --max-warnings 5
  tombolo check                       # all that lies in this folder and below
  tombolo check 'layers/*.svg' --skip loose-tongue --format github
  tombolo check icons --cache .cache/tombolo --shard 2/5
  tombolo check heron.svg --format json --mends > report.json
  some-generator | tombolo check - --stdin-filename heron.svg`;

async function runCheck(files: readonly string[], options: CheckOptions, host: Host): Promise<void> {
  if (options.explain !== undefined) return host.print(await explanationOf(options.explain));
  if (options.printConfig) return host.print(await configTexts(files, options));
  if (options.writeBaseline) return saveBaseline(files, options, host);
  const { checked, baseline } = await toldAsDone(files, options, host);
  const summary = summarize(checked);
  if (options.statistics) host.print(statisticsOf(options.quiet ? errorsOnly(checked) : checked));
  sayStale(baseline, host);
  if (options.quiet && summary.error === 0 && summary.warning > options.maxWarnings) {
    const warnings = count(summary.warning, 'warning');
    host.say(`tombolo: no errors, but ${warnings}; --max-warnings ${options.maxWarnings} are let pass`);
  }
  host.endWith(exitCodeFor(summary, options.maxWarnings));
}

/** Text on standard output comes file by file, each when it is done; all else is made of the whole. */
async function toldAsDone(files: readonly string[], options: CheckOptions, host: Host) {
  const comesByFile = options.format === 'text' && options.outputFile === undefined;
  let printed = false;
  const tell = (file: CheckedFile) => {
    const [shown] = options.quiet ? errorsOnly([file]) : [file];
    const text = shown ? textOfFile(shown, textStyle(options, host)) : '';
    printed ||= text !== '';
    host.print(text);
  };
  const { files: checked, baseline } = await checkFiles(files, options, host, comesByFile ? { tell } : {});
  if (comesByFile) {
    if (printed) host.print(textOfCounts(inputFor(checked, options, host, baseline.passed)));
  } else {
    const text = reportText(checked, options, host, baseline.passed);
    if (options.outputFile === undefined) host.print(text);
    else await writeAtomically(options.outputFile, text);
  }
  return { checked, baseline };
}

/**
 * What the format makes of what was found.
 * @param passed how many findings the baseline let pass
 */
export function reportText(checked: readonly CheckedFile[], options: CheckOptions, host: Host, passed = 0): string {
  return FORMATS[options.format](inputFor(checked, options, host, passed));
}

function inputFor(checked: readonly CheckedFile[], options: CheckOptions, host: Host, passed: number): FormatInput {
  const { quiet = false, atGenerator = false } = options;
  return {
    ...textStyle(options, host),
    files: quiet ? errorsOnly(checked) : checked,
    summary: summarize(checked),
    failures: host.failures,
    passed,
    folder: pathToFileURL(`${process.cwd()}/`).href,
    atGenerator,
  };
}

function textStyle({ color, outputFile, quiet = false }: CheckOptions, host: Host) {
  const where = { isTerminal: host.isTerminal && outputFile === undefined, environment: host.environment };
  return {
    quiet,
    colours: coloursFor({ wanted: color, ...where }),
    snippetStyle: snippetStyleFor(where, process.platform),
  };
}

async function saveBaseline(files: readonly string[], options: CheckOptions, host: Host): Promise<void> {
  const reports = await reportsOf(files, options, host);
  if (host.exitCode !== EXIT_CODES.failed) await writeBaselines(reports, host);
}

/** The configuration that holds for each file, with all that it leaves to the defaults. */
async function configTexts(files: readonly string[], options: CheckOptions): Promise<string> {
  const finder = new ConfigFinder(options.config);
  const found = await Promise.all(
    files.map(async (file) => {
      const beside = (await isFolder(file)) ? join(file, CONFIG_NAME) : file;
      const { path = null, config } = await finder.configFor(beside);
      return [nameOf(file, options), { from: path, config }] as const;
    }),
  );
  return jsonText(Object.fromEntries(found));
}
