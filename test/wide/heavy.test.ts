/**
 * Short texts that ask for much work, each checked in a process of its own: it ends by itself or stops early and says what is
 * lacking, within a bound on processor time and memory. Prints the table.
 */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { HEAVY_DRAWINGS } from '../engine/check/heavy-drawings';
import { bundled } from '../fuzz/bundle.mjs';
import type { Taken } from './heavy/run-one';

/** Milliseconds for any text: steps stand for two seconds of an idle processor; a shared one takes up to three times as long. */
const MOST_CPU = 5000;
/** Milliseconds for each character besides: that of 640 steps. */
const CPU_PER_CHARACTER = 0.038;
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

const takenBy = (drawing: string) =>
  JSON.parse(execFileSync(process.execPath, [program.file, drawing], { encoding: 'utf8' })) as Taken;

test.each([...HEAVY_DRAWINGS.keys()])('%s', (name) => {
  const { length, cpu, memory, unfinished, places } = takenBy(name);
  console.log(`${name}: ${length} characters, ${cpu} ms, ${memory} MB; ${unfinished ?? 'all done'}`);
  expect(cpu).toBeLessThan(MOST_CPU + CPU_PER_CHARACTER * length);
  expect(memory).toBeLessThan(MOST_MEMORY + (MEMORY_PER_CHARACTER * length) / 1e6);
  if (unfinished?.includes('layer "')) expect(places).toBeGreaterThan(0);
});

/** Of 1,300 drawings of Open Clip Art (public domain) those that ask for most work, in all and for each character. */
const CLIP_ART = '/usr/share/openclipart/svg';
const LARGE_DRAWINGS = [
  'animals/mammals/big_cats/tiger_graig_ryan_smith_-_01.svg',
  'geography/europe_francesco_rolland_.svg',
  'geography/romanian_map_with_count_01.svg',
  'geography/world_map_02.svg',
  'recreation/music/war_drum_enrique_meza_c_01.svg',
  'recreation/religion/daedalus_and_ikarus_pete_01.svg',
  'signs_and_symbols/flags/asia/afghanistan.svg',
];

test.skipIf(!existsSync(CLIP_ART)).each(LARGE_DRAWINGS)('%s is checked as a whole', (name) => {
  const { length, cpu, memory, unfinished } = takenBy(path.join(CLIP_ART, name));
  console.log(`${name}: ${length} characters, ${cpu} ms, ${memory} MB`);
  expect(unfinished).toBeUndefined();
});
