/** Units checked in threads, each thread taking the next one when it is done. */
import { availableParallelism } from 'node:os';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import { Failure, failureLines } from '../failure';
import { ReportLoader } from '../files/load-report';
import { STANDARD_INPUT } from '../files/read-input';
import { type FindingOptions, nameOf } from '../options';
import { type CheckUnit, unitsOf } from './check-units';
import { checkUnit, type UnitResult } from './unit-check';

/** With fewer units, a thread takes longer to begin than it spares. */
const WORTH_A_THREAD = 8;

/** @param wanted as many as were asked for */
export function threadsFor(units: readonly CheckUnit[], wanted: number | undefined): number {
  if (units.some(({ files }) => files.includes(STANDARD_INPUT))) return 1;
  const most = wanted ?? Math.min(availableParallelism(), Math.floor(units.length / WORTH_A_THREAD));
  return Math.max(1, Math.min(most, units.length));
}

/**
 * The results by unit. A thread that dies takes the findings of its own unit alone with it.
 * @param done is told of each unit when it is done
 */
export async function checkInThreads(
  units: readonly CheckUnit[],
  options: FindingOptions,
  threads: number,
  done: (unit: CheckUnit, result: UnitResult) => void,
): Promise<UnitResult[]> {
  const results: UnitResult[] = [];
  let next = 0;
  const one = async (): Promise<void> => {
    let thread = new CheckThread(options);
    for (let unit = units[next]; unit; unit = units[next]) {
      const at = next;
      next += 1;
      const answer = await thread.check(unit);
      const result = typeof answer === 'string' ? lost(unit, answer, options) : answer;
      if (typeof answer === 'string') thread = new CheckThread(options);
      results[at] = result;
      done(unit, result);
    }
    await thread.end();
  };
  await Promise.all(Array.from({ length: threads }, one));
  return results;
}

function lost({ files }: CheckUnit, why: string, options: FindingOptions): UnitResult {
  const failed = (file: string) => ({ failure: failureLines(new Failure(`${nameOf(file, options)}: ${why}`)) });
  return { files: files.map(failed), configs: [] };
}

class CheckThread {
  private readonly worker: Worker;
  /** Takes what is said first; the rest is nobody's. */
  private answer: (answer: UnitResult | string) => void = () => undefined;

  constructor(options: FindingOptions) {
    this.worker = new Worker(__filename, { workerData: options });
    this.worker.on('message', (result: UnitResult) => this.answer(result));
    this.worker.on('error', (error: NodeJS.ErrnoException) => this.answer(reasonOf(error)));
    this.worker.on('exit', () => this.answer('the thread that checked it ended'));
  }

  /** @returns why there is no result, where the thread died */
  check({ files }: CheckUnit): Promise<UnitResult | string> {
    this.worker.postMessage(files);
    return new Promise((settle) => {
      this.answer = settle;
    });
  }

  async end(): Promise<void> {
    await this.worker.terminate();
  }
}

function reasonOf({ code, message }: NodeJS.ErrnoException): string {
  return code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'the memory ran out while it was checked' : `internal error: ${message}`;
}

/** In a thread: checks what is sent, until the thread is ended. */
export function serveChecks(): void {
  const options = workerData as FindingOptions;
  parentPort?.on('message', async (files: readonly string[]) => {
    // What is read for one unit is not kept for the next: it would stay until the end.
    const loader = new ReportLoader(options);
    const [unit] = await unitsOf(files, loader, options);
    if (unit) parentPort?.postMessage(await checkUnit(unit, loader, options));
  });
}
