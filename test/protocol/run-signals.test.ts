import { expect, test } from 'vitest';
import { Priority, RunSignals } from '../../src/protocol/run-signals';

test('what one side marks, the other sees', () => {
  const server = new RunSignals();
  const worker = new RunSignals(server.memory);
  server.cancel(7);
  expect([6, 7, 8].map((id) => worker.isCancelled(id))).toEqual([false, true, false]);
});

test('something more urgent is known of until it is heard', () => {
  const server = new RunSignals();
  const worker = new RunSignals(server.memory);
  server.sent(Priority.chosen);
  expect(worker.isMoreUrgent(Priority.background)).toBe(true);
  expect(worker.isMoreUrgent(Priority.glance)).toBe(true);
  expect(worker.isMoreUrgent(Priority.chosen)).toBe(false);
  worker.heard(Priority.chosen);
  expect(worker.isMoreUrgent(Priority.background)).toBe(false);
});
