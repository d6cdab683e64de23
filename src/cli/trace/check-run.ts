/** Checks what a traced program has written and printed. */
import { extname, relative } from 'node:path';
import type { Engine } from '../../engine/index';
import type { CheckedFile } from '../../format/checked-file';
import type { GeneratorMarks } from '../../report/generator';
import type { ProgramRun } from '../../trace/run/run-program';
import { checkFiles } from '../check/check-files';
import type { CheckOptions } from '../check-command';
import { decodeText, type Input } from '../files/read-input';
import type { Host } from '../host';
import { GeneratorSources } from './generator-sources';

export interface CheckedRun {
  readonly checked: readonly CheckedFile[];
  /** How many were written and printed. */
  readonly drawings: number;
}

/** What standard output is called in messages. */
const PRINTED = '<stdout>';

/** @param engine remembers earlier runs of the program */
export async function checkRun(
  run: ProgramRun,
  options: CheckOptions,
  host: Host,
  engine?: Engine,
): Promise<CheckedRun> {
  const marks = new Map<string, GeneratorMarks>();
  const given = new Map<string, Input>();
  const files = drawingsOf(run).map((output) => ({ ...output, name: fromHere(output.file) }));
  for (const { name, marks: own } of files) if (own) marks.set(name, own);
  if (isDrawing(run.printed.bytes)) {
    given.set(PRINTED, decodeText(run.printed.bytes));
    if (run.printed.marks) marks.set(PRINTED, run.printed.marks);
  }
  const named = new Set([...files.map(({ name }) => name), ...given.keys()]);
  const { files: checked } = await checkFiles([...named], options, host, {
    marks,
    given,
    ...(engine && { engine }),
  });
  const sources = new GeneratorSources();
  return { checked: await Promise.all(checked.map((file) => sources.widened(file))), drawings: named.size };
}

/** The SVG files that a run has written. */
export function drawingsOf({ outputs }: ProgramRun): ProgramRun['outputs'] {
  return outputs.filter(({ file }) => extname(file).toLowerCase() === '.svg');
}

/** Whether what was printed is an SVG document: nothing but what may stand before its root comes first. */
export function isDrawing(bytes: Buffer): boolean {
  const start = bytes.toString('utf8', 0, 4000);
  return /^\ufeff?\s*(?:<\?.*?\?>\s*|<!--.*?-->\s*|<!DOCTYPE[^>[]*(?:\[.*?\]\s*)?>\s*)*<(?:[\w.-]+:)?svg[\s>/]/s.test(
    start,
  );
}

/** A file's name in messages. */
export function fromHere(file: string): string {
  const way = relative(process.cwd(), file);
  return way.startsWith('..') ? file : way;
}
