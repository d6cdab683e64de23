import { expect, test } from 'vitest';
import type { CheckRequest, FromWorker, ToWorker } from '../../../src/protocol/engine-worker';
import { Priority } from '../../../src/protocol/run-signals';
import { EngineClient } from '../../../src/server/engine/engine-client';

/** Workers that do nothing but what the test makes them do. */
function made() {
  const heard: ToWorker[][] = [];
  const lost: string[][] = [];
  const logged: string[] = [];
  const workers: { hear: (message: FromWorker) => void; end: (reason: string) => void }[] = [];
  const engine = new EngineClient(
    (hear, end) => {
      const messages: ToWorker[] = [];
      heard.push(messages);
      workers.push({ hear, end });
      return { post: (message) => messages.push(message), end: () => undefined };
    },
    { offers: () => undefined, restarted: (keys) => lost.push([...keys]), log: (line) => logged.push(line) },
  );
  return { engine, heard, lost, logged, workers };
}

const check = (text: string): CheckRequest => ({
  kind: 'check',
  key: 'file:///sun.svg',
  files: [{ name: '', uri: 'file:///sun.svg', version: 1, open: true, text }],
  config: undefined,
  project: false,
  always: false,
});

const textsSent = (messages: readonly ToWorker[] = []) =>
  messages.flatMap((message) =>
    message.type === 'ask' && message.request.kind === 'check' ? message.request.files.map(({ text }) => text) : [],
  );

test('a text is sent when it has changed, and again to a new worker', () => {
  const { engine, heard, workers } = made();
  for (const text of ['<svg/>', '<svg/>', '<svg />']) engine.ask(check(text), Priority.check);
  expect(textsSent(heard[0])).toEqual(['<svg/>', undefined, '<svg />']);
  workers[0]?.end('test');
  engine.ask(check('<svg />'), Priority.check);
  expect(textsSent(heard[1])).toEqual(['<svg />']);
});

test('what was cancelled is answered at once, and the late answer is dropped', async () => {
  const { engine, heard, workers } = made();
  const { answer, cancel } = engine.ask(check('<svg/>'), Priority.check);
  expect(engine.checking).toBe(true);
  cancel();
  expect(await answer).toBeUndefined();
  expect(engine.checking).toBe(false);
  expect(heard[0]?.at(-1)).toEqual({ type: 'cancel', id: 1 });
  workers[0]?.hear({ type: 'answer', id: 1, answer: 'late' });
});

test('when a worker dies nobody waits in vain, and it is said once which checks are lost', async () => {
  const { engine, lost, logged, workers } = made();
  const { answer } = engine.ask(check('<svg/>'), Priority.check);
  workers[0]?.end('out of memory');
  expect(await answer).toBeUndefined();
  expect(lost).toEqual([['file:///sun.svg']]);
  expect(logged).toEqual([expect.stringMatching(/out of memory/)]);
});

test('a worker that dies again and again is not given its work again', () => {
  const { engine, lost, workers } = made();
  for (let turn = 0; turn < 4; turn += 1) {
    engine.ask(check('<svg/>'), Priority.check);
    workers[turn]?.end('again');
  }
  expect(lost).toHaveLength(2);
});

test('a worker that is told to end is not started again', () => {
  const { engine, heard, logged, workers } = made();
  engine.ask(check('<svg/>'), Priority.check);
  engine.dispose();
  workers[0]?.end('exit code 1');
  expect(logged).toEqual([]);
  expect(heard).toHaveLength(1);
});
