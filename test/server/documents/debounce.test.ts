import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Debouncer } from '../../../src/server/documents/debounce';

const runs: string[] = [];
let schedule: Debouncer;

beforeEach(() => {
  vi.useFakeTimers();
  runs.length = 0;
  schedule = new Debouncer();
});
afterEach(() => vi.useRealTimers());

test('each new call pushes back the pending one of the same document, not those of others', () => {
  schedule.schedule(100, 'sun', () => runs.push('sun 1'));
  schedule.schedule(100, 'heron', () => runs.push('heron'));
  vi.advanceTimersByTime(90);
  schedule.schedule(100, 'sun', () => runs.push('sun 2'));
  vi.advanceTimersByTime(50);
  expect(runs).toEqual(['heron']);
  vi.advanceTimersByTime(100);
  expect(runs).toEqual(['heron', 'sun 2']);
});

test('a change that arrives between timer and run still pushes it back', () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  schedule.schedule(100, 'sun', () => runs.push('sun 1'));
  vi.advanceTimersByTime(100);
  schedule.schedule(100, 'sun', () => runs.push('sun 2'));
  return new Promise<void>((resolve) =>
    setImmediate(() => {
      expect(runs).toEqual([]);
      resolve();
    }),
  );
});

test('what is cancelled never runs', () => {
  schedule.schedule(100, 'sun', () => runs.push('sun'));
  schedule.schedule(100, 'heron', () => runs.push('heron'));
  schedule.cancel('sun');
  schedule.cancelAll();
  vi.advanceTimersByTime(1000);
  expect(runs).toEqual([]);
});
