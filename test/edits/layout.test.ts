/** The author finds the text laid out as before a fix, and the caret where it was. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it as test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { bridgeIslands, check } from '../../src/engine/index';
import { applyEdits, type TextEdit } from '../../src/text/text';
import { bridge } from './bridging';

const demo = readFileSync(path.join(import.meta.dirname, '../../media/demo/waymarker.svg'), 'utf8');

/** A head with a muzzle and two ears left bare, a subpath to a line; eyes with a light in each, one path to a line. */
const otter = `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm" viewBox="0 0 90 90">
  <g fill="#8a5a3c">
    <path fill-rule="evenodd" d="M45 17 C51.7 17 57.7 19.2 61.7 23 C63.3 21.2 66.3 20.8 68.3 22.6 C70.5 24.6 70.1 28.2 67.5 29.8 C69.7 33.6 70.9 38 70.7 42.4 C70.3 51.6 63.9 58 56.5 60.6 C52.7 61.9 49.2 62.4 45 62.4 C40.8 62.4 37 61.9 33.2 60.6 C25.8 58 19.4 51.6 19 42.4 C18.8 38 20 33.6 22.2 29.8 C19.6 28.2 19.2 24.6 21.4 22.6 C23.4 20.8 26.4 21.2 28 23 C32 19.2 38 17 45 17 Z
      M45 41 C51 41 58.5 43.5 58.5 49.5 C58.5 55.5 51.5 57.6 45 57.6 C38.5 57.6 31.5 55.5 31.5 49.5 C31.5 43.5 39 41 45 41 Z
      M62.7 26 a1.9 1.9 0 1 0 3.8 0 a1.9 1.9 0 1 0-3.8 0 Z
      M23.5 26 a1.9 1.9 0 1 0 3.8 0 a1.9 1.9 0 1 0-3.8 0 Z"/>
  </g>
  <g fill="#22303a">
    <path fill-rule="evenodd" d="M32.1 36.5 a2.4 2.4 0 1 1 4.8 0 a2.4 2.4 0 1 1-4.8 0 Z M34.6 35.6 a.8.8 0 1 0 1.6 0 a.8.8 0 1 0-1.6 0 Z"/>
  </g>
</svg>
`;

/** The lines that edits reach. */
function linesReached(text: string, edits: readonly TextEdit[]): Set<number> {
  const document = TextDocument.create('file:///a.svg', 'svg', 1, text);
  return new Set(
    edits.flatMap(({ span }) => {
      const [from, to] = [document.positionAt(span.from).line, document.positionAt(span.to).line];
      return Array.from({ length: to - from + 1 }, (_, i) => from + i);
    }),
  );
}

/** As an editor keeps it: moved by what is put in or taken out before it, at the end of what it stood in. */
function caretAfter(edits: readonly TextEdit[], caret: number): number {
  return edits.reduce((at, { span, text }) => {
    if (span.to <= caret) return at + text.length - (span.to - span.from);
    return span.from < caret ? at + text.length - (caret - span.from) : at;
  }, caret);
}

const bridgedDemo = () => {
  const { edits, text, plan } = bridgeIslands(check(demo));
  return { edits, text, bridges: plan };
};

describe.each([
  ['the demo', demo, bridgedDemo],
  ['an otter', otter, () => bridge(otter)],
])('bridges for every island of %s', (_, text, put) => {
  const { edits, text: after, bridges } = put();
  const reached = linesReached(text, edits);

  test('are put in', () => expect(bridges.length).toBeGreaterThan(2));

  test('leave as many lines, each with its indentation', () => {
    const indents = (lines: string) => lines.split('\n').map((line) => /^ */.exec(line)?.[0].length);
    expect(indents(after)).toEqual(indents(text));
  });

  test('leave the other lines alone', () => {
    const [old, now] = [text.split('\n'), after.split('\n')];
    expect(reached.size).toBeLessThan(old.length / 2);
    for (const [line, content] of old.entries()) if (!reached.has(line)) expect(now[line]).toBe(content);
  });

  test('leave a caret on another line where it was', () => {
    const [old, now] = [text, after].map((each) => TextDocument.create('file:///a.svg', 'svg', 1, each));
    for (let line = 0; line < old!.lineCount; line += 1) {
      if (reached.has(line)) continue;
      for (const character of [0, 5]) {
        const caret = old!.offsetAt({ line, character });
        expect(now!.positionAt(caretAfter(edits, caret))).toEqual(old!.positionAt(caret));
      }
    }
  });

  test('are edits that an editor takes, none longer than what has changed', () => {
    const document = TextDocument.create('file:///a.svg', 'svg', 1, text);
    const asRanges = edits.map(({ span, text: newText }) => ({
      range: { start: document.positionAt(span.from), end: document.positionAt(span.to) },
      newText,
    }));
    expect(TextDocument.applyEdits(document, asRanges)).toBe(applyEdits(text, edits));
    for (const { span, text: newText } of edits) {
      const old = text.slice(span.from, span.to);
      expect(/^\w*[ ,]/.exec(old)?.[0] ?? 'nothing').not.toBe(/^\w*[ ,]/.exec(newText)?.[0]);
      expect(old).not.toBe(newText);
    }
  });

  test('have no more digits than a micrometre needs, but where two ends must say where the middle of an arc is', () => {
    const written = edits.flatMap((edit) => [...edit.text.matchAll(/\.(\d+)/g)].map(([, digits]) => digits!.length));
    expect(Math.max(...written)).toBeLessThanOrEqual(4);
    expect(written.filter((digits) => digits > 3).length).toBeLessThan(written.length / 4);
  });
});

test('the lines of the halo, the head and the eye', () => {
  const lineOf = (text: string, start: string) => text.split('\n').findIndex((line) => line.trim().startsWith(start));
  const bridged = bridgedDemo().text.split('\n');
  const halo = lineOf(demo, '<path fill-rule="evenodd" d="M49.6 38');
  expect(bridged[halo]).toMatch(/d="M49\.6 38 a20\.4 20\.4 .* Z$/);
  expect(bridged[halo + 1]).toMatch(/^ {33}M[^M]* Z"\/>$/);
  expect(bridged.slice(halo, halo + 2).join(' ')).not.toMatch(/\b0\.\d/);
  const head = bridge(otter).text.split('\n');
  expect(head.slice(2, 6).map((line) => line.length > 60)).toEqual([true, true, expect.anything(), expect.anything()]);
  expect(bridge(otter, {}, {}, 1).text.split('\n')[8]).toContain('a.8.8 0');
});
