/** Projects of several files in the server: what is found in one of them, told where it can be mended. */
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import type { CodeAction, Diagnostic, TextDocumentEdit, TextEdit } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { BridgeOffer, PreviewStack } from '../../src/protocol/index';
import { ring, sheet, square } from '../engine/project-files';
import { buildServer } from './build-server';
import { ServerProcess } from './server-process';

const layers = [{ from: 'sun.svg' }, { from: 'birds/heron.svg', name: 'heron', paint: '#3b4a54' }];
const config = JSON.stringify({ layers });
const sun = sheet(ring(5, 5));
const heron = sheet(square(30, 30, 10));

let built: Awaited<ReturnType<typeof buildServer>>;
let server: ServerProcess;

beforeAll(async () => {
  built = await buildServer();
});
afterAll(() => built.remove());
beforeEach(async () => {
  server = await ServerProcess.start(built.file);
  mkdirSync(path.join(server.folder, 'birds'));
  server.write('tombolo.json', config);
  server.write('sun.svg', sun);
  server.write('birds/heron.svg', heron);
});
afterEach(async () => {
  await server.stop();
});

const whole = (text: string) => [{ text }];
const codes = (diagnostics: readonly Diagnostic[]) => diagnostics.map(({ code }) => code);

/** The last diagnostics of a file that are as they should be. */
const published = (name: string, wanted: (codes: unknown[]) => boolean) =>
  server.until(`findings in ${name}`, () => {
    const last = server.published.findLast(({ uri }) => uri === server.uri(name));
    return last && wanted(codes(last.diagnostics)) ? last : undefined;
  });

const changedOnDisk = (name: string) =>
  server.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri: server.uri(name), type: 2 }],
  });

test('files that are not open are read from disk, and are clear again when the project is gone', async () => {
  const document = await server.open('birds/heron.svg', heron);
  expect(await server.diagnostics(document)).toEqual([]);
  const { version } = await published('sun.svg', (found) => found.includes('floating-island'));
  expect(version).toBeUndefined();
  await server.close(document);
  await published('sun.svg', (found) => found.length === 0);
});

test('a file that changes on disk is checked again, and one that is open is not read from there', async () => {
  await server.open('birds/heron.svg', heron);
  await published('sun.svg', (found) => found.length === 1);
  server.write('sun.svg', sheet(square(5, 5, 10)));
  await changedOnDisk('sun.svg');
  await published('sun.svg', (found) => found.length === 0);
  server.write('birds/heron.svg', sheet(ring(30, 30)));
  server.write('sun.svg', sun);
  await changedOnDisk('birds/heron.svg');
  await changedOnDisk('sun.svg');
  await published('sun.svg', (found) => found.length === 1);
  const ofHeron = server.published.filter(({ uri }) => uri.endsWith('heron.svg'));
  expect(ofHeron.flatMap(({ diagnostics }) => diagnostics)).toEqual([]);
});

test('what lies between two files is told in one, with the place in the other, and follows edits', async () => {
  const [left, right] = [sheet(square(5, 5, 20)), (x: number) => sheet(square(x, 5, 20))];
  server.write('sun.svg', left);
  const document = await server.open('birds/heron.svg', right(25.2));
  const { uri, diagnostics } = await server.until('a bare gap', () =>
    server.published.findLast((sent) => codes(sent.diagnostics).includes('bare-gap')),
  );
  const gap = diagnostics.find(({ code }) => code === 'bare-gap');
  const others = gap?.relatedInformation?.map(({ location }) => location.uri) ?? [];
  expect([uri, ...others]).toEqual(expect.arrayContaining([server.uri('sun.svg'), server.uri('birds/heron.svg')]));
  const name = uri.endsWith('sun.svg') ? 'sun.svg' : 'birds/heron.svg';
  await server.change(document, whole(right(22)));
  await published(name, (found) => !found.includes('bare-gap'));
  const open = await server.open('sun.svg', left);
  await server.change(open, whole(sheet(square(1.7, 5, 20))));
  await server.until(
    'a gap again',
    () => codes(server.published.at(-1)?.diagnostics ?? []).includes('bare-gap') || undefined,
  );
});

