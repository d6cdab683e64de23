/**
 * Short texts that ask for much work, each checked in a process of its own: it ends by itself or stops early and says what is
 * lacking, within a bound on processor time and memory. Prints the table.
 */
import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { HEAVY_DRAWINGS } from '../engine/check/heavy-drawings';
import type { Taken } from './heavy/run-one';

/** Milliseconds for any text: steps stand for two seconds of an idle processor; a shared one takes up to three times as long. */
const MOST_CPU = 6000;
/** Milliseconds for each character besides: that of 600 steps. */
const CPU_PER_CHARACTER = 0.036;
/** MB for any text, and bytes for each character of what is written at length. */
const MOST_MEMORY = 500;
const MEMORY_PER_CHARACTER = 80;

const root = path.resolve(__dirname, '../..');
const folder = path.join(root, 'node_modules/.cache/tombolo-heavy');
const program = path.join(folder, 'run-one.mjs');

beforeAll(async () => {
  await build({
    entryPoints: [path.join(__dirname, 'heavy/run-one.ts')],
    outfile: program,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    mainFields: ['module', 'main'],
    define: {
      'globalThis.tomboloAssertions': 'false',
      'import.meta.url': JSON.stringify(`file://${path.join(root, 'test/engine/check/heavy-drawings.ts')}`),
    },
  });
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each([...HEAVY_DRAWINGS.keys()])('%s', (name) => {
  const taken = JSON.parse(execFileSync(process.execPath, [program, name], { encoding: 'utf8' })) as Taken;
  const { length, cpu, memory, unfinished, places } = taken;
  console.log(`${name}: ${length} characters, ${cpu} ms, ${memory} MB; ${unfinished ?? 'all done'}`);
  expect(cpu).toBeLessThan(MOST_CPU + CPU_PER_CHARACTER * length);
  expect(memory).toBeLessThan(MOST_MEMORY + (MEMORY_PER_CHARACTER * length) / 1e6);
  if (unfinished?.includes('layer "')) expect(places).toBeGreaterThan(0);
});
