import { describe, expect, it } from 'vitest';
import { resolveVariables, substituteVariables } from '../../../src/drawing/style/variables';

const lookup =
  (values: Record<string, string>) =>
  (name: string): string | undefined =>
    values[name];

describe('substituteVariables', () => {
  it.each([
    ['red', 'red'],
    ['var(--a)', 'A'],
    [' x var( --a ) y ', ' x A y '],
    ['var(--b, 2px 3px)', '2px 3px'],
    ['var(--b,)', ''],
    ['var(--b, var(--c, var(--a)))', 'A'],
    ['VAR(--a) var(--a)', 'A A'],
    ['var(--b, f(1, 2))', 'f(1, 2)'],
  ])('%j gives %j', (text, expected) => {
    expect(substituteVariables(text, lookup({ '--a': 'A' }))).toBe(expected);
  });

  it.each(['var(--b)', 'var(--a', 'x var(--b, var(--c))'])('%j is invalid', (text) => {
    expect(substituteVariables(text, lookup({ '--a': 'A' }))).toBeUndefined();
  });
});

describe('resolveVariables', () => {
  const resolve = (own: Record<string, string>, inherited: Record<string, string> = {}): Record<string, string> =>
    Object.fromEntries(resolveVariables(new Map(Object.entries(own)), new Map(Object.entries(inherited))));

  it('own ones over inherited ones, whatever their order', () => {
    expect(resolve({ '--a': 'var(--b)', '--b': '1' }, { '--c': '2' })).toEqual({ '--a': '1', '--b': '1', '--c': '2' });
    expect(resolve({ '--a': 'var(--c)' }, { '--a': '0', '--c': '2' })).toEqual({ '--a': '2', '--c': '2' });
  });

  it('those in a circle count as not stated, even where they are inherited', () => {
    expect(resolve({ '--a': 'var(--b)', '--b': 'var(--a)' }, { '--a': '0' })).toEqual({});
    expect(resolve({ '--a': 'var(--a)' })).toEqual({});
  });
});
