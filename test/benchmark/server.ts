/**
 * How long the editor waits for the language server: while the check of a large sheet is under way, where the caret
 * rests in an island, for the lightbulb's titles, and for the plan of a layer's bridges; how soon a newer text ends the
 * check of the older one; and what memory it comes to while a document is edited thousands of times.
 * Arguments: the bundles of the server and of its worker.
 */
import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { defined } from '../../src/base/defined';
import { BRIDGE_STYLES } from '../../src/config/bridge-style';
import { check } from '../../src/engine/index';
import { LAYER_PLAN, LAYER_SKETCH, type LayerPlan, PLAN_GHOST } from '../../src/protocol/layer-plan';
import { Priority } from '../../src/protocol/run-signals';
import { EngineClient } from '../../src/server/engine/engine-client';
import { engineFrom } from '../../src/server/engine/start-engine';
import { layerId } from '../../src/sheet/layer/layer-id';
import { RESOLVES, ServerProcess } from '../server/server-process';
import { processorTime } from './measure';
import { blobSheet } from './seeded';

const SEGMENTS = 100_000;
const RESTS = 30;
/** Of the demo, the quickest of which is what a check takes. */
const CHECKS = 5;
/** For the server's memory. */
const EDITS = 2000;

const [serverFile = '', workerFile = ''] = process.argv.slice(2);
const demo = readFileSync('media/demo/waymarker.svg', 'utf8');
const large = blobSheet(SEGMENTS);

function percentile(times: readonly number[], share: number): number {
  return [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(share * times.length))] ?? NaN;
}

async function timed(run: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await run();
  return performance.now() - start;
}

/** The demo, checked, and a place in the text of its first island. */
async function openDemo(server: ServerProcess): Promise<{ document: TextDocument; island: number }> {
  const document = await server.open('waymarker.svg', demo);
  const diagnostics = await server.diagnostics(document);
  const island = diagnostics.find(({ code }) => code === 'floating-island');
  if (!island) throw new Error('The demo has no island.');
  return { document, island: document.offsetAt(island.range.start) + 1 };
}

async function benchAnswers(): Promise<void> {
  const server = await ServerProcess.start(serverFile, RESOLVES);
  const { document, island } = await openDemo(server);
  const textDocument = { uri: document.uri };
  const until = async () => (await server.actionsAt(document, island)).length > 0;
  while (!(await until())) await pause(20);
  const position = document.positionAt(document.getText().indexOf('<path') + 2);
  const sheet = await server.open('large.svg', large);
  await pause(200);
  const [hovers, titles, symbols]: [number[], number[], number[]] = [[], [], []];
  while (!server.checked.some(({ uri }) => uri === sheet.uri)) {
    hovers.push(await timed(() => server.connection.sendRequest('textDocument/hover', { textDocument, position })));
    titles.push(await timed(() => server.actionsAt(document, island)));
    symbols.push(await timed(() => server.connection.sendRequest('textDocument/documentSymbol', { textDocument })));
    await pause(10);
  }
  await server.stop();
  const ms = (times: readonly number[]) => `${percentile(times, 0.95).toFixed(1)} ms`;
  console.log(
    `while a sheet of ${SEGMENTS} segments is checked, in another document, 95th percentile of ${hovers.length}: ` +
      `hover ${ms(hovers)}, titles of code actions ${ms(titles)}, symbols ${ms(symbols)}`,
  );
}

/** From the change of a text to the moment when the worker has left the check of the older one. */
async function benchCancelling(): Promise<void> {
  const engine = new EngineClient(engineFrom(workerFile), {
    offers: () => undefined,
    restarted: () => undefined,
    log: (message) => console.error(message),
  });
  const file = { name: '', uri: 'file:///large.svg', open: true, text: large };
  const check = (version: number) =>
    engine.ask(
      { kind: 'check', key: file.uri, files: [{ ...file, version }], config: undefined, project: false, always: true },
      Priority.check,
    );
  const free = () => engine.ask({ kind: 'offers', uri: 'file:///none.svg', version: 1 }, Priority.glance).answer;
  await free();
  const whole = await timed(() => check(1).answer);
  const times: number[] = [];
  for (let turn = 1; turn < 20; turn += 1) {
    const { cancel } = check(turn + 1);
    await pause((turn / 20) * whole);
    times.push(
      await timed(() => {
        cancel();
        return free();
      }),
    );
  }
  engine.dispose();
  console.log(
    `a newer text ends the check of ${SEGMENTS} segments (${(whole / 1000).toFixed(1)} s) after ` +
      `${percentile(times, 0.5).toFixed(0)} ms, at most ${Math.max(...times).toFixed(0)} ms, of ${times.length} times`,
  );
}

