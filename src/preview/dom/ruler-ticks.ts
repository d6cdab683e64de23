/** Where a ruler has its ticks, and how long a scale bar is. */

export interface Tick {
  /** mm */
  readonly at: number;
  /** Long ticks carry their millimetres as a label. */
  readonly length: 'long' | 'middle' | 'short';
}

/** Distances in mm between labelled ticks; each divides into ten, and into two. */
const STEPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

/** Least pixels between two labels, and between two short ticks. */
const LABEL_ROOM = 46;
const TICK_ROOM = 5;

/**
 * @param from and `to`: the stretch of the sheet that shows, in mm
 * @param scale pixels for one mm
 */
export function rulerTicks(from: number, to: number, scale: number): Tick[] {
  const step = STEPS.find((candidate) => candidate * scale >= LABEL_ROOM) ?? 10_000;
  const parts = [10, 5, 2, 1].find((count) => (step * scale) / count >= TICK_ROOM) ?? 1;
  const ticks: Tick[] = [];
  for (let i = Math.ceil((from * parts) / step); i <= Math.floor((to * parts) / step); i += 1) {
    // Adding zero makes plain zero of minus zero.
    ticks.push({ at: (i * step) / parts + 0, length: lengthOf(i, parts) });
  }
  return ticks;
}

function lengthOf(index: number, parts: number): Tick['length'] {
  if (index % parts === 0) return 'long';
  return parts % 2 === 0 && index % (parts / 2) === 0 ? 'middle' : 'short';
}

/** A round length in mm that takes at most `room` pixels. */
export function scaleBarLength(room: number, scale: number): number {
  return STEPS.findLast((candidate) => candidate * scale <= room) ?? 0.01;
}

/** "12.5", without trailing zeros and without the noise of binary fractions. */
export const millimetres = (value: number): string => String(Number(value.toFixed(3)));
