/** `tombolo.run` and `tombolo.severity`: when what was found is told, and as how serious. */
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { PreviewStack } from '../../src/protocol/index';
import { ring, sheet } from '../engine/project-files';
import { buildServer } from './build-server';
import { RESOLVES, ServerProcess } from './server-process';

const stencil = (...rings: string[]) =>
  sheet(rings.join(''), 'data-tombolo-reading="openings" width="60mm" height="60mm"');
const one = stencil(ring(5, 5));
const two = stencil(ring(5, 5), ring(30, 30));

let built: Awaited<ReturnType<typeof buildServer>>;
let server: ServerProcess;

beforeAll(async () => {
  built = await buildServer();
});
afterAll(() => built.remove());
beforeEach(async () => {
  server = await ServerProcess.start(built.file, RESOLVES);
});
afterEach(async () => {
  await server.stop();
});

const told = () => [server.checked.length, server.published.length];

const islands = ({ uri }: TextDocument) =>
  server.published.findLast((sent) => sent.uri === uri)?.diagnostics.filter(({ code }) => code === 'floating-island')
    .length ?? 0;

const isTold = (what: string, document: TextDocument, count: number) =>
  server.until(what, () => (islands(document) === count && server.checked.length > 0) || undefined);

/** What the editor asks of its own accord and on behalf of the artist. */
async function askEverything({ uri }: TextDocument, offset: number): Promise<void> {
  const textDocument = { uri };
  const position = { line: 0, character: offset };
  const range = { start: position, end: position };
  await server.connection.sendRequest('textDocument/documentSymbol', { textDocument });
  await server.connection.sendRequest('textDocument/hover', { textDocument, position });
  for (const triggerKind of [1, 2]) {
    const context = { diagnostics: [], triggerKind };
    const actions = await server.connection.sendRequest<object[]>('textDocument/codeAction', {
      textDocument,
      range,
      context,
    });
    for (const action of actions.slice(0, 1)) await server.connection.sendRequest('codeAction/resolve', action);
  }
  await server.connection.sendRequest('tombolo/shapeAt', { uri, offset });
  expect(await server.connection.sendRequest('tombolo/stack', { uri })).not.toBeNull();
}

const placeIn = (text: string) => text.indexOf('<path') + 10;

describe('run', () => {
  it('manual tells nothing of a stencil before it is asked to, whatever else is asked', async () => {
    await server.set({ run: 'manual', delay: 0 });
    const document = await server.open('ring.svg', one);
    await askEverything(document, placeIn(one));
    expect(told()).toEqual([0, 0]);
    await server.connection.sendRequest('tombolo/checkAgain', { uri: document.uri });
    await isTold('one island', document, 1);
    const before = told();
    await server.change(document, [{ text: two }]);
    await askEverything(document, placeIn(two));
    await server.connection.sendNotification('textDocument/didSave', { textDocument: { uri: document.uri } });
    await askEverything(document, placeIn(two));
    expect(told()).toEqual(before);
    await server.connection.sendRequest('tombolo/checkAgain', { uri: document.uri });
    await isTold('two islands', document, 2);
  });

  it('onSave tells on opening and on saving, whatever is asked between', async () => {
    await server.set({ run: 'onSave', delay: 0 });
    const document = await server.open('ring.svg', one);
    await isTold('one island', document, 1);
    const before = told();
    await server.change(document, [{ text: two }]);
    await askEverything(document, placeIn(two));
    expect(told()).toEqual(before);
    await server.connection.sendNotification('textDocument/didSave', { textDocument: { uri: document.uri } });
    await isTold('two islands', document, 2);
  });

  it('holds for the files of a project too', async () => {
    await server.set({ run: 'onSave', delay: 0 });
    server.write('tombolo.json', JSON.stringify({ layers: [{ from: 'ring.svg' }] }));
    const document = await server.open('ring.svg', one);
    await isTold('one island', document, 1);
    const before = told();
    await server.change(document, [{ text: two }]);
    await askEverything(document, placeIn(two));
    expect(told()).toEqual(before);
    await server.connection.sendNotification('textDocument/didSave', { textDocument: { uri: document.uri } });
    await isTold('two islands', document, 2);
  });

  it('set to onType, what was not checked yet is checked at once', async () => {
    await server.set({ run: 'manual', delay: 0 });
    const document = await server.open('ring.svg', one);
    await server.set({ run: 'onType', delay: 0 });
    await isTold('one island', document, 1);
  });

  it('a fix of a text that was not told of is for that text', async () => {
    await server.set({ run: 'onSave', delay: 0 });
    const document = await server.open('ring.svg', one);
    await isTold('one island', document, 1);
    await server.change(document, [{ text: two }]);
    const actions = await server.actionsAt(document, two.indexOf('h6v6') + 2);
    const bridge = actions.find(({ title }) => /bridge/i.test(title));
    expect(bridge, actions.map(({ title }) => title).join()).toBeDefined();
    const resolved = await server.connection.sendRequest('codeAction/resolve', bridge);
    expect(resolved).toMatchObject({ edit: { documentChanges: [{ textDocument: { version: 2 } }] } });
  });
});

describe('severity', () => {
  it('makes findings less serious, or leaves them out, in the text, the counts and the bench', async () => {
    const document = await server.open('ring.svg', two);
    const levels = () =>
      server.published.findLast(({ uri }) => uri === document.uri)?.diagnostics.map(({ severity }) => severity) ?? [];
    await isTold('two islands', document, 2);
    expect(levels()).toEqual([1, 1]);
    expect(await server.actionsAt(document, two.indexOf('h6v6') + 2)).not.toEqual([]);
    const runs = server.checked.length;
    await server.set({ delay: 20, severity: { 'floating-island': 'hint', nonsense: 'loud' } });
    await server.until('hints', () => levels()[0] === 4 || undefined);
    await expect.poll(() => server.checked.at(-1)?.summary?.counts).toEqual({ error: 0, warning: 0, info: 0, hint: 2 });
    expect(server.checked.length).toBe(runs + 1);
    const ask = () => server.connection.sendRequest<PreviewStack>('tombolo/stack', { uri: document.uri });
    expect((await ask()).findings.map(({ severity }) => severity)).toEqual(['hint', 'hint']);
    await server.set({ delay: 20, severity: { 'floating-island': 'off' } });
    await server.until('none', () => levels().length === 0 || undefined);
    expect((await ask()).findings).toEqual([]);
    expect(await server.actionsAt(document, two.indexOf('h6v6') + 2)).toEqual([]);
    await server.set({ delay: 20 });
    await isTold('two islands', document, 2);
  });
});
