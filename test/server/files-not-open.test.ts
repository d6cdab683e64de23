/** What the server does about files that nobody has opened, and about a `tombolo.json` that is broken. */
import { rmSync } from 'node:fs';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, it as test } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver-protocol';
import type { FileChecked, PreviewStack, SafeFixes } from '../../src/protocol/index';
import { applyEdits } from '../../src/text/text';
import { ring, sheet, square } from '../engine/project-files';
import { buildServer } from './build-server';
import { RESOLVES, ServerProcess } from './server-process';

const marked = 'data-tombolo-reading="openings" width="60mm" height="60mm"';

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

const last = (name: string) => server.published.findLast(({ uri }) => uri === server.uri(name));
const codes = (diagnostics: readonly Diagnostic[] | undefined) => diagnostics?.map(({ code }) => code);
const isPublished = (name: string, ...wanted: string[]) =>
  server.until(`${wanted.join()} in ${name}`, () =>
    JSON.stringify(codes(last(name)?.diagnostics)) === JSON.stringify(wanted) ? last(name) : undefined,
  );
const checkFile = (name: string) =>
  server.connection.sendRequest<FileChecked>('tombolo/checkFile', { uri: server.uri(name) });
const changedOnDisk = (name: string) =>
  server.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: [{ uri: server.uri(name), type: 2 }],
  });

describe('files that are not open', () => {
  it('are checked when asked for, and followed on disk', async () => {
    server.write('reeds.svg', sheet(ring(5, 5), marked));
    expect(await checkFile('reeds.svg')).toMatchObject({ stencil: true, counts: { error: 1 } });
    expect((await isPublished('reeds.svg', 'floating-island')).version).toBeUndefined();
    server.write('reeds.svg', sheet(square(5, 5, 12), marked));
    await changedOnDisk('reeds.svg');
    await isPublished('reeds.svg');
    server.write('reeds.svg', sheet(ring(5, 5), marked));
    await changedOnDisk('reeds.svg');
    await isPublished('reeds.svg', 'floating-island');
    rmSync(path.join(server.folder, 'reeds.svg'));
    await changedOnDisk('reeds.svg');
    await isPublished('reeds.svg');
  });

  it('are left in peace where nobody called them stencils, or where there are none', async () => {
    server.write('icon.svg', sheet(ring(5, 5)));
    for (const name of ['icon.svg', 'none.svg']) expect(await checkFile(name)).toMatchObject({ stencil: false });
    expect(server.published).toEqual([]);
  });

  it('opened and closed again, they are as on disk', async () => {
    server.write('reeds.svg', sheet(ring(5, 5), marked));
    await checkFile('reeds.svg');
    const document = await server.open('reeds.svg', sheet(square(5, 5, 12), marked));
    await isPublished('reeds.svg');
    await server.close(document);
    await isPublished('reeds.svg', 'floating-island');
  });

  it('of a project are checked together', async () => {
    server.write('tombolo.json', JSON.stringify({ layers: [{ from: 'sun.svg' }, { from: 'heron.svg' }] }));
    server.write('sun.svg', sheet(ring(5, 5)));
    server.write('heron.svg', sheet(square(30, 30, 10)));
    expect(await checkFile('sun.svg')).toMatchObject({ stencil: true, counts: { error: 1 } });
    expect(await checkFile('heron.svg')).toMatchObject({ stencil: true, counts: { error: 0 } });
    await isPublished('heron.svg');
  });
});

describe('a broken tombolo.json', () => {
  it('is said once in each drawing that it is in force for, and to status item and bench', async () => {
    server.write('tombolo.json', '{ "size": { "width": "60mm" }, "material": "card-0.33", "margin": "wide" }');
    const document = await server.open('sun.svg', `<!-- <svg> -->${sheet(square(5, 5, 12))}`);
    const { diagnostics } = await isPublished('sun.svg', 'tombolo.json');
    const [notice] = diagnostics;
    expect(document.getText(notice?.range)).toBe('svg');
    expect(notice).toMatchObject({ severity: 2, codeDescription: { href: server.uri('tombolo.json') } });
    expect(notice?.message).toMatch(/^tombolo\.json has 2 errors: /);
    expect(notice?.relatedInformation?.map(({ location }) => location.uri)).toEqual(
      Array(2).fill(server.uri('tombolo.json')),
    );
    await expect.poll(() => server.checked.at(-1)?.summary?.configErrors).toBe(2);
    const stack = await server.connection.sendRequest<PreviewStack>('tombolo/stack', { uri: document.uri });
    expect(stack.configErrors).toBe(2);
    server.write('tombolo.json', '{ "size": { "width": "60mm" } }');
    await changedOnDisk('tombolo.json');
    await isPublished('sun.svg');
    await expect.poll(() => server.checked.at(-1)?.summary?.configErrors).toBe(0);
  });
});

describe('all safe fixes', () => {
  const ask = (uri: string) => server.connection.sendRequest<SafeFixes>('tombolo/fixSafe', { uri });

  it('come at once, and leave nothing that is safe to fix', async () => {
    const unstated = 'data-tombolo-reading="openings"';
    const document = await server.open('sun.svg', sheet(square(5, 5, 12), unstated));
    const fixes = await ask(document.uri);
    if (!('documents' in fixes)) throw new Error(fixes.refusal);
    const [{ edits, version } = { edits: [], version: 0 }, ...others] = fixes.documents;
    expect([version, others]).toEqual([1, []]);
    await server.change(document, [{ text: applyEdits(document.getText(), edits) }]);
    expect(await server.diagnostics(document)).toEqual([]);
    expect(await ask(document.uri)).toEqual({ refusal: 'Nothing was found here that needs a fix.' });
  });

  it('where none is safe, that is said', async () => {
    const document = await server.open('sun.svg', sheet(ring(5, 5), marked));
    expect(await ask(document.uri)).toMatchObject({ refusal: expect.stringMatching(/^No fix here is safe/) });
    expect(await server.connection.sendRequest('tombolo/fixSafe', { uri: server.uri('none.svg') })).toBeNull();
  });

  it('where islands are covered, that they can be cut away', async () => {
    const covered =
      '<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="60mm" height="30mm" ' +
      'viewBox="0 0 60 30"><g id="Water"><path d="M5 5h20v20h-20z M10 10v10h10v-10z"/></g>' +
      '<g id="Heron"><path d="M8 8h14v14h-14z"/></g></svg>';
    const document = await server.open('covered.svg', covered);
    await server.diagnostics(document);
    expect(await ask(document.uri)).toMatchObject({
      refusal: expect.stringMatching(/can be cut away by the lightbulb/),
    });
  });

  it('on saving they are offered as soon as they are known', async () => {
    const document = await server.open('sun.svg', sheet(square(5, 5, 12), 'data-tombolo-reading="openings"'));
    const [found] = await server.diagnostics(document);
    const actions = await server.actions(document, found!, ['source.fixAll']);
    expect(actions.map(({ kind }) => kind)).toEqual(['source.fixAll.tombolo']);
  });
});

test('a saved picture in a stencil’s folder is no stencil itself', async () => {
  server.write('tombolo.json', '{}');
  const picture = sheet(ring(5, 5), 'data-tombolo-picture="" width="60mm" height="60mm"');
  server.write('print.svg', picture);
  expect(await checkFile('print.svg')).toMatchObject({ stencil: false });
  await server.open('print.svg', picture);
  await server.until('a first look', () => server.checked.find(({ stencil }) => !stencil));
  expect(server.published.flatMap(({ diagnostics }) => diagnostics)).toEqual([]);
});
