import { describe, expect, it } from 'vitest';
import { quoted, shortened } from '../../src/text/wording';

describe('names in messages', () => {
  it('are as they are where there is room, in one line', () => {
    expect(shortened('Heron', 8)).toBe('Heron');
    expect(shortened('Heron\n  and reeds', 20)).toBe('Heron and reeds');
  });

  it('lose their middle, so that those that differ at the end stay apart', () => {
    expect(shortened('Layer 12 copy 3', 10)).toBe('Layer …y 3');
    expect(shortened('Layer 12 copy 4', 10)).toBe('Layer …y 4');
    expect([...shortened('🦩'.repeat(30), 10)]).toHaveLength(10);
    expect(shortened('🦩'.repeat(30), 10)).toMatch(/^🦩+…🦩+$/u);
  });

  it('share their room: a short one leaves its own to a long one', () => {
    expect(quoted(['Fur', 'Water lilies at dusk'], 24)).toEqual(['"Fur"', '"Water lilie… dusk"']);
    expect(quoted(['Water lilies at dusk', 'Fur'], 24)).toEqual(['"Water lilie… dusk"', '"Fur"']);
    const both = quoted(['a'.repeat(200), 'b'.repeat(200)], 24).join('');
    expect(both).toHaveLength(24);
  });
});
