import { describe, expect, it, test } from 'vitest';
import { parseNumberList, parseViewBoxNumbers, readPoints } from '../../src/markup/number-lists';

type Read = (text: string) => { readonly error: { readonly span: { from: number; to: number } } | undefined };

function underlined(read: Read, text: string): string | undefined {
  const { error } = read(text);
  return error && text.slice(error.span.from, error.span.to);
}

describe('lists of numbers', () => {
  it('knows where each number stands', () => {
    const text = ' 1,-2.5 .5.5\n1e2 ';
    const { values, spans, error } = parseNumberList(text);
    expect(values).toEqual([1, -2.5, 0.5, 0.5, 100]);
    expect(spans.map(({ from, to }) => text.slice(from, to))).toEqual(['1', '-2.5', '.5', '.5', '1e2']);
    expect(error).toBeUndefined();
  });

  it.each([
    ['', [], undefined],
    ['1 2 x', [1, 2], 'x'],
    ['1,,2', [1], ','],
    ['1,', [1], ','],
    ['10px', [10], 'p'],
    ['1e999', [], '1e999'],
  ])('reads %j as %j up to %j', (text, values, wrong) => {
    expect(parseNumberList(text).values).toEqual(values);
    expect(underlined(parseNumberList, text)).toBe(wrong);
  });
});

test.each([
  ['0,0 10,0 10,10', [0, 0, 10, 0, 10, 10], undefined],
  ['0,0 10,0 7', [0, 0, 10, 0], '7'],
  ['7', [], '7'],
  ['1 2 3 #', [1, 2], '#'],
])('points %j', (text, values, wrong) => {
  expect(readPoints(text).values).toEqual(values);
  expect(underlined(readPoints, text)).toBe(wrong);
});

test.each([
  ['0 0 148 105', [0, 0, 148, 105], undefined],
  ['0 0 148 0', [0, 0, 148, 0], undefined],
  [' 0 0 148 ', [], '0 0 148'],
  ['0 0 -1 5', [], '-1'],
  ['', [], ''],
  ['0 0 1 2 3', [], '0 0 1 2 3'],
])('viewBox %j', (text, values, wrong) => {
  expect(parseViewBoxNumbers(text).values).toEqual(values);
  expect(underlined(parseViewBoxNumbers, text)).toBe(wrong);
});
