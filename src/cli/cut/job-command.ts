/** `tombolo job`: the page that hangs at the wall, as HTML and PDF. */
import { basename } from 'node:path';
import type { Command } from 'commander';
import { cutStack, isCutFile, jobFiles } from '../../engine/index';
import { oneLine } from '../../format/plain-text';
import { ReportLoader, warnOfUnreadable } from '../files/load-report';
import { loadStack } from '../files/load-stack';
import { writeFolder } from '../files/write-folder';
import type { Host } from '../host';
import { addReadingOptions, type ReadingOptions } from '../options';

interface JobOptions extends ReadingOptions {
  readonly out: string;
}

export function addJobCommand(program: Command, host: Host): void {
  const command = program
    .command('job')
    .summary('write the page that hangs at the wall')
    .description(
      'Writes one page with the picture, the layers in order with their paint, area, cut length and time, coats and waits, ' +
        'where loose pieces lie, what is accepted, and cautions: job.html and job.pdf.',
    )
    .argument('<file>', 'an SVG file, or a tombolo.json or its folder; - reads standard input')
    .requiredOption('--out <folder>', 'where the page goes');
  addReadingOptions(command)
    .addHelpText('after', '\nExamples:\n  tombolo job trail --out cut')
    .action((file: string, options: JobOptions) => runJob(file, options, host));
}

async function runJob(file: string, options: JobOptions, host: Host): Promise<void> {
  const stack = await loadStack(file, new ReportLoader(options), 'tell');
  for (const loaded of stack.files) warnOfUnreadable(loaded, host);
  const { report, files } = stack;
  const texts = files.map(({ input }) => input.text);
  const pages = jobFiles(report, cutStack(report), basename(stack.name).replace(/\.[a-z]+$/i, ''), texts);
  await writeFolder(options.out, new Map(Object.entries(pages)), isCutFile);
  host.say(`job.html and job.pdf in ${oneLine(options.out)}`);
}
