/** Each way out of the server for the words of a stranger's file: findings, outline, hovers, the lightbulb, the bench. */
import { expect, test } from 'vitest';
import { CancellationToken, type MarkupContent } from 'vscode-languageserver';
import { STACK } from '../../src/protocol/index';
import { Priority } from '../../src/protocol/run-signals';
import { diagnosticOf } from '../../src/server/documents/diagnostics';
import { codeActions } from '../../src/server/features/code-actions';
import { hoverAt } from '../../src/server/features/hover';
import { documentSymbols } from '../../src/server/features/symbols';
import { HOSTILE_NAMES } from '../text/hostile-names';
import { LocalServer } from './local-server';

const RING = 'M5 5h20v20h-20z M10 10v10h10v-10z';

const escaped = (name: string): string => name.replace(/[&<"]/g, (mark) => `&#${mark.charCodeAt(0)};`);

/** A layer with a shape, a paint and a reference for each of the names. */
function drawing(names: readonly string[]): string {
  const layers = names.map((name, i) => {
    const word = escaped(name);
    const shapes = `<path id="${word}" d="${RING}"/><use href="#${word}-gone"/><text>${word}</text>`;
    return `<g id="${word}-${i}" fill="${word}" transform="translate(0 ${i * 30})"><title>${word}</title>${shapes}</g>`;
  });
  const size = `width="60mm" height="${names.length * 30}mm" viewBox="0 0 60 ${names.length * 30}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" ${size}>${layers.join('\n')}</svg>`;
}

/** Lines and tabs are the file's own where a text is shown as such. */
const CONTROLS =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]|[\u{e0000}-\u{e007f}]|\p{Cs}/u;

/** All texts within something, however deep, but for edits: those are of the file. */
function texts(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) =>
    /^(edits?|uri|href|id|data|key)$/.test(key) ? [] : texts(each),
  );
}

/** What of a text in Markdown is not escaped, less what we write in it ourselves: bold words, lists and our picture. */
function bare(markdown: string): string {
  return markdown.replace(/!\[[^\]]*\]\(data:image\/svg\+xml;base64,[\w+/=]*\)/g, '').replace(/\\[!-/:-@[-`{-~]/g, '');
}

const SHARES = [0, 1, 2].map((share) => HOSTILE_NAMES.filter((_, i) => i % 3 === share).map(([, name]) => name));

test.each(SHARES)(
  '%j and others are shown by nothing as more than words',
  async (...names) => {
    const text = drawing(names);
    const server = new LocalServer('file:///hostile.svg', text);
    const known = await server.known();
    const { live, engine } = server;
    const question = { kind: 'bench', method: STACK, params: { uri: known.uri } } as const;
    const plain = [
      ...known.facts.findings.map((finding) => diagnosticOf(finding, known, () => undefined)),
      documentSymbols(known, live),
      await engine.ask(question, Priority.chosen).answer,
    ];
    expect(known.facts.findings.length).toBeGreaterThan(2 * names.length);
    for (const each of plain.flatMap(texts)) expect(each).not.toMatch(CONTROLS);
    const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const asked = { textDocument: { uri: known.uri }, range, context: { diagnostics: [] } };
    const actions = await codeActions({ known, live, engine }, asked, CancellationToken.None);
    expect(actions.length).toBeGreaterThan(0);
    for (const { title, disabled } of actions) expect(title + (disabled?.reason ?? '')).not.toMatch(CONTROLS);
    let hovers = 0;
    for (const { index } of text.matchAll(/<(?:g|path|use|text)\b/g)) {
      const contents = (await hoverAt(known, live, index + 2, engine))?.contents as MarkupContent | undefined;
      if (!contents) continue;
      hovers += 1;
      expect(contents.value).not.toMatch(CONTROLS);
      expect(bare(contents.value)).not.toMatch(/[<>[\]`~@$]|:\/\/|!\[/);
    }
    expect(hovers).toBeGreaterThan(names.length);
    server.dispose();
  },
  120_000,
);
