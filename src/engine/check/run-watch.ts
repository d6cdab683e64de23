/** What watches over a run of the engine: its time, its memory, and whoever asked for it. */
import { Stopped, type StopReason, underWatch, type Watch } from '../../base/checkpoint';
import { now } from '../../base/clock';
import type { Settings } from '../../report/report';
import { type Fault, isolated } from './fault';

/** Milliseconds: long enough for any sheet that a person draws. */
const DEFAULT_BUDGET = 20_000;
/** Bytes: no sheet that a person draws needs a third of it. */
const DEFAULT_GROWTH = 2 ** 30;
/** Milliseconds: asking a host for its memory can take as long as a thousand steps of a loop. */
const BETWEEN_MEMORY_LOOKS = 20;

/** What was lacking for a part of a run, or that it failed. */
export type Lack = StopReason | Fault;

/** Something that was not done, and why. */
export interface Skipped {
  /** As the report calls it: `layer "sky"`, `thin-bridge`. */
  readonly name: string;
  readonly lack: Lack;
}

/** The watch over a run that begins when it is made. */
export class RunWatch {
  private readonly isCancelled: () => boolean;
  private readonly limits: Watch;

  /** @param files how many files the run reads: each adds its time to the budget */
  constructor(settings: Settings, files = 1) {
    const end = now() + (settings.budget ?? DEFAULT_BUDGET) * Math.max(1, files);
    const isMemoryUsedUp = memoryWatch(settings);
    this.isCancelled = settings.cancelled ?? (() => false);
    this.limits = () => {
      const time = now();
      if (time > end) return 'time';
      return isMemoryUsedUp(time) ? 'memory' : undefined;
    };
  }

  /**
   * The run as a whole. Time and memory end parts of it alone, so that there is always a report.
   * @throws Stopped when the run is cancelled: then nobody wants its report
   */
  over<T>(run: () => T): T {
    return underWatch(() => (this.isCancelled() ? 'cancelled' : undefined), run);
  }

  /**
   * What a part of the run gives, or `otherwise` where time or memory ended it, or it failed.
   * @throws Stopped when the run is cancelled
   */
  part<T>(work: () => T, otherwise: (lack: Lack) => T): T {
    try {
      return isolated(() => underWatch(this.limits, work), otherwise);
    } catch (error) {
      if (!(error instanceof Stopped) || error.reason === 'cancelled') throw error;
      return otherwise(error.reason);
    }
  }
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
