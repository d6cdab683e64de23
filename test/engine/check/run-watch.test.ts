import { describe, expect, test as it } from 'vitest';
import { checkpoint, lookNow } from '../../../src/base/checkpoint';
import { RunWatch, workOfCheck } from '../../../src/engine/check/run-watch';
import type { Settings } from '../../../src/report/report';

const WORK = 1_000_000;

/** Steps that are made before the part of a run is stopped, of `most` at most. */
function stepsOf(watch: RunWatch, stage: 'reading' | 'measuring' | 'checking', isLast: boolean, most: number): number {
  let steps = 0;
  const work = () => {
    for (; steps < most; steps += 1000) checkpoint(1000);
  };
  watch.part(stage, isLast, work, () => undefined);
  return steps;
}

/** The watch is asked every few thousand steps. */
const expectAbout = (steps: number, share: number) => expect(Math.abs(steps / WORK - share)).toBeLessThan(0.01);

function watchOf(settings: Settings = { work: WORK }): RunWatch {
  const watch = new RunWatch(settings);
  watch.grant('');
  return watch;
}

describe('the work of a run', () => {
  it('keeps some for the checks where reading and measuring would never end', () => {
    const watch = watchOf();
    expectAbout(stepsOf(watch, 'reading', true, Infinity), 0.7);
    expectAbout(stepsOf(watch, 'measuring', true, Infinity), 0.15);
    expectAbout(stepsOf(watch, 'checking', true, Infinity), 0.15);
  });

  it('leaves half of what there is to those after a part, and all to the last', () => {
    const watch = watchOf();
    expectAbout(stepsOf(watch, 'measuring', false, Infinity), 0.425);
    expectAbout(stepsOf(watch, 'measuring', true, Infinity), 0.425);
  });

  it('is there for the checks where measuring took little', () => {
    const watch = watchOf();
    stepsOf(watch, 'measuring', true, 100_000);
    expectAbout(stepsOf(watch, 'checking', true, Infinity), 0.9);
  });

  it('is granted to each file for itself', () => {
    const watch = watchOf();
    stepsOf(watch, 'measuring', true, Infinity);
    watch.grant('');
    expectAbout(stepsOf(watch, 'measuring', true, Infinity), 0.85);
  });

  it('is some for any text, and more for each character', () => {
    expect(workOfCheck('', {})).toBe(18e6);
    expect(workOfCheck(' '.repeat(1_000_000), {})).toBe(658e6);
    expect(workOfCheck(' '.repeat(1_000_000), { work: WORK })).toBe(WORK);
  });

  it('does not begin a part where none is left, and says why', () => {
    const watch = watchOf({ work: 0 });
    expect(watch.part('checking', true, lookNow, (lack) => lack)).toBe('work');
  });

  it('is without end where time is', () => {
    const watch = watchOf({ budget: Infinity });
    expect(stepsOf(watch, 'reading', false, 100 * WORK)).toBe(100 * WORK);
  });
});
