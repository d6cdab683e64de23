/** Judges one mutated document, and makes small what fails. */
import { setImmediate } from 'node:timers/promises';
import { seededRandom } from '../benchmark/seeded';
import { type Fault, type Judged, judge, type Ways } from './judge';
import { mutated, nudged } from './mutate';
import { shrunk } from './shrink';

export interface FuzzOptions extends Ways {
  readonly seed: number;
  readonly documents: readonly string[];
}

export interface Failure extends Fault {
  readonly number: number;
  readonly text: string;
}

/** What was done, and how long it took in milliseconds of processor time. */
export interface Tally {
  readonly documents: number;
  readonly fixes: number;
  /** Fixes of which pictures were compared, and documents that have any. */
  readonly pictures: number;
  readonly pictured: number;
  readonly slowest: number;
  /** Documents of which a check took longer than the two seconds that it is to take on an idle machine. */
  readonly slow: number;
  readonly slowestFix: number;
  /** Failures of kinds that come again and again are made small only so often. */
  readonly kinds: Readonly<Record<string, number>>;
}

export const NOTHING_DONE: Tally = {
  documents: 0,
  fixes: 0,
  pictures: 0,
  pictured: 0,
  slowest: 0,
  slow: 0,
  slowestFix: 0,
  kinds: {},
};

const SLOW = 2000;
const TRIALS = 60;
/** So many failures of a kind are made small in one process. */
const SHRUNK_OF_KIND = 2;

/** Document `number` of a seed is the same in every run, whatever comes before: a text, and the same after a small change. */
export function documentOf(
  { seed, documents }: Pick<FuzzOptions, 'seed' | 'documents'>,
  number: number,
): [string, string] {
  const random = seededRandom(seed * 1_000_003 + number);
  const text = mutated(random, documents);
  return [text, nudged(random, text)];
}

/**
 * @param tally what was done before
 * @returns the same with this document
 */
export async function fuzz(
  options: FuzzOptions,
  number: number,
  tally: Tally,
  onFailure: (failure: Failure) => void,
): Promise<Tally> {
  const [text, next] = documentOf(options, number);
  const judged = await judgedInTurn(text, next, options);
  const kinds = { ...tally.kinds };
  for (const fault of firstOfKinds(judged.faults)) {
    const known = kinds[fault.kind] ?? 0;
    kinds[fault.kind] = known + 1;
    onFailure(await smallest(options, fault, { number, text, next, isShrunk: known < SHRUNK_OF_KIND }));
  }
  return added(tally, judged, kinds);
}

function added(tally: Tally, { fixes, seen, slowest, slowestFix }: Judged, kinds: Tally['kinds']): Tally {
  return {
    documents: tally.documents + 1,
    fixes: tally.fixes + fixes,
    pictures: tally.pictures + seen,
    pictured: tally.pictured + (seen > 0 ? 1 : 0),
    slowest: Math.max(tally.slowest, slowest),
    slow: tally.slow + (slowest > SLOW ? 1 : 0),
    slowestFix: Math.max(tally.slowestFix, slowestFix),
    kinds,
  };
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

interface Failing {
  readonly number: number;
  readonly text: string;
  readonly next: string;
  readonly isShrunk: boolean;
}

/** What depends on both texts, or on the clock, is kept as it is. */
const NOT_SHRUNK: ReadonlySet<string> = new Set(['incremental differs', 'over budget', 'fix over budget']);

async function smallest(ways: Ways, fault: Fault, { number, text, next, isShrunk }: Failing): Promise<Failure> {
  const { kind } = fault;
  if (kind === 'incremental differs') return { ...fault, number, text: `${text}\n<!-- then -->\n${next}` };
  if (!isShrunk || NOT_SHRUNK.has(kind)) return { ...fault, number, text };
  const failsAlike = async (shorter: string) =>
    (await judgedInTurn(shorter, shorter, ways)).faults.some((each) => each.kind === kind);
  return { ...fault, number, text: await shrunk(text, failsAlike, TRIALS) };
}
