import { describe, expect, it } from 'vitest';
import { hashOfText } from '../../src/text/hash';

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
