import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/index';
import { dotsIn } from '../../../src/format/snippet/dots';
import { type Snippet, snippetOf } from '../../../src/format/snippet/snippet';
import { snippetLines } from '../../../src/format/snippet/snippet-text';

/** A ring with an island of 8 mm, and two openings with a bridge of 0.4 mm between them. */
const SHEET = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60" data-tombolo-reading="openings">
  <path fill-rule="evenodd" d="M10 10 h20 v20 h-20 z M16 16 h8 v8 h-8 z"/>
  <path d="M50 10 h20 v20 h-20 z M70.4 10 h20 v20 h-20 z"/>
</svg>`;

const report = check(SHEET);
const drawn = (id: string): Snippet => {
  const found = report.findings.find((finding) => finding.check === id);
  const snippet = found && snippetOf(found, report.sheets);
  if (!snippet) throw new Error(`no ${id} to draw`);
  return snippet;
};

describe('snippetOf', () => {
  it('shows an island whole, hatched within what is cut out', () => {
    const { lines, column, line, width } = drawn('floating-island');
    expect(lines).toHaveLength(6);
    expect(new Set(lines.map(({ length }) => length))).toEqual(new Set([26]));
    // 8 mm high, three quarters of 24 dots.
    expect(width).toBeCloseTo((52 * 8) / (0.75 * 24), 6);
    const middle = lines[line] ?? '';
    expect(dotsIn(middle[column] ?? '')).toBe(4);
    expect(middle).toMatch(/^\u2800.⣿{6}/);
    expect(lines[0]).toContain('⣿⣿⣿');
  });

  it('shows a bridge as a gap that can be seen, between openings', () => {
    const { lines, column, line } = drawn('thin-bridge');
    const row = lines[line] ?? '';
    const around = row.slice(column - 3, column + 4);
    expect(around.slice(0, 2)).toBe('⣿⣿');
    expect(around.slice(-2)).toBe('⣿⣿');
    expect([...around].some((cell) => dotsIn(cell) < 8)).toBe(true);
  });

  it('draws nothing of what has no place', () => {
    const [found] = report.findings;
    const { at: _at, ...nowhere } = found ?? expect.fail();
    expect(snippetOf(nowhere, report.sheets)).toBeUndefined();
    expect(snippetOf(found ?? expect.fail(), [])).toBeUndefined();
  });
});

describe('snippetLines', () => {
  const snippet: Snippet = { lines: ['⣿⣿⠀⢕', '⣿⠇⠀⢕'], column: 2, line: 1, width: 12.345 };
  const asIs = (words: string) => words;

  it('frames the place and points to it', () => {
    expect(snippetLines(snippet, 'braille', asIs, asIs)).toEqual([
      '  ╭────╮',
      '  │⣿⣿⠀⢕│',
      '▸ │⣿⠇⠀⢕│',
      '  ╰──▴─╯ 12 mm',
    ]);
  });

  it('makes do with ASCII', () => {
    expect(snippetLines(snippet, 'plain', asIs, asIs)).toEqual(['  +----+', '  |## +|', '> |#. +|', '  +--^-+ 12 mm']);
  });

  it('colours the pointers as the finding, and dims the frame', () => {
    const lines = snippetLines(
      snippet,
      'braille',
      (words) => `<${words}>`,
      (words) => `(${words})`,
    );
    expect(lines[2]).toBe('<▸> (│)⣿⠇⠀⢕(│)');
    expect(lines[3]).toBe('  (╰──)<▴>(─╯) (12 mm)');
  });
});
