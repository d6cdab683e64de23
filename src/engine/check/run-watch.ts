/** What watches over a run of the engine: its time, its memory, and whoever asked for it. */
import { Stopped, type StopReason, stepsMade, underWatch } from '../../base/checkpoint';
import { now } from '../../base/clock';
import type { Settings } from '../../report/report';
import type { Span } from '../../text/text';
import { type Fault, isolated } from './fault';

/** Milliseconds: only for what steps do not tell of. On a busy machine a run may wait long for its turns. */
const DEFAULT_BUDGET = 120_000;
/** Bytes: no sheet that a person draws needs half of it. */
const DEFAULT_GROWTH = 500 * 2 ** 20;
/** Milliseconds: asking a host for its memory can take as long as a thousand steps of a loop. */
const BETWEEN_MEMORY_LOOKS = 20;

/**
 * Steps of work for any text, however short: less than two seconds of a processor, in a process that has only begun too. Steps
 * are counted (`src/base/checkpoint.ts`), so that a text is checked as far on any machine, however busy.
 */
const WORK_FOR_ANY = 18_000_000;
/** Steps of work for each character besides: clip art of more than 20 kB takes 2 to 720 in all. */
const WORK_PER_CHARACTER = 640;

/** Of the work of a file, what reading and measuring may take: the rest is kept for the checks of what was measured. */
const READING_SHARE = 0.7;
const MEASURING_SHARE = 0.85;

/** Steps of work that a check of a text may take. */
export function workOfCheck({ length }: string, { budget, work }: Settings): number {
  return work ?? (budget === Infinity ? Infinity : WORK_FOR_ANY + WORK_PER_CHARACTER * length);
}

/** What was lacking for a part of a run, or that it failed. */
export type Lack = StopReason | Fault;

/** Something that was not done, and why. */
export interface Skipped {
  /** As the report calls it: `layer "sky"`, `thin-bridge`. */
  readonly name: string;
  readonly lack: Lack;
  /** Where it stands in the text; undefined for what stands nowhere, as a check. */
  readonly span?: Span;
}

/** What a part of a run is for: by how much of the work is granted to it, and to those before it. */
export type Stage = 'reading' | 'measuring' | 'checking';

const SHARES: Readonly<Record<Stage, number>> = {
  reading: READING_SHARE,
  measuring: MEASURING_SHARE,
  checking: 1,
};

/** The watch over a run that begins when it is made. */
export class RunWatch {
  private readonly settings: Settings;
  private readonly isCancelled: () => boolean;
  private readonly limits: () => StopReason | undefined;
  /** What `stepsMade` said when the run began. */
  private readonly begun = stepsMade();
  /** Steps of work, for the files whose turn has come. */
  private granted = 0;

  /** @param files how many files the run reads: each adds its time to the budget */
  constructor(settings: Settings, files = 1) {
    this.settings = settings;
    const end = now() + (settings.budget ?? DEFAULT_BUDGET) * Math.max(1, files);
    const isMemoryUsedUp = memoryWatch(settings);
    this.isCancelled = settings.cancelled ?? (() => false);
    this.limits = () => {
      const time = now();
      if (time > end) return 'time';
      return isMemoryUsedUp(time) ? 'memory' : undefined;
    };
  }

  /** Adds the work that a file is worth, when it is about to be read: so none takes what is meant for another. */
  grant(text: string): void {
    this.granted += workOfCheck(text, this.settings);
  }

  /**
   * The run as a whole. Work, time and memory end parts of it alone, so that there is always a report.
   * @throws Stopped when the run is cancelled: then nobody wants its report
   */
  over<T>(run: () => T): T {
    return underWatch(() => (this.isCancelled() ? 'cancelled' : undefined), run);
  }

  /**
   * What a part of the run gives, or `otherwise` where its work, time or memory ended it, or it failed. Unless it is the
   * last of its stage it may do half of the work that is left, so that one which would never end leaves enough for those
   * after it.
   * @throws Stopped when the run is cancelled
   */
  part<T>(stage: Stage, isLast: boolean, work: () => T, otherwise: (lack: Lack) => T): T {
    const before = stepsMade();
    const left = Math.max(0, this.begun + SHARES[stage] * this.granted - before);
    const end = before + (isLast ? left : left / 2);
    const limits = () => (stepsMade() >= end ? 'work' : this.limits());
    try {
      return isolated(() => underWatch(limits, work), otherwise);
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