/** Milliseconds of processor time of the server's own thread; the worker's is another. Linux only. */
function serverTime({ pid }: ServerProcess): number {
  return timeIn(`/proc/${pid}/task/${pid}/stat`);
}

/** The same of all of its threads. */
function processTime({ pid }: ServerProcess): number {
  return timeIn(`/proc/${pid}/stat`);
}

/** Megabytes that the server holds. Linux only. */
function memoryOf({ pid }: ServerProcess): number {
  const [, pages] = readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ');
  return (Number(pages) * 4096) / 1e6;
}

function timeIn(file: string): number {
  const words = readFileSync(file, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return 10 * (Number(words[11]) + Number(words[12]));
}

async function benchCaret(): Promise<void> {
  const server = await ServerProcess.start(serverFile, RESOLVES);
  await server.set({ delay: 250 });
  const { document, island } = await openDemo(server);
  const first = await timed(async () => {
    while ((await server.actionsAt(document, island)).length === 0) await pause(5);
  });
  const waits: number[] = [];
  const before = serverTime(server);
  for (let rest = 0; rest < RESTS; rest += 1) {
    const at = document.positionAt(island);
    await server.change(document, [{ range: { start: at, end: at }, text: ' ' }]);
    waits.push(await timed(() => server.actionsAt(document, island + 1)));
    await pause(400);
  }
  const time = (serverTime(server) - before) / RESTS;
  await server.stop();
  console.log(
    `demo: titles at an island right after its check ${first.toFixed(0)} ms; typing with the caret in it costs ` +
      `${time.toFixed(1)} ms of the server's thread a rest, titles there ${percentile(waits, 0.95).toFixed(0)} ms ` +
      `(95th percentile of ${RESTS})`,
  );
}

/**
 * From the question of the bench to the bridges of the sun's island: seen, proven, and dragged. The ghost's processor time is
 * put beside a check of the same demo by an engine that knows nothing of it.
 */
async function benchPlan(): Promise<void> {
  const server = await ServerProcess.start(serverFile, RESOLVES);
  const { document } = await openDemo(server);
  const about = { uri: document.uri, layer: layerId('', 0), version: 1 };
  const ask = (method: string, more: object) => server.connection.sendRequest(method, { ...about, ...more });
  const [seen, proven, dragged]: [number[], number[], number[]] = [[], [], []];
  let work = 0;
  for (const style of BRIDGE_STYLES) {
    // What is proven already is remembered: each style is asked for once.
    const before = processTime(server);
    seen.push(await timed(() => ask(LAYER_SKETCH, { style })));
    work += processTime(server) - before;
    proven.push(await timed(() => ask(LAYER_PLAN, { style })));
    const { bridges } = (await ask(LAYER_PLAN, { style })) as LayerPlan;
    const { from, to } = defined(bridges[0]);
    for (let step = 0; step < RESTS; step += 1) {
      const move = { bridge: 0, to: { x: (from.x + to.x) / 2 + step / 20, y: (from.y + to.y) / 2 }, apart: false };
      dragged.push(await timed(() => ask(PLAN_GHOST, { style, move })));
    }
  }
  await server.stop();
  const ghost = work / seen.length;
  const checked = Math.min(...Array.from({ length: CHECKS }, () => processorTime(() => check(demo))));
  const ms = (times: readonly number[]) =>
    `${percentile(times, 0.5).toFixed(0)} ms, at most ${Math.max(...times).toFixed(0)} ms`;
  console.log(
    `demo: the island of the sun to its ghost ${ms(seen)} of ${seen.length} styles ` +
      `(${ghost.toFixed(0)} ms of processor time, ghost/check ${(ghost / checked).toFixed(2)}), proven ${ms(proven)}; ` +
      `a dragged bridge with its likes ${ms(dragged)} of ${dragged.length} places`,
  );
}

/** A number of the demo typed again and again, each time checked: what is held comes to a level and stays there. */
async function benchMemory(): Promise<void> {
  const server = await ServerProcess.start(serverFile, RESOLVES);
  await server.set({ delay: 0 });
  const { document } = await openDemo(server);
  const held: number[] = [];
  for (let edit = 0; edit < EDITS; edit += 1) {
    const from = document.getText().search(/(?<= d="M-?)\d/);
    const range = { start: document.positionAt(from), end: document.positionAt(from + 1) };
    await server.change(document, [{ range, text: String(1 + (edit % 9)) }]);
    await server.diagnostics(document);
    if ((edit + 1) % (EDITS / 8) === 0) held.push(memoryOf(server));
  }
  await server.stop();
  const levels = held.map((megabytes) => megabytes.toFixed(0)).join(', ');
  console.log(`demo: ${EDITS} edits, each checked: the server holds ${levels} MB after each eighth of them`);
}

await benchPlan();
await benchMemory();
await benchAnswers();
await benchCancelling();
await benchCaret();
