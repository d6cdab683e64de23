/**
 * Short texts that ask for much work, each checked in a process of its own: it ends by itself or stops early and says what is
 * lacking, within a bound on processor time and memory. Prints the table.
 */
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { HEAVY_DRAWINGS } from '../engine/check/heavy-drawings';
import { bundled } from '../fuzz/bundle.mjs';
import type { Taken } from './heavy/run-one';

/** Milliseconds for any text: steps stand for two seconds of an idle processor; a shared one takes up to three times as long. */
const MOST_CPU = 6000;
/** Milliseconds for each character besides: that of 800 steps. */
const CPU_PER_CHARACTER = 0.048;
/** MB for any text, and bytes for each character of what is written at length. */
const MOST_MEMORY = 500;
const MEMORY_PER_CHARACTER = 40;

const root = path.resolve(__dirname, '../..');
let program: Awaited<ReturnType<typeof bundled>>;

beforeAll(async () => {
  const beside = path.join(root, 'test/engine/check/heavy-drawings.ts');
  program = await bundled('test/wide/heavy/run-one.ts', { 'import.meta.url': JSON.stringify(`file://${beside}`) });
});

afterAll(() => program.remove());

test.each([...HEAVY_DRAWINGS.keys()])('%s', (name) => {
  const taken = JSON.parse(execFileSync(process.execPath, [program.file, name], { encoding: 'utf8' })) as Taken;
  const { length, cpu, memory, unfinished, places } = taken;
  console.log(`${name}: ${length} characters, ${cpu} ms, ${memory} MB; ${unfinished ?? 'all done'}`);
  expect(cpu).toBeLessThan(MOST_CPU + CPU_PER_CHARACTER * length);
  expect(memory).toBeLessThan(MOST_MEMORY + (MEMORY_PER_CHARACTER * length) / 1e6);
  if (unfinished?.includes('layer "')) expect(places).toBeGreaterThan(0);
});
