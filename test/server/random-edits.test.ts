/** Thousands of edits by an editor that keeps no rule, with a worker that is killed: findings are right at the end. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { seededRandom } from '../benchmark/seeded';
import { ring, sheet } from '../engine/project-files';
import { cases, isThorough } from '../thorough';
import { buildServer } from './build-server';
import { RandomEditor, shownBy } from './random-editor';
import { RESOLVES, ServerProcess } from './server-process';

const EDITS = cases(10_000, 150);
const KILLS = cases(10, 2);

const STENCIL = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="60mm" height="60mm" viewBox="0 0 60 60">
<g id="marsh" fill="#245">${ring(5, 5)}<path d="M30 30h9.7v9h-9.7z M40 30h9v9h-9z"/></g>
<g id="sun" fill="#fd5"><circle cx="40" cy="15" r="8"/></g>
</svg>
`;
const TEXTS = {
  'heron.svg': STENCIL,
  'plain.svg': STENCIL.replace(' data-tombolo-reading="openings"', ''),
  'trail/a.svg': sheet(ring(5, 5)),
  'trail/b.svg': sheet(ring(8, 12)),
  'trail/tombolo.json': '{ "layers": [{ "from": "a.svg" }, { "from": "b.svg" }] }',
};

/** The server, whose workers end when it is told so by a signal: in the midst of whatever they do. */
const KILLABLE = `const threads = require('node:worker_threads');
const alive = new Set();
threads.Worker = class extends threads.Worker {
  constructor(...words) {
    super(...words);
    alive.add(this);
    this.once('exit', () => alive.delete(this));
  }
};
process.on('SIGUSR2', () => alive.forEach((worker) => worker.terminate()));
require('./server.cjs');
`;

let built: Awaited<ReturnType<typeof buildServer>>;
let file: string;

beforeAll(async () => {
  built = await buildServer();
  file = path.join(path.dirname(built.file), 'killable.cjs');
  writeFileSync(file, KILLABLE);
}, 60_000);
afterAll(() => built.remove());

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** MB that a process has in memory. */
function memoryOf({ pid }: ServerProcess): number {
  const [, pages] = readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ');
  return (Number(pages) * 4096) / 1e6;
}

/** What went wrong in the server, but for what was wrong with the edits. */
const faults = ({ logged }: ServerProcess) =>
  logged.filter((line) => /failed|TypeError|RangeError|Error:/.test(line) && !/without valid version/.test(line));

test(`${EDITS} edits, ${KILLS} times a worker killed: then it shows what a new server finds`, async () => {
  const random = seededRandom(Number(process.env.TOMBOLO_SEED ?? 20));
  const server = await ServerProcess.start(file, RESOLVES);
  const editor = new RandomEditor(TEXTS, random);
  editor.writeFiles(server.folder);
  const memory: number[] = [];
  for (let killed = 1; killed <= KILLS; killed += 1) {
    while (editor.edits < (killed * EDITS) / KILLS) {
      await editor.step(server);
      if (random() < 0.12) await pause(random() * 60);
    }
    process.kill(server.pid ?? 0, 'SIGUSR2');
    await editor.settle(server);
    const fresh = await ServerProcess.start(built.file, RESOLVES, server.folder);
    await editor.reopen(fresh);
    const right = shownBy(fresh);
    await expect.poll(() => shownBy(server), { timeout: 20_000, interval: 100 }).toEqual(right);
    // Nothing late changes that.
    await pause(300);
    expect(shownBy(server), `after ${editor.edits} edits`).toEqual(right);
    expect(Object.keys(right).length).toBeGreaterThan(0);
    expect(server.logged.filter((line) => /worker ended/.test(line))).toHaveLength(killed);
    await fresh.kill();
    if (process.platform === 'linux') memory.push(memoryOf(server));
  }
  expect(faults(server)).toEqual([]);
  const [first = 0] = memory;
  expect(Math.max(...memory)).toBeLessThanOrEqual(2 * first);
  if (isThorough) console.log(`${editor.edits} edits; MB at each kill: ${memory.map((mb) => mb.toFixed(0)).join(' ')}`);
  await server.stop();
});

/** By its id, in the midst of whatever it does; the editor starts it again, with what is open. */
test(`${KILLS} times the server itself killed among edits: then it shows what a new server finds`, async () => {
  const random = seededRandom(Number(process.env.TOMBOLO_SEED ?? 21));
  let server = await ServerProcess.start(built.file, RESOLVES);
  const editor = new RandomEditor(TEXTS, random);
  editor.writeFiles(server.folder);
  for (let killed = 1; killed <= KILLS; killed += 1) {
    while (editor.edits < (killed * EDITS) / KILLS / 5) {
      await editor.step(server);
      if (random() < 0.12) await pause(random() * 60);
    }
    const { folder } = server;
    await server.kill();
    server = await ServerProcess.start(built.file, RESOLVES, folder);
    await editor.reopen(server);
  }
  await editor.settle(server);
  const fresh = await ServerProcess.start(built.file, RESOLVES, server.folder);
  await editor.reopen(fresh);
  const right = shownBy(fresh);
  await expect.poll(() => shownBy(server), { timeout: 20_000, interval: 100 }).toEqual(right);
  expect(Object.keys(right).length).toBeGreaterThan(0);
  expect(faults(server)).toEqual([]);
  await fresh.kill();
  await server.stop();
});
