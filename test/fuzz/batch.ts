/**
 * Judges a batch of documents in a process of its own, which frees all memory when it ends. Says on its standard output, line by
 * line as JSON (`Said`), what it begins, what fails and what it has done.
 */
import { writeSync } from 'node:fs';
import { realDocuments } from './documents';
import { type Failure, fuzz, NOTHING_DONE, type Tally } from './fuzz';
import { pictureFaults } from './pictures';

export interface BatchOrder {
  readonly seed: number;
  readonly from: number;
  readonly to: number;
  /** Milliseconds of `Date.now()` after which no further document is begun. */
  readonly until: number;
  readonly fixed: number;
  /** Characters of the documents that are changed. */
  readonly longest: number;
  readonly pictures: boolean;
  /** MB that the process may come to: then it ends after the document. */
  readonly memory: number;
}

export interface Said {
  /** The number of a document. */
  readonly begins?: number;
  readonly fails?: Failure;
  /** At the end: what was done, the number of the document that is next, and whether the last one took too much memory. */
  readonly done?: { readonly tally: Tally; readonly next: number; readonly memory: number };
}

const say = (said: Said) => writeSync(1, `${JSON.stringify(said)}\n`);
const memoryInUse = () => process.resourceUsage().maxRSS / 1024;

const { fixed, pictures, memory, ...order } = JSON.parse(process.argv[2] ?? '{}') as BatchOrder;
const documents = realDocuments(process.cwd(), order.longest);
let tally = NOTHING_DONE;
let next = order.from;
while (next < order.to && Date.now() < order.until && memoryInUse() < memory) {
  say({ begins: next });
  const ways = { fixed, ...(pictures && { onFix: pictureFaults }) };
  tally = await fuzz({ seed: order.seed, documents, ...ways }, next, tally, (failure) => say({ fails: failure }));
  next += 1;
}
say({ done: { tally, next, memory: memoryInUse() } });
