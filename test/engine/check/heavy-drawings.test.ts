import { describe, expect, it as test } from 'vitest';
import { Stopped, type StopReason, underWatch } from '../../../src/base/checkpoint';
import { check } from '../../../src/engine/check/check-file';
import { areaOf } from '../../../src/geometry/boolean/index';
import { HEAVY_DRAWINGS } from './heavy-drawings';

interface Watched<T> {
  readonly result: T | Stopped;
  /** How often the watch was asked. */
  readonly looks: number;
}

/** Runs the work under a watch that lets it go on for some looks, and then never again. */
function stoppedAfter<T>(most: number, reason: StopReason, work: () => T): Watched<T> {
  let looks = 0;
  const watch = () => {
    looks += 1;
    return looks > most ? reason : undefined;
  };
  try {
    return { result: underWatch(watch, work), looks };
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
    return { result: error, looks };
  }
}

/** Looks are made between a layer and its checks, so many at most; whatever comes beyond is made within a step. */
const BETWEEN_STEPS = 40;

/** Those that are read so soon that nothing within a step takes long. */
const SOON_DONE: ReadonlySet<string> = new Set([
  'entities that hold ten of each other',
  '5,000 nested fallbacks of a variable',
  'a square of 740,000 dashes',
  'b-1050.svg',
  'b-1487.svg',
]);

describe.each([...HEAVY_DRAWINGS])('a run over %s', (_, make) => {
  test.each([0, 2, BETWEEN_STEPS, 150])('ends at once when it is cancelled after %i looks', (most) => {
    const text = make();
    const { result, looks } = stoppedAfter(most, 'cancelled', () => check(text, { budget: Infinity }));
    // A run that was over by then did not miss the order to stop.
    if (result instanceof Stopped) expect(looks).toBe(most + 1);
    else expect(looks).toBeLessThanOrEqual(most);
  });

  test('gives a report that says what is lacking when its time is over', () => {
    const text = make();
    const { result } = stoppedAfter(3, 'time', () => check(text, { budget: Infinity }));
    expect(result).not.toBeInstanceOf(Stopped);
    expect((result as ReturnType<typeof check>).findings.map(({ check: id }) => id)).toContain('unfinished');
  });
});

test.each([...HEAVY_DRAWINGS].filter(([name]) => !SOON_DONE.has(name)))(
  'the watch is asked within the steps of %s',
  (_, make) => {
    const text = make();
    const { looks } = stoppedAfter(BETWEEN_STEPS, 'cancelled', () => check(text, { budget: Infinity }));
    expect(looks).toBeGreaterThan(BETWEEN_STEPS);
  },
);

test('thirty doublings of use are one square that is cut twice', () => {
  const text = HEAVY_DRAWINGS.get('thirty doublings of use')?.() ?? '';
  const { sheets, findings } = check(text, { budget: Infinity });
  expect(sheets.map(({ openings }) => openings.map(areaOf))).toEqual([[expect.closeTo(1)]]);
  expect(new Set(sheets[0]?.fills).size).toBe(1);
  expect(findings.filter(({ check: id }) => id === 'doubled-cut')).toHaveLength(1);
  expect(findings.map(({ check: id }) => id)).not.toContain('unfinished');
});