test('entries that name nothing are underlined in tombolo.json, and the rest is checked', async () => {
  server.write('tombolo.json', JSON.stringify({ layers: [...layers, { from: 'moon.svg' }, { from: 'sun.svg#disc' }] }));
  await server.open('birds/heron.svg', heron);
  // One fault of its own, and that its tombolo.json has faults.
  await published('sun.svg', (found) => found.length === 2 && found.includes('floating-island'));
  const { diagnostics } = await published('tombolo.json', (found) => found.length === 2);
  expect(diagnostics.map(({ message }) => String(message).slice(0, 40))).toEqual([
    'No readable file "moon.svg": the stack i',
    'No element has the id "disc": the stack ',
  ]);
  server.write('moon.svg', sun);
  await changedOnDisk('moon.svg');
  await published('tombolo.json', (found) => found.length === 1);
  await published('moon.svg', (found) => found.includes('floating-island'));
});

test('an open tombolo.json alone brings the findings of its files, and its unsaved layers count', async () => {
  const document = await server.open('tombolo.json', config);
  await published('sun.svg', (found) => found.length === 1);
  await server.change(document, whole(JSON.stringify({ layers: layers.slice(1) })));
  await published('sun.svg', (found) => found.length === 0);
  await server.close(document);
  rmSync(path.join(server.folder, 'tombolo.json'));
});

test('the stack of any file is the whole print, each layer and finding with its document', async () => {
  const document = await server.open('birds/heron.svg', heron);
  const stack = await server.connection.sendRequest<PreviewStack>('tombolo/stack', { uri: document.uri });
  expect(stack.uri).toBe(document.uri);
  expect(stack.documents).toEqual([
    { uri: document.uri, version: 1 },
    { uri: server.uri('sun.svg'), version: 0 },
  ]);
  expect(stack.layers.map(({ name, paint, uri }) => [name, paint, uri])).toEqual([
    ['sun', '#000000', server.uri('sun.svg')],
    ['heron', '#3b4a54', document.uri],
  ]);
  expect(stack.findings.map(({ check, layer, uri }) => [check, layer, uri])).toEqual([
    ['floating-island', 0, server.uri('sun.svg')],
  ]);
});

test('bridges that the bench asks for are for the document of their layer', async () => {
  const document = await server.open('birds/heron.svg', heron);
  await server.diagnostics(document);
  const stack = await server.connection.sendRequest<PreviewStack>('tombolo/stack', { uri: document.uri });
  const offer = await server.connection.sendRequest<BridgeOffer>('tombolo/bridgePlan', {
    uri: document.uri,
    finding: stack.findings[0]?.id,
  });
  expect(offer).toMatchObject({ uri: server.uri('sun.svg'), version: 0, kind: 'bridge-island' });
  expect(offer.bridges.map(({ layer }) => layer)).toEqual(['sun.svg#0', 'sun.svg#0']);
});

test('mends of a file that is open name its version, however its neighbours stand', async () => {
  const document = await server.open('sun.svg', sun);
  const [island] = await server.diagnostics(document);
  const [first] = await server.actions(document, island!);
  const [edit] = (first?.edit?.documentChanges ?? []) as TextDocumentEdit[];
  expect(edit?.textDocument).toEqual({ uri: document.uri, version: 1 });
});

test('register marks are one change of all files of the stack, also of those that are not open', async () => {
  const document = await server.open('birds/heron.svg', heron);
  await server.diagnostics(document);
  const start = { line: 0, character: 2 };
  const actions = await server.connection.sendRequest<CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri: document.uri },
    range: { start, end: start },
    context: { diagnostics: [], only: ['refactor'] },
  });
  const [marks] = actions.filter(({ title }) => /register marks/.test(title));
  const changes = marks?.edit?.documentChanges as TextDocumentEdit[] | undefined;
  expect(changes?.map(({ textDocument }) => textDocument)).toEqual([
    { uri: document.uri, version: 1 },
    { uri: server.uri('sun.svg'), version: null },
  ]);
  const { edits } = changes?.[1] ?? { edits: [] };
  server.write('sun.svg', TextDocument.applyEdits(TextDocument.create('', 'xml', 0, sun), edits as TextEdit[]));
  await changedOnDisk('sun.svg');
  await published('birds/heron.svg', (found) => found.includes('frame-mismatch'));
});
