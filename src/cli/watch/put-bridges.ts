/** Puts the bridges of the plan that `tombolo.json` names into what a program has just drawn: each run makes it anew. */

import type { Engine } from '../../engine/index';
import { keepBridges, type TextEdit } from '../../engine/index';
import { oneLine } from '../../format/plain-text';
import type { GeneratorMarks } from '../../report/generator';
import type { ProgramRun } from '../../trace/run/run-program';
import type { CheckOptions } from '../check-command';
import { pathIn } from '../files/load-project';
import { ReportLoader } from '../files/load-report';
import { encodeText } from '../files/read-input';
import { writeAtomically } from '../files/write-output';
import type { Host } from '../host';
import { readPlan } from '../kept-plan';
import { drawingsOf, fromHere } from '../trace/check-run';

type Output = ProgramRun['outputs'][number];

/** @returns the run, its marks where the edited texts have them now */
export async function withPlannedBridges(
  run: ProgramRun,
  options: CheckOptions,
  host: Host,
  engine: Engine,
): Promise<ProgramRun> {
  const drawings = new Set(drawingsOf(run));
  const outputs: Output[] = [];
  for (const output of run.outputs) {
    outputs.push(drawings.has(output) ? await bridged(output, options, host, engine) : output);
  }
  return { ...run, outputs };
}

async function bridged(output: Output, options: CheckOptions, host: Host, engine: Engine): Promise<Output> {
  const name = fromHere(output.file);
  // Another one for each file: what was written into the last is a part of the project of the next.
  const loader = new ReportLoader(options, new Map(), engine);
  const { plan } = (await loader.configBeside(name)).config.bridges;
  if (plan === undefined) return output;
  const { report, input, config } = await loader.file(name);
  const kept = keepBridges(report, await readPlan(pathIn(config, plan)));
  // Of several drawings beside each other the plan is for one.
  if (typeof kept === 'string') return output;
  for (const { message } of kept.refusals) host.say(`${oneLine(name)}: ${oneLine(message)}`);
  if (kept.edits.length === 0) return output;
  await writeAtomically(output.file, encodeText(kept.text, input.encoding));
  return { ...output, marks: output.marks && shifted(output.marks, kept.edits) };
}

/** Marks of a text, for that which edits make of it: what stood in a stretch that was replaced stands at its beginning. */
export function shifted({ offsets, places }: GeneratorMarks, edits: readonly TextEdit[]): GeneratorMarks {
  const inOrder = [...edits].sort((a, b) => a.span.from - b.span.from);
  let [next, shift] = [0, 0];
  const moved = offsets.map((offset) => {
    for (; next < inOrder.length; next += 1) {
      const { span, text } = inOrder[next] as TextEdit;
      if (span.to > offset) return Math.min(offset, span.from + 1) + shift;
      shift += text.length - (span.to - span.from);
    }
    return offset + shift;
  });
  return { offsets: moved, places };
}
