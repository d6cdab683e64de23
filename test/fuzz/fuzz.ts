/** Judges mutated documents one after the other, and keeps what fails, made small. */
import { setImmediate } from 'node:timers/promises';
import { seededRandom } from '../benchmark/seeded';
import { type Fault, type Judged, judge, type Ways } from './judge';
import { mutated, nudged } from './mutate';
import { shrunk } from './shrink';

export interface FuzzOptions extends Ways {
  readonly seed: number;
  readonly count: number;
  /** Seconds after which no further document is begun. */
  readonly seconds: number;
  readonly documents: readonly string[];
  /** Before a document is judged: it is the one that ends the process, if one does. */
  readonly onDocument?: (text: string, number: number) => void;
}

export interface Failure extends Fault {
  readonly number: number;
  readonly text: string;
}

export interface FuzzTable {
  readonly documents: number;
  readonly fixes: number;
  readonly parted: number;
  /** Milliseconds of processor time */
  readonly slowest: number;
  readonly failures: readonly Failure[];
}

const TRIALS = 60;
/** So many failures of a kind are made small. */
const SHRUNK_OF_KIND = 3;

/** Document `number` of a seed is the same in every run, whatever comes before. */
export function documentOf(
  { seed, documents }: Pick<FuzzOptions, 'seed' | 'documents'>,
  number: number,
): [string, string] {
  const random = seededRandom(seed * 1_000_003 + number);
  const text = mutated(random, documents);
  return [text, nudged(random, text)];
}

export async function fuzz(options: FuzzOptions): Promise<FuzzTable> {
  const end = performance.now() + 1000 * options.seconds;
  const failures: Failure[] = [];
  let [documents, fixes, parted, slowest] = [0, 0, 0, 0];
  for (; documents < options.count && performance.now() < end; documents += 1) {
    const [text, next] = documentOf(options, documents);
    options.onDocument?.(text, documents);
    const judged = await judgedInTurn(text, next, options);
    fixes += judged.fixes;
    parted += judged.parted;
    slowest = Math.max(slowest, judged.slowest);
    for (const fault of firstOfKinds(judged.faults))
      failures.push(await smallest(options, failures, fault, documents, text, next));
  }
  return { documents, fixes, parted, slowest, failures };
}

/** The renderer's memory is freed only when the event loop turns. */
async function judgedInTurn(text: string, next: string, ways: Ways): Promise<Judged> {
  await setImmediate();
  return judge(text, next, ways);
}

function firstOfKinds(faults: readonly Fault[]): Fault[] {
  const kinds = new Map<string, Fault>();
  for (const fault of faults) if (!kinds.has(fault.kind)) kinds.set(fault.kind, fault);
  return [...kinds.values()];
}

async function smallest(
  ways: Ways,
  before: readonly Failure[],
  fault: Fault,
  number: number,
  text: string,
  next: string,
): Promise<Failure> {
  const { kind } = fault;
  // What depends on both texts, or on the clock, is kept as it is.
  const isPlain = kind !== 'incremental differs' && kind !== 'over budget';
  if (!isPlain || before.filter((each) => each.kind === kind).length >= SHRUNK_OF_KIND) {
    return { ...fault, number, text: kind === 'incremental differs' ? `${text}\n<!-- then -->\n${next}` : text };
  }
  const failsAlike = async (shorter: string) =>
    (await judgedInTurn(shorter, shorter, ways)).faults.some((each) => each.kind === kind);
  return { ...fault, number, text: await shrunk(text, failsAlike, TRIALS) };
}
