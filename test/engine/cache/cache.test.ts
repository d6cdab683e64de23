import { describe, expect, it } from 'vitest';
import { Cache, type CacheNode } from '../../../src/engine/cache/cache';

/** Answers of as many bytes as their text is long. */
const node: CacheNode<string, string> = { name: 'node', key: (text) => text, bytes: (value) => value.length };

/** Asks for texts, and says which of them had to be worked out. */
function asker(limit: number) {
  const cache = new Cache(limit);
  const made: string[] = [];
  const ask = (text: string, slot?: { name: string; trial: boolean }) =>
    cache.ask(
      node,
      text,
      (previous) => {
        made.push(previous === undefined ? text : `${text} after ${previous}`);
        return text;
      },
      slot,
    );
  return { cache, made, ask };
}

const slot = { name: 'file', trial: false };
const trial = { name: 'file', trial: true };

describe('a cache', () => {
  it('gives what it knows, under the number that it had', () => {
    const { cache, made, ask } = asker(100);
    const first = ask('a');
    expect(ask('b').id).not.toBe(first.id);
    expect(ask('a')).toBe(first);
    expect(made).toEqual(['a', 'b']);
    expect(cache.counts().get('node')).toEqual({ hits: 1, misses: 2 });
  });

  it('tells apart nodes that have the same key', () => {
    const cache = new Cache(100);
    cache.ask(node, 'a', () => 'one');
    expect(cache.ask({ ...node, name: 'other' }, 'a', () => 'two').value).toBe('two');
  });

  it('lets go of what was not asked for longest, under one bound for all nodes', () => {
    const { cache, made, ask } = asker(6);
    ask('aa');
    ask('bb');
    ask('cc');
    ask('aa');
    cache.ask({ ...node, name: 'other' }, 'dd', () => 'dd');
    expect(cache.bytes).toBe(6);
    ask('aa');
    ask('cc');
    ask('bb');
    expect(made).toEqual(['aa', 'bb', 'cc', 'bb']);
  });

  it('keeps the last answer even where it is larger than the bound', () => {
    const { cache, made, ask } = asker(3);
    ask('a');
    ask('very large');
    ask('very large');
    expect(made).toEqual(['a', 'very large']);
    expect(cache.bytes).toBe(10);
    ask('b');
    expect(cache.bytes).toBe(1);
  });

  it('works out what is tried from what was tried before, until the slot has another last answer', () => {
    const { made, ask } = asker(100);
    ask('a', slot);
    for (const text of ['one', 'two']) ask(text, trial);
    ask('b', slot);
    ask('three', trial);
    ask('a', slot);
    ask('c', trial);
    expect(made).toEqual(['a', 'one after a', 'two after one', 'b after a', 'three after b', 'c after a']);
  });

  it('works out what is tried from the last answer where what was tried is gone', () => {
    const { cache, made, ask } = asker(6);
    ask('aa', slot);
    ask('bbb', trial);
    ask('aa');
    cache.ask({ ...node, name: 'other' }, 'cccc', () => 'cccc');
    ask('aa', slot);
    ask('d', trial);
    expect(made.at(-1)).toBe('d after aa');
  });

  it('works out the next answer of a slot from the last one, not from one that was only tried', () => {
    const { made, ask } = asker(100);
    ask('a', slot);
    ask('tried', trial);
    ask('b', slot);
    ask('tried', slot);
    ask('c', slot);
    ask('a', slot);
    ask('d', slot);
    ask('e', { ...slot, name: 'another file' });
    expect(made).toEqual(['a', 'tried after a', 'b after a', 'c after tried', 'd after a', 'e']);
  });

  it('forgets the last answer of a slot with the answer itself', () => {
    const { made, ask } = asker(1);
    ask('a', slot);
    ask('b');
    ask('c', slot);
    expect(made).toEqual(['a', 'b', 'c']);
  });

  it('keeps an answer that a slot is worked out from, as if it had been asked for', () => {
    const { made, ask } = asker(3);
    ask('a', slot);
    ask('x');
    ask('y', trial);
    ask('z');
    ask('b', slot);
    expect(made).toEqual(['a', 'x', 'y after a', 'z', 'b after a']);
  });

  it('makes a known answer the last one of a slot', () => {
    const { cache, made, ask } = asker(100);
    ask('a', slot);
    ask('tried', trial);
    cache.settle(node, 'tried', slot);
    cache.settle(node, 'unknown', slot);
    ask('b', slot);
    expect(made.at(-1)).toBe('b after tried');
  });

  it('keeps nothing of what failed, nor what is not whole', () => {
    const { cache, made, ask } = asker(100);
    const fail = () => {
      throw new Error('stopped');
    };
    expect(() => cache.ask(node, 'a', fail)).toThrow('stopped');
    ask('a');
    const halves = { ...node, name: 'halves', isWhole: (value: string) => value !== 'half' };
    const half = cache.ask(halves, 'b', () => 'half');
    expect(cache.ask(halves, 'b', () => 'whole')).toMatchObject({ value: 'whole' });
    expect(cache.ask(halves, 'b', () => 'again').value).toBe('whole');
    expect(half.id).not.toBe(cache.ask(halves, 'b', () => 'again').id);
    const fromHalf = () => `from ${cache.ask(halves, 'c', () => 'half').value}`;
    expect(cache.ask(node, 'd', fromHalf).value).toBe('from half');
    expect(cache.ask(node, 'd', () => 'whole').value).toBe('whole');
    expect(made).toEqual(['a']);
  });
});
