import { expect, test } from 'vitest';
import { Priority } from '../../src/protocol/run-signals';
import { type Task, TaskQueue } from '../../src/worker/task-queue';

const task = (id: number, priority: Priority): Task => ({ id, priority, gaveWay: false, run: () => undefined });
const order = (queue: TaskQueue) => Array.from({ length: queue.size }, () => queue.next()?.id);

test('the most urgent comes first, and of those the one that came first', () => {
  const queue = new TaskQueue();
  queue.add(task(1, Priority.background));
  queue.add(task(2, Priority.check));
  queue.add(task(3, Priority.chosen));
  queue.add(task(4, Priority.check));
  expect(order(queue)).toEqual([3, 2, 4, 1]);
});

test('what was interrupted comes before its equals, and what is cancelled not at all', () => {
  const queue = new TaskQueue();
  for (const id of [1, 2, 3]) queue.add(task(id, Priority.check));
  const first = queue.next()!;
  queue.addAgain(first);
  expect(queue.remove(2)).toBe(true);
  expect(queue.remove(9)).toBe(false);
  expect(order(queue)).toEqual([1, 3]);
});
