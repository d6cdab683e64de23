/** What watches over a run of the engine: its time, its memory, and whoever asked for it. */
import { Stopped, type StopReason, type Watch } from '../../geometry/base/checkpoint';
import type { Settings } from '../../report/report';
import { now } from '../clock';

/** Milliseconds: long enough for any sheet that a person draws. */
const DEFAULT_BUDGET = 20_000;
/** Bytes: no sheet that a person draws needs a third of it. */
const DEFAULT_GROWTH = 2 ** 30;
/** Milliseconds: asking a host for its memory can take as long as a thousand steps of a loop. */
const BETWEEN_MEMORY_LOOKS = 5;

/** Something that was not done, and what was lacking for it. */
export interface Skipped {
  /** As the report calls it: `layer "sky"`, `thin-bridge`. */
  readonly name: string;
  readonly reason: StopReason;
}

/**
 * The watch over a run that begins now.
 * @param files how many files the run reads: each adds its time to the budget
 */
export function watchOf(settings: Settings, files = 1): Watch {
  const end = now() + (settings.budget ?? DEFAULT_BUDGET) * Math.max(1, files);
  const isMemoryUsedUp = memoryWatch(settings);
  return () => {
    if (settings.cancelled?.()) return 'cancelled';
    const time = now();
    if (time > end) return 'time';
    return isMemoryUsedUp(time) ? 'memory' : undefined;
  };
}

function memoryWatch({ memoryInUse, memoryBudget }: Settings): (time: number) => boolean {
  if (!memoryInUse) return () => false;
  const most = memoryBudget ?? memoryInUse() + DEFAULT_GROWTH;
  let [next, usedUp] = [-Infinity, false];
  return (time) => {
    if (time < next) return usedUp;
    next = time + BETWEEN_MEMORY_LOOKS;
    usedUp = memoryInUse() > most;
    return usedUp;
  };
}

/**
 * What `work` gives, or `otherwise` where time or memory ended it.
 * @throws Stopped when the run was cancelled: then nobody wants its report
 */
export function unlessStopped<T>(work: () => T, otherwise: (reason: StopReason) => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof Stopped) || error.reason === 'cancelled') throw error;
    return otherwise(error.reason);
  }
}
