/** Leaves what a run says of its drawings to an editor that follows it, in a file outside of the project. */
import { realpath, rm } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { MarkedDrawing, ProgramMarks } from '../../protocol/programs';
import { hashOfText } from '../../text/hash';
import type { ProgramRun } from '../../trace/run/run-program';
import { readInput } from '../files/read-input';
import { writeAtomically } from '../files/write-output';
import { drawingsOf } from '../trace/check-run';

export async function leaveMarks(file: string, run: ProgramRun): Promise<void> {
  const drawings = await Promise.all(drawingsOf(run).map(markedDrawing));
  const marks: ProgramMarks = { version: 1, root: await realpath('.'), drawings: drawings.flat() };
  await writeAtomically(file, JSON.stringify(marks));
}

/** Nobody draws any more. */
export async function takeMarksAway(file: string): Promise<void> {
  await rm(file, { force: true });
}

async function markedDrawing({ file, marks }: ProgramRun['outputs'][number]): Promise<MarkedDrawing[]> {
  // What is gone meanwhile, or no text, is no drawing that anybody looks at.
  const input = await readInput(file).catch(() => undefined);
  return input ? [{ file: resolve(file), hash: hashOfText(input.text), ...(marks && { marks }) }] : [];
}
