import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrapPathData } from '../../../src/edits/path/wrap';
import { wrapPaths } from '../../../src/engine/fixes/wrap-paths';
import { parseMarkup } from '../../../src/markup/parse';
import { parsePathData } from '../../../src/markup/path-data';
import { applyEdits } from '../../../src/text/text';

const number = fc.oneof(
  fc.integer({ min: -999, max: 999 }).map(String),
  fc.double({ min: -50, max: 50, noNaN: true }).map((value) => value.toFixed(3)),
  fc.constantFrom('.5', '-.25', '1e2', '-1.5e-1', '+3'),
);
const blank = fc.constantFrom(' ', ',', ' , ', '  ', '\n', '\t', ',\r\n');
/** Nothing between two numbers where none need be. */
const gapBefore = (next: string) => fc.oneof(blank, fc.constant(/^[-+]/.test(next) ? '' : ' '));
const list = (count: number) =>
  fc
    .array(number, { minLength: count, maxLength: count })
    .chain((numbers) =>
      fc
        .tuple(...numbers.map((each, i) => (i === 0 ? fc.constant('') : gapBefore(each))))
        .map((gaps) => numbers.map((each, i) => `${gaps[i]}${each}`).join('')),
    );
const flag = fc.constantFrom('0', '1');
/** Flags as close as the grammar lets them stand: `a1 1 0 016-4`. */
const arc = fc
  .tuple(
    fc.constantFrom('a', 'A'),
    list(3),
    flag,
    fc.constantFrom('', ' '),
    flag,
    fc.constantFrom('', ' ', ','),
    list(2),
  )
  .map(
    ([letter, radii, large, between, sweep, after, end]) =>
      `${letter}${radii} ${large}${between}${sweep}${after}${end}`,
  );
const command = fc.oneof(
  arc,
  list(2).map((numbers) => `L${numbers}`),
  fc.array(list(2), { minLength: 1, maxLength: 5 }).map((pairs) => `l${pairs.join(' ')}`),
  list(6).map((numbers) => `c${numbers}`),
  list(1).map((numbers) => `h${numbers}`),
  fc.constant('z'),
);
const pathData = fc
  .array(fc.tuple(list(2), fc.array(command, { maxLength: 12 })), { minLength: 1, maxLength: 4 })
  .map((subpaths) => subpaths.map(([start, commands]) => `M${start}${commands.join('')}`).join(''));

const wrapped = (data: string, width: number, column = 9): string =>
  applyEdits(data, wrapPathData(data, { width, column, lineBreak: `\n${' '.repeat(column)}` }));

const meaning = (data: string) => {
  const { commands, error } = parsePathData(data);
  return { commands: commands.map(({ letter, written, values }) => ({ letter, written, values })), error };
};

describe('wrapping path data', () => {
  it('leaves what is drawn, and changes white space alone', () => {
    fc.assert(
      fc.property(pathData, fc.integer({ min: 20, max: 120 }), (data, width) => {
        const after = wrapped(data, width);
        expect(meaning(after)).toEqual(meaning(data));
        expect(after.replace(/\s/g, '')).toBe(data.replace(/\s/g, ''));
      }),
      { numRuns: 300 },
    );
  });

  it('leaves no line too long that holds more than one command, and is done after one run', () => {
    fc.assert(
      fc.property(pathData, fc.integer({ min: 20, max: 120 }), (data, width) => {
        const plain = data.replace(/[\r\n]/g, ' ');
        const after = wrapped(plain, width);
        expect(wrapped(after, width)).toBe(after);
        const { commands } = parsePathData(after);
        for (const [i, { span }] of commands.entries()) {
          const next = commands[i + 1]?.span;
          if (!next || after.slice(span.to, next.from).includes('\n')) continue;
          const lineStart = after.lastIndexOf('\n', span.from) + 1;
          expect(next.to - lineStart + (lineStart === 0 ? 9 : 0)).toBeLessThanOrEqual(width);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('leaves short lines and their breaks as they are', () => {
    const data = 'M0 0 H40\n  V40 H0 Z\n  M10 10 V30 Z';
    expect(wrapPathData(data, { width: 100, column: 9, lineBreak: '\n' })).toEqual([]);
  });

  it('begins each subpath of a long line on a line of its own, under the others', () => {
    const data = 'M0 0 H40 V40 H0 Z M10 10 V30 H30 V10 Z m40 0 h5 v5 z';
    expect(wrapped(data, 30, 6)).toBe('M0 0 H40 V40 H0 Z\n      M10 10 V30 H30 V10 Z\n      m40 0 h5 v5 z');
  });

  it('goes on with the indentation that the path has', () => {
    expect(wrapped('M0 0 H40\n   V40 H0 V30 H1 V20 Z', 16, 0)).toBe('M0 0 H40\n   V40 H0 V30 H1\n   V20 Z');
  });

  it('keeps a comma between two sets of numbers', () => {
    expect(wrapped('M0 0,10 10,20 20,30 30', 16, 0)).toBe('M0 0,10 10,20 20,\n30 30');
  });
});

describe('wrapping the paths of a document', () => {
  const long = Array.from({ length: 40 }, (_, i) => `L${i} ${i * i}`).join(' ');
  const svg = `<svg>\r\n  <path id="a" d="M0 0 ${long}"/>\r\n  <g><path id="b" d='m1 1 ${long}'/></g>\r\n  <path d="M0&#32;0 ${long}"/>\r\n</svg>\r\n`;
  const document = parseMarkup(svg);

  it('keeps to the width, to the line ends of the file and under the first command', () => {
    const after = applyEdits(svg, wrapPaths(document, 80));
    const lines = after.split('\r\n');
    expect(after.replace(/\r\n/g, '')).not.toContain('\n');
    expect(lines.filter((line) => !line.includes('&#32;') && line.length > 83)).toEqual([]);
    expect(lines[2]).toMatch(/^ {18}L/);
    expect(wrapPaths(parseMarkup(after), 80)).toEqual([]);
  });

  it('wraps only the path at the caret where there is one', () => {
    const edits = wrapPaths(document, 80, svg.indexOf('id="b"'));
    expect(edits.length).toBeGreaterThan(0);
    expect(edits.every(({ span }) => span.from > svg.indexOf('id="b"'))).toBe(true);
    expect(wrapPaths(document, 80, 2)).toEqual([]);
  });

  it('leaves data with character references alone', () => {
    expect(wrapPaths(document, 80).every(({ span }) => span.to < svg.indexOf('&#32;'))).toBe(true);
  });

  it('indents by the element where the data begin far to the right', () => {
    const far = `<svg>\n\t<path class="${'x'.repeat(60)}" d="M0 0 ${long}"/>\n</svg>`;
    expect(applyEdits(far, wrapPaths(parseMarkup(far))).split('\n')[2]).toMatch(/^\t\tL/);
  });
});
