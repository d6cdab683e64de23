import { describe, expect, it } from 'vitest';
import { hashOfText, NumbersHash } from '../../src/text/hash';

describe('hashOfText', () => {
  it('is the same for the same text', () => {
    expect(hashOfText('M0 0h10')).toBe(hashOfText(`M0 0h${5 + 5}`));
  });

  it('tells apart texts that differ by one unit anywhere, or by their order', () => {
    const text = '<svg><path d="M10 10H90V90H10Z"/></svg>';
    const others = [...text].flatMap((_, i) =>
      ['0', 'é', '\u{10000}'].map((unit) => text.slice(0, i) + unit + text.slice(i)),
    );
    const swapped = [...text].map((_, i) => text.slice(i) + text.slice(0, i));
    const texts = new Set([...others, ...swapped]);
    expect(new Set([...texts].map(hashOfText)).size).toBe(texts.size);
  });

  it('spreads: of 200,000 short texts no two share one', () => {
    const hashes = new Set<string>();
    for (let i = 0; i < 200_000; i += 1) hashes.add(hashOfText(`M${i} ${i % 7}z`));
    expect(hashes.size).toBe(200_000);
  });
});

describe('the hash of numbers', () => {
  const hashOf = (numbers: readonly number[]): number => {
    const hash = new NumbersHash();
    for (const number of numbers) hash.add(number);
    return hash.take();
  };

  it('is the same for the same numbers, zeros of either sign among them', () => {
    expect(hashOf([0.1, -0, 7])).toBe(hashOf([0.1, 0, 7]));
  });

  it('tells apart numbers by their last bit, their sign and their order', () => {
    const rows = [[1, 2], [2, 1], [1, -2], [1 + Number.EPSILON, 2], [1, 2, 0], [2 ** 52, 2], [2 ** 53 - 1, 2], [], [0]];
    expect(new Set(rows.map(hashOf)).size).toBe(rows.length);
  });

  it('begins anew once it was taken', () => {
    const hash = new NumbersHash();
    hash.add(1);
    hash.take();
    hash.add(2);
    expect(hash.take()).toBe(hashOf([2]));
  });

  it('spreads: of 200,000 places no two share one', () => {
    const hashes = new Set<number>();
    for (let i = 0; i < 200_000; i += 1) hashes.add(hashOf([i % 500, Math.floor(i / 500) / 1000, 3]));
    expect(hashes.size).toBe(200_000);
  });
});
