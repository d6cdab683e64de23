import { expect, test } from 'vitest';
import { Measures } from '../../../src/preview/state/measures';
import { BenchRequests } from '../../../src/preview/state/requests';
import { type BenchState, FIRST_STATE } from '../../../src/preview/state/state';
import type { BenchRequest } from '../../../src/protocol/requests';
import { madeStack } from '../made-stack';

/** A server that answers when it is told to. */
function made() {
  const asked: { id: number; question: BenchRequest }[] = [];
  const questions = new BenchRequests((id, question) => asked.push({ id, question }));
  let drawn = 0;
  const measures = new Measures(questions, () => {
    drawn += 1;
  });
  const answer = async (value: unknown) => {
    const { id } = asked.at(-1) ?? { id: 0 };
    questions.hear(id, value);
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { asked, measures, answer, drawn: () => drawn };
}

const slipped = (x: number): BenchState => ({ ...FIRST_STATE, slips: { heron: { x, y: 0, turn: 0 } } });
const bare = (area: number) => ({ version: 1, seams: 'M0 0L1 0L1 1Z', places: 1, area, whole: area });

test('of a drag only the last place is asked for once an answer is there', async () => {
  const { asked, measures, answer, drawn } = made();
  const stack = madeStack({ names: ['sun', 'heron'] });
  for (const x of [0.1, 0.2, 0.3]) measures.update(stack, slipped(x));
  expect(asked).toHaveLength(1);
  await answer(bare(1));
  expect(drawn()).toBe(1);
  measures.update(stack, slipped(0.3));
  expect(asked).toHaveLength(2);
  await answer(bare(3));
  measures.update(stack, slipped(0.3));
  expect(asked).toHaveLength(2);
  expect(measures.figures.bare?.area).toBe(3);
});

test('a new stack is asked about anew; the old figures stay until then', async () => {
  const { asked, measures, answer } = made();
  measures.update(madeStack({ names: ['sun', 'heron'] }), slipped(0.1));
  await answer(bare(1));
  const next = madeStack({ version: 2, names: ['sun', 'heron'] });
  measures.update(next, slipped(0.1));
  expect(asked).toHaveLength(2);
  expect(measures.figures.bare?.area).toBe(1);
  await answer(bare(2));
  expect(measures.figures.bare?.area).toBe(2);
});

test('in register nothing is asked, and nothing is bare', async () => {
  const { asked, measures, answer } = made();
  const stack = madeStack({ names: ['sun', 'heron'] });
  measures.update(stack, slipped(0.1));
  await answer(bare(1));
  measures.update(stack, slipped(0));
  expect(asked).toHaveLength(1);
  expect(measures.bareOutline).toBe('');
});

test('the necks of a sheet are asked for once, and are those of no other', async () => {
  const { asked, measures, answer } = made();
  const stack = madeStack({ names: ['sun', 'heron'] });
  const sheet = (index: number): BenchState => ({ ...FIRST_STATE, mode: 'sheet', sheet: index });
  measures.update(stack, sheet(1));
  measures.update(stack, sheet(1));
  expect(asked.map(({ question }) => question)).toEqual([{ kind: 'necks', layer: '#1' }]);
  await answer({ version: 1, layer: '#1', necks: [{ width: 1, from: { x: 0, y: 0 }, to: { x: 1, y: 0 } }] });
  expect(measures.necks(sheet(1))).toHaveLength(1);
  expect(measures.necks(sheet(0))).toEqual([]);
});

test('the sweep asks for one layer after the other, and stops where the stack has changed', async () => {
  const { asked, measures, answer } = made();
  measures.update(madeStack({ names: ['sun', 'reeds', 'heron'] }), FIRST_STATE);
  const done = measures.sweep();
  await answer({ layer: 0 });
  expect(measures.figures.sweeps).toHaveLength(1);
  measures.update(madeStack({ version: 2, names: ['sun'] }), FIRST_STATE);
  await answer({ layer: 1 });
  await done;
  expect(asked).toHaveLength(2);
  expect(measures.figures).toMatchObject({ sweeps: [], sweeping: false });
});
