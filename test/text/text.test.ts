import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/text/text';

describe('applyEdits', () => {
  it('replaces, inserts and deletes, in any order given', () => {
    const edits = [
      { span: { from: 4, to: 5 }, text: '' },
      { span: { from: 0, to: 1 }, text: 'A' },
      { span: { from: 2, to: 2 }, text: '-' },
    ];
    expect(applyEdits('abcde', edits)).toBe('Ab-cd');
  });

  it.each([
    [
      [
        { from: 0, to: 3 },
        { from: 2, to: 4 },
      ],
    ],
    [[{ from: 4, to: 9 }]],
    [[{ from: 3, to: 1 }]],
  ])('refuses %j', (spans) => {
    expect(() =>
      applyEdits(
        'abcde',
        spans.map((span) => ({ span, text: '' })),
      ),
    ).toThrow(RangeError);
  });
});
