/**
 * Where long loops ask whether they may go on. Whoever starts a run states what watches over it; the loops below only
 * count their steps, so that no parameter has to be handed through every function on the way.
 */

/** Why a run was stopped in the middle of its work. */
export type StopReason = 'cancelled' | 'work' | 'time' | 'memory';

/** Thrown out of a loop whose run must end. Only whoever started the run catches it. */
export class Stopped extends Error {
  override readonly name = 'Stopped';

  readonly reason: StopReason;

  constructor(reason: StopReason) {
    super(`The run was stopped: ${reason}.`);
    this.reason = reason;
  }
}

/** Tells whether a run must end, and why. It is asked every few milliseconds. */
export type Watch = () => StopReason | undefined;

/** So many steps are made between two looks; a step is worth some 25 to 80 nanoseconds, wherever it is counted. */
const STEPS_BETWEEN_LOOKS = 4096;

/** Of the run under way; there is none between two runs. */
let watching: Watch | undefined;
let stepsLeft = STEPS_BETWEEN_LOOKS;
/** Up to the last look. */
let stepsBefore = 0;

/** How many steps were made by now, in all runs: what a run has cost is the difference of two such counts. */
export function stepsMade(): number {
  return stepsBefore + STEPS_BETWEEN_LOOKS - stepsLeft;
}

function countSteps(): void {
  stepsBefore = stepsMade();
  stepsLeft = STEPS_BETWEEN_LOOKS;
}

/**
 * Runs `work` under a watch, besides the one that watches already: the innermost is asked first.
 * @throws Stopped when either says that the run must end
 */
export function underWatch<T>(watch: Watch, work: () => T): T {
  const outer = watching;
  watching = outer ? () => watch() ?? outer() : watch;
  countSteps();
  try {
    return work();
  } finally {
    watching = outer;
  }
}

/**
 * Called in every loop that can become long.
 * @param steps how much was done since the last call, in turns of an innermost loop
 * @throws Stopped when the run must end
 */
export function checkpoint(steps = 1): void {
  stepsLeft -= steps;
  if (stepsLeft <= 0) lookNow();
}

/**
 * Asks the watch whatever was counted: before a piece of work that is left out where there is no time for it.
 * @throws Stopped when the run must end
 */
export function lookNow(): void {
  countSteps();
  const reason = watching?.();
  if (reason) throw new Stopped(reason);
}
