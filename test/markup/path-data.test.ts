import { describe, expect, it } from 'vitest';
import { parsePathData } from '../../src/markup/path-data';

/** The commands in short: letter, values, and `~` where the letter is left out. */
function commandsOf(data: string): string[] {
  const { commands } = parsePathData(data);
  return commands.map(({ letter, values, written }) => letter + values.join(' ') + (written ? '' : '~'));
}

function underlined(data: string): string | undefined {
  const { error } = parsePathData(data);
  return error && data.slice(error.span.from, error.span.to);
}

describe('parsePathData', () => {
  it('gives the place of each command and each number', () => {
    const data = ' M 10,-2e1 .5.5 h3 z';
    const { commands } = parsePathData(data);
    const spans = commands.map(({ span, valueSpans }) => [span, ...valueSpans]);
    const written = spans.map((row) => row.map(({ from, to }) => data.slice(from, to)));
    expect(written).toEqual([['M 10,-2e1', '10', '-2e1'], ['.5.5', '.5', '.5'], ['h3', '3'], ['z']]);
  });

  it.each([
    ['', undefined, []],
    ['  \n', undefined, []],
    ['none', undefined, []],
    [' none ', undefined, []],
    ['23', '23', []],
    ['L1 1', 'L', []],
    ['#', '#', []],
    ['😀M0 0', '😀', []],
    ['M', 'M', []],
    ['M1', 'M1', []],
    ['M1,', 'M1', []],
    ['M,1 1', ',', []],
    ['M1,,1', ',', []],
    ['M1,1,', ',', ['M1 1']],
    ['M1,1,L2 2', ',', ['M1 1']],
    ['M1 1 L', 'L', ['M1 1']],
    ['M1 1 L z', 'L', ['M1 1']],
    ['M1 1 x', 'x', ['M1 1']],
    ['M1 1 H2em', 'e', ['M1 1', 'H2']],
    ['M1 1 z 5', '5', ['M1 1', 'z']],
    ['M1 1 z,L2 2', ',', ['M1 1', 'z']],
    ['M1 1 C 1 2 3 4 5 6 7 8', '7 8', ['M1 1', 'C1 2 3 4 5 6']],
    ['M1 1 H 1e999', '1e999', ['M1 1']],
    ['M1 1 H -', '-', ['M1 1']],
    ['M1 1 H .', '.', ['M1 1']],
    ['M1 1 é', 'é', ['M1 1']],
  ])('reads %j up to the first error, which is %j', (data, wrong, commands) => {
    expect(underlined(data)).toBe(wrong);
    expect(commandsOf(data)).toEqual(commands);
  });

  it('says what stands there and what was expected', () => {
    const message = (data: string): string | undefined => parsePathData(data).error?.message;
    expect(message('M0 0 L 20,20,30')).toBe('L needs x and y: y is missing.');
    expect(message('M0 0 R 20')).toBe('"R" is not a path command: one of M L H V C S Q T A Z was expected.');
    expect(message('M0 0 z 7')).toBe('The number 7 cannot follow Z: a command letter was expected.');
  });
});
