/** Judges many documents in processes of their own, batch by batch: none finds the memory of another, and what ends one is told. */
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { BatchOrder, Said } from './batch';
import { realDocuments } from './documents';
import { documentOf, type Failure, NOTHING_DONE, type Tally } from './fuzz';

export interface FuzzOrder extends Pick<BatchOrder, 'seed' | 'fixed' | 'longest' | 'pictures'> {
  /** The bundled `batch.ts`. */
  readonly program: string;
  /** The number of the first document. */
  readonly from: number;
  readonly count: number;
  /** Seconds after which no further document is begun. */
  readonly seconds: number;
  /** Processes at the same time. */
  readonly jobs: number;
  readonly onFailure?: (failure: Failure) => void;
  readonly onBatch?: (table: FuzzTable) => void;
}

export interface FuzzTable extends Tally {
  /** MB of the largest process. */
  readonly memory: number;
  readonly failures: readonly Failure[];
}

/** Documents of one process: many, as the first hundred take half as long again as those that follow. */
const LARGEST_BATCH = 1000;
/** Batches of each of the processes that run at the same time, at least: they end at about the same time. */
const BATCHES_EACH = 8;
/** MB for any text, those of Node.js and of the renderer of the tests among them. */
const MOST_MEMORY = 500;
/** MB of V8's heap: far beyond that, it ends the process, which is then told as a failure. */
const HEAP = 450;
/** Less work for the collector and more for the first compiler: a fifteenth less processor time for short documents. */
const FASTER = ['--single-threaded-gc', '--min-semi-space-size=16', '--max-semi-space-size=32', '--always-sparkplug'];
/** Milliseconds without a word: then a document hangs. A busy machine may leave a process that gives way without a turn for minutes. */
const LONGEST_SILENCE = 1_200_000;

interface Outcome {
  readonly tally: Tally;
  readonly failures: readonly Failure[];
  readonly next: number;
  readonly memory: number;
  /** Before it was done: its last failure says how. */
  readonly isEnded?: boolean;
}

export async function fuzzInBatches(order: FuzzOrder): Promise<FuzzTable> {
  const until = Date.now() + 1000 * order.seconds;
  const end = order.from + order.count;
  const batch = Math.min(LARGEST_BATCH, Math.ceil(order.count / (BATCHES_EACH * order.jobs)));
  let table: FuzzTable = { ...NOTHING_DONE, memory: 0, failures: [] };
  let free = order.from;
  const take = (outcome: Outcome) => {
    table = joined(table, outcome);
    for (const failure of outcome.failures) order.onFailure?.(failure);
    order.onBatch?.(table);
  };
  const lane = async () => {
    while (free < end && Date.now() < until) {
      const [from, to] = [free, Math.min(end, free + batch)];
      free = to;
      for (let next = from; next < to && Date.now() < until; ) {
        const outcome = await runBatch(order, { ...order, from: next, to, until, memory: MOST_MEMORY });
        take(order.pictures && outcome.isEnded ? await undrawn(order, outcome) : outcome);
        if (outcome.memory > MOST_MEMORY) take(await alone(order, outcome.next - 1));
        next = outcome.next;
      }
    }
  };
  await Promise.all(Array.from({ length: order.jobs }, lane));
  return table;
}

/** A document that a process came to its bound with, in one that has not done anything before. It is counted already. */
async function alone(order: FuzzOrder, number: number): Promise<Outcome> {
  const outcome = await runBatch(order, { ...order, from: number, to: number + 1, until: Infinity, memory: Infinity });
  const fault = { kind: 'over memory', words: `${outcome.memory.toFixed(0)} MB`, number };
  const failures = outcome.memory > MOST_MEMORY ? [{ ...fault, text: textOf(order, number) }] : [];
  return { ...outcome, tally: NOTHING_DONE, failures };
}

/** The renderer ends its process at some documents: that is no fault of ours, if the document holds without its pictures. */
async function undrawn(order: FuzzOrder, ended: Outcome): Promise<Outcome> {
  const number = ended.next - 1;
  const plain = { ...order, pictures: false, from: number, to: number + 1, until: Infinity, memory: Infinity };
  const { failures, isEnded } = await runBatch(order, plain);
  return isEnded ? ended : { ...ended, failures: [...ended.failures.slice(0, -1), ...failures] };
}

function joined(table: FuzzTable, { tally, failures, memory }: Outcome): FuzzTable {
  const kinds = { ...table.kinds };
  for (const { kind } of failures) kinds[kind] = (kinds[kind] ?? 0) + 1;
  return {
    documents: table.documents + tally.documents,
    fixes: table.fixes + tally.fixes,
    pictures: table.pictures + tally.pictures,
    pictured: table.pictured + tally.pictured,
    slowest: Math.max(table.slowest, tally.slowest),
    slow: table.slow + tally.slow,
    slowestFix: Math.max(table.slowestFix, tally.slowestFix),
    kinds,
    memory: Math.max(table.memory, memory),
    failures: [...table.failures, ...failures],
  };
}

function textOf({ seed, longest }: FuzzOrder, number: number): string {
  return documentOf({ seed, documents: realDocuments(process.cwd(), longest) }, number)[0];
}

function runBatch(order: FuzzOrder, batch: BatchOrder): Promise<Outcome> {
  // JSON knows no infinity.
  const told = JSON.stringify(batch, (_, value) => (value === Infinity ? Number.MAX_VALUE : value));
  const child = spawn(process.execPath, [`--max-old-space-size=${HEAP}`, ...FASTER, order.program, told], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const failures: Failure[] = [];
  let [begun, documents] = [batch.from, 0];
  let done: Said['done'];
  let silence: NodeJS.Timeout | undefined;
  const listen = () => {
    clearTimeout(silence);
    silence = setTimeout(() => child.kill('SIGKILL'), LONGEST_SILENCE);
  };
  listen();
  createInterface({ input: child.stdout }).on('line', (line) => {
    listen();
    const said = JSON.parse(line) as Said;
    if (said.fails) failures.push(said.fails);
    if (said.done) done = said.done;
    if (said.begins === undefined) return;
    begun = said.begins;
    documents += 1;
  });
  return new Promise((resolve) => {
    child.once('close', (code, signal) => {
      clearTimeout(silence);
      if (done) return resolve({ ...done, failures });
      const words = `ended with ${signal ?? code}`;
      failures.push({ kind: 'process ended', words, number: begun, text: textOf(order, begun) });
      resolve({ tally: { ...NOTHING_DONE, documents }, failures, next: begun + 1, memory: 0, isEnded: true });
    });
  });
}
