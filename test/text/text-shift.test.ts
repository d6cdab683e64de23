import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextShift } from '../../src/text/text-shift';

describe('a place of a text that was edited', () => {
  it('moves with what stands behind the edit, and stays before it', () => {
    const shift = new TextShift('<path d="M0 0"/><g/>', '<path d="M12 0"/><g/>');
    expect(shift.forward(3)).toBe(3);
    expect(shift.forward(16)).toBe(17);
    expect(shift.back(17)).toBe(16);
    expect(shift.forwardSpan({ from: 16, to: 20 })).toEqual({ from: 17, to: 21 });
  });

  it('is at the end of the edit where it was replaced', () => {
    const shift = new TextShift('abcdef', 'aXf');
    expect([1, 2, 3, 4, 5].map((offset) => shift.forward(offset))).toEqual([2, 2, 2, 2, 2]);
  });

  it('of a stretch stays at its ends, whatever is put in beside it', () => {
    expect(new TextShift('<g/>b', '<g/> b').forwardSpan({ from: 0, to: 4 })).toEqual({ from: 0, to: 4 });
    expect(new TextShift('a<g/>', 'a <g/>').forwardSpan({ from: 1, to: 5 })).toEqual({ from: 2, to: 6 });
  });

  it('keeps its character, whatever was edited elsewhere', () => {
    const kept = fc.string({ unit: fc.constantFrom('a', 'b', ' '), maxLength: 12 });
    const edited = fc.string({ unit: fc.constantFrom('x', 'y'), maxLength: 12 });
    fc.assert(
      fc.property(kept, edited, edited, kept, (head, cut, put, tail) => {
        const [before, after] = [head + cut + tail, head + put + tail];
        const shift = new TextShift(before, after);
        for (let offset = 0; offset < head.length; offset += 1) {
          expect(after[shift.forward(offset)]).toBe(before[offset]);
        }
        for (let offset = before.length - tail.length; offset < before.length; offset += 1) {
          expect(after[shift.forward(offset)]).toBe(before[offset]);
          expect(shift.back(shift.forward(offset))).toBe(offset);
        }
      }),
    );
  });
});
