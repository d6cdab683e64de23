/**
 * Path data against published sources: SVG 2, "Paths", sections "The grammar for path data" and "Error handling in path
 * data" (https://www.w3.org/TR/SVG2/paths.html), and the W3C SVG 1.1 Second Edition test suite, paths-data-18-f,
 * paths-data-19-f and paths-data-20-f. svgpath is a second reader.
 */
import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { parsePathData } from '../../src/markup/path-data';

function commandsOf(data: string): string[] {
  return parsePathData(data).commands.map(({ letter, values }) => [letter, ...values].join(' '));
}

function underlined(data: string): string | undefined {
  const { error } = parsePathData(data);
  return error && data.slice(error.span.from, error.span.to);
}

describe('SVG 2, "The grammar for path data"', () => {
  it.each([
    ['M 0.6.5', ['M 0.6 0.5']],
    ['M 100-200', ['M 100 -200']],
    ['m 1 2 3 4', ['m 1 2', 'l 3 4']],
    ['M 1 2 3 4', ['M 1 2', 'L 3 4']],
    ['M 100 100 L 200 200', ['M 100 100', 'L 200 200']],
    ['M100 100L200 200', ['M 100 100', 'L 200 200']],
    ['M 100 200 L 200 100 -100 -200', ['M 100 200', 'L 200 100', 'L -100 -200']],
    ['M0 0zl1 1', ['M 0 0', 'z', 'l 1 1']],
    ['M0 0a1,1 0 0110,20', ['M 0 0', 'a 1 1 0 0 1 10 20']],
    ['', []],
    ['none', []],
  ])('%j', (data, commands) => {
    expect(commandsOf(data)).toEqual(commands);
    expect(underlined(data)).toBeUndefined();
  });

  it('takes a point without digits behind it, as SVG 1.1 did and user agents may', () => {
    expect(commandsOf('M23. 5.H7.')).toEqual(['M 23 5', 'H 7']);
    expect(underlined('M23. 5.H7.')).toBeUndefined();
  });

  it('takes arc radii with a minus sign ("Out-of-range elliptical arc parameters" drops the sign)', () => {
    expect(commandsOf('M0 0A-5 -3 0 0 1 9 9')).toEqual(['M 0 0', 'A -5 -3 0 0 1 9 9']);
  });
});

describe('SVG 2, "Error handling in path data"', () => {
  it.each([
    ['M 10,10 L 20,20,30', ['M 10 10', 'L 20 20'], '30'],
    ['M0.5.5-1', ['M 0.5 0.5'], '-1'],
    ['L 10 10', [], 'L'],
    ['M0 0 L 1 1 R 2 2', ['M 0 0', 'L 1 1'], 'R'],
  ])('%j is drawn up to the error', (data, commands, wrong) => {
    expect(commandsOf(data)).toEqual(commands);
    expect(underlined(data)).toBe(wrong);
  });
});

describe('W3C SVG 1.1 tests', () => {
  it.each([
    ['M 20 100 H 40#90', 'M 20 100 H 40', '#'],
    ['M 20 100 H 40.5 0.6', 'M 20 100 H 40.5.6', undefined],
    ['M 20 100 h 10 -20', 'M 20 100 h 10-20', undefined],
  ])('paths-data-18-f: %j is %j', (data, same, wrong) => {
    expect(commandsOf(data)).toEqual(commandsOf(same));
    expect(underlined(data)).toBe(wrong);
    expect(underlined(same)).toBeUndefined();
  });

  it.each([...'HVhvLlCcSsQqTtAa'])('paths-data-19-f: %s repeated is its numbers repeated', (letter) => {
    const four = '1 2 3 4';
    const sets: Record<string, string> = { H: '5', V: '5', C: '1 2 3 4 5 6', S: four, Q: four, A: '1 2 3 0 1 5 6' };
    const set = sets[letter.toUpperCase()] ?? '1 2';
    const apart = `M0 0 ${letter} ${set} ${letter} ${set}`;
    expect(commandsOf(`M0 0 ${letter} ${set} ${set}`)).toEqual(commandsOf(apart));
    expect(commandsOf(apart)).toHaveLength(3);
  });

  it.each([
    ['M0 0 a25,25 0 10 -25,25z', 'M0 0 a25,25 0 1,0 -25,25 z'],
    ['M0 0 a25,25 0 1125,25 z', 'M0 0 a25,25 0 1,1 25,25 z'],
    // resvg test suite, structure of run-together numbers and flags.
    ['M10-20A5.5.3-4 010-.1', 'M 10 -20 A 5.5 0.3 -4 0 1 0 -0.1'],
  ])('paths-data-20-f: %j is %j', (data, same) => {
    expect(commandsOf(data)).toEqual(commandsOf(same));
    expect(underlined(data)).toBeUndefined();
  });

  it.each([
    ['M0 0 h 25 a25,25 0 6 0 -25,25z', '6'],
    ['M0 0 h 25 a25,25 0 0 7 -25,25z', '7'],
    ['M0 0 h 25 a25,25 0 -1 0 -25,25z', '-'],
    ['M0 0 h 25 a25,2501 025,-25', '-'],
  ])('paths-data-20-f: nothing of %j is drawn after the h', (data, wrong) => {
    expect(commandsOf(data)).toEqual(['M 0 0', 'h 25']);
    expect(underlined(data)).toBe(wrong);
  });
});

describe('svgpath reads the same up to the error', () => {
  // Left out: a lone point, which svgpath takes for a number, numbers such as 01, which it refuses, and infinite ones,
  // which it takes.
  const pieces = [...'MLHVCSQTAZmlhvcsqtaz', '0', '1', '10', '-2.5', '.5', '1e2', '+3', ',', ' ', ' ', '#', '-'];
  const anyData = fc
    .array(fc.constantFrom(...pieces), { maxLength: 40 })
    .map((parts) => `M1 2${parts.join('')}`)
    .filter((data) => !/(?<![\d.])0\d|e\d{3}/.test(data));

  it('on any mixture of letters, numbers and signs', () => {
    fc.assert(
      fc.property(anyData, (data) => {
        const other = svgpath(data) as unknown as { segments: [string, ...number[]][]; err: string };
        const { commands, error } = parsePathData(data);
        expect(error === undefined).toBe(other.err === '');
        // svgpath drops sets that were whole where a later one of the same letter is not.
        const mine = commands.map(({ letter, values }) => [letter, ...values.map((value) => value + 0)]);
        expect(mine.slice(0, other.segments.length)).toEqual(absoluteStart(other.segments, data));
        if (error === undefined) expect(mine).toHaveLength(other.segments.length);
      }),
      { numRuns: 2000 },
    );
  });
});

/** svgpath turns a first `m` into `M`. */
function absoluteStart(segments: [string, ...number[]][], data: string): [string, ...number[]][] {
  const [first, ...others] = segments;
  if (first === undefined) return [];
  return [[data.trimStart().charAt(0), ...(first.slice(1) as number[])], ...others].map(
    ([letter, ...values]) => [letter, ...values.map((value) => Number(value) + 0)] as [string, ...number[]],
  );
}
