import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import {
  CancellationToken,
  CancellationTokenSource,
  type CodeAction,
  type CodeActionParams,
  type TextDocumentEdit,
  type TextEdit,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { check } from '../../../src/engine/index';
import { codeActions } from '../../../src/server/features/code-actions';
import { resolveAction, resolveAll } from '../../../src/server/features/resolve-action';
import { LocalServer } from '../local-server';

/** Two rings: two islands in one layer. */
const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings"
  width="60mm" height="30mm" viewBox="0 0 60 30">
<path d="M5 5h20v20h-20z M10 10v10h10v-10z"/><path d="M35 5h20v20h-20z M40 10v10h10v-10z"/>
</svg>`;

const uri = 'file:///two.svg';
const all = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
const asked: CodeActionParams = { textDocument: { uri }, range: all, context: { diagnostics: [] } };

let server: LocalServer;

beforeEach(() => {
  server = new LocalServer(uri, text);
});
afterEach(() => server.dispose());

/** What the lightbulb lists, most of it without edits. */
async function listed(params = asked, token = CancellationToken.None): Promise<CodeAction[]> {
  const known = await server.known();
  const { live, engine } = server;
  return codeActions({ known, live, engine }, params, token);
}

/** What can be had, with its edits. */
async function offered(params = asked): Promise<CodeAction[]> {
  const actions = await resolveAll(await listed(params), server.sources, CancellationToken.None);
  return actions.filter(({ disabled }) => !disabled);
}

const titlesOf = (actions: readonly CodeAction[]) => actions.map(({ title }) => title);
const changeOf = (action: CodeAction | undefined) => action?.edit?.documentChanges?.[0] as TextDocumentEdit;

test('the mends of single islands come before that of the layer, which comes once', async () => {
  const titles = titlesOf(await offered());
  const layer = titles.filter((title) => /every island in layer/i.test(title));
  expect(layer, titles.join('; ')).toHaveLength(1);
  const last = titles.findLastIndex((title) => /^Bridge this island/.test(title));
  expect(last).toBeGreaterThan(0);
  expect(titles.indexOf(layer[0] ?? '')).toBeGreaterThan(last);
});

test('nothing is offered to one who no longer asks', async () => {
  const source = new CancellationTokenSource();
  source.cancel();
  expect(await listed(asked, source.token)).toEqual([]);
});

test('edits are for the version that was checked, though the text moves on while they are proven', async () => {
  const [action] = await listed();
  const resolved = await resolveAction(action!, server.sources);
  const change = changeOf(resolved);
  TextDocument.update(server.live, [{ text: `<!-- a line more -->\n${text}` }], 4);
  expect(change.textDocument.version).toBe(3);
  const mended = check(TextDocument.applyEdits(TextDocument.create(uri, 'xml', 3, text), change.edits as TextEdit[]));
  expect(mended.findings.map((finding) => finding.check)).toEqual(['floating-island']);
});

test('a fix that was listed for another text is not made', async () => {
  const [action] = await listed();
  TextDocument.update(server.live, [{ text: text.replace('M10 10v10', 'M10 10v9') }], 4);
  const resolved = await resolveAction(action!, server.sources);
  expect(resolved.edit).toBeUndefined();
  expect(resolved.disabled?.reason).toMatch(/^The drawing has changed since/);
});

test('a fix that is listed before the new text is checked is made in the new text', async () => {
  await listed();
  const later = `<!-- a line more -->\n${text}`;
  TextDocument.update(server.live, [{ text: later }], 4);
  const [action] = await listed();
  const change = changeOf(await resolveAction(action!, server.sources));
  expect(change.textDocument.version).toBe(4);
  const mended = TextDocument.applyEdits(TextDocument.create(uri, 'xml', 4, later), change.edits as TextEdit[]);
  expect(check(mended).findings.map((finding) => finding.check)).toEqual(['floating-island']);
});

test('what has been proven ahead is listed with its full title and its edits', async () => {
  await server.checker.current(uri);
  const full = /^Bridge this island \(\d bridges? of 0\.80 mm\)$/;
  const find = async () => (await listed()).find(({ title }) => full.test(title));
  await expect.poll(find, { timeout: 20_000 }).toBeDefined();
  const proven = await find();
  expect(changeOf(proven).edits.length).toBeGreaterThan(0);
});

describe('at the caret', () => {
  const place = (needle: string, more: string) => {
    const at = server.live.positionAt(server.live.getText().indexOf(needle) + more.length);
    return { start: at, end: at };
  };

  it('a bridge is offered there, before that of the layer', async () => {
    const range = place('M10 10v10', 'M10 10v');
    const titles = titlesOf(await offered({ ...asked, range }));
    const here = titles.findIndex((title) => title.startsWith('Add a bridge at the cursor'));
    expect(here, titles.join('; ')).toBeGreaterThan(0);
    expect(here).toBeLessThan(titles.findIndex((title) => /every island in layer/.test(title)));
  });

  it('a bridge that cannot be there is listed with the reason, once that is known', async () => {
    // An island that is narrower than a bridge.
    server.open(text.replace('M10 10v10h10v-10z', 'M10 10v.3h.3v-.3z'));
    const range = place('M10 10v.3', 'M10 10v');
    const find = (actions: CodeAction[]) => actions.find(({ title }) => title === 'Add a bridge at the cursor');
    const first = find(await listed({ ...asked, range }));
    expect(first?.disabled).toBeUndefined();
    const resolved = await resolveAction(first!, server.sources);
    expect(resolved.edit).toBeUndefined();
    expect(resolved.disabled?.reason).toMatch(
      /^No bridge fits the island at .*, which is narrower than a bridge of 0\.80 mm\. /,
    );
    expect(find(await listed({ ...asked, range }))?.disabled).toEqual(resolved.disabled);
  });

  it('in a bridge its changes are offered to one who asks for them', async () => {
    server.open(
      text.replace(
        'M5 5h20v20h-20z M10 10v10h10v-10z',
        'M5 5h20v9.6h-5v-4.6h-10v4.6h-5z M5 15.4h5v4.6h10v-4.6h5v9.6h-20z',
      ),
    );
    const range = place('M5 15.4h5', 'M5 15.4h');
    const ask = (context: object) => offered({ ...asked, range, context: { diagnostics: [], ...context } });
    expect(titlesOf(await ask({ only: ['refactor'] }))).toEqual([
      'Widen this bridge to 1.20 mm',
      'Widen this bridge to 1.60 mm',
      'Move this bridge 1.60 mm down',
      'Move this bridge 1.60 mm up',
      'Remove this bridge',
    ]);
    expect(await ask({ triggerKind: 2 })).toEqual([]);
    const [wider] = await ask({ only: ['refactor.rewrite'] });
    const bridged = TextDocument.create(uri, 'xml', 3, server.live.getText());
    expect(TextDocument.applyEdits(bridged, changeOf(wider).edits as TextEdit[])).toMatch(/15\.601/);
  });
});

test('where the artist has to write on, the caret goes once the edits are made', async () => {
  const { title, data } = (await listed()).find(({ title }) => /^(?:Accept|Ignore) floating-island/.test(title)) ?? {};
  const resolved = await resolveAction({ title: title ?? '', data }, server.sources);
  const { command } = resolved;
  const [change] = changeOf(resolved).edits as TextEdit[];
  const after = TextDocument.create(uri, 'xml', 4, TextDocument.applyEdits(server.live, change ? [change] : []));
  expect(command).toMatchObject({ command: 'tombolo.goTo', arguments: [uri, expect.anything()] });
  const offset = after.offsetAt(command?.arguments?.[1]);
  expect(after.getText().slice(0, offset)).toMatch(/<!-- tombolo accept floating-island: $/);
  expect(after.getText().slice(offset)).toMatch(/^ -->\n<path/);
});
