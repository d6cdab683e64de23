/** The engine's worker beside the server: what is answered while it is busy, and what becomes of it. */
import { renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { CodeAction, Diagnostic, Hover, TextDocumentEdit, TextEdit } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { BridgeOffer, PreviewStack } from '../../src/protocol/index';
import { blobSheet } from '../benchmark/seeded';
import { ring as ringAt, sheet } from '../engine/project-files';
import { buildServer } from './build-server';
import { RESOLVES, ServerProcess } from './server-process';

const ring = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="60mm" height="60mm"
  viewBox="0 0 60 60">
<path d="M15 30 a15 15 0 1 1 30 0 a15 15 0 1 1 -30 0 Z M20 30 a10 10 0 1 0 20 0 a10 10 0 1 0 -20 0 Z"/>
</svg>
`;
/** Takes some seconds to check. */
const large = blobSheet(40_000);
const END_WORKER = '<!-- the worker ends here -->';

let built: Awaited<ReturnType<typeof buildServer>>;
let server: ServerProcess;

beforeAll(async () => {
  built = await buildServer();
  // A worker that can be made to end.
  const folder = path.dirname(built.file);
  renameSync(path.join(folder, 'worker.cjs'), path.join(folder, 'real-worker.cjs'));
  const stop = `if (JSON.stringify(message).includes(${JSON.stringify(END_WORKER)})) process.exit(3);`;
  const listen = `require('node:worker_threads').parentPort.on('message', (message) => { ${stop} });`;
  writeFileSync(path.join(folder, 'worker.cjs'), `${listen}\nrequire('./real-worker.cjs');\n`);
});
afterAll(() => built.remove());
beforeEach(async () => {
  server = await ServerProcess.start(built.file, RESOLVES);
});
afterEach(async () => {
  await server.stop();
});

const lastOf = ({ uri }: TextDocument) => server.published.findLast((sent) => sent.uri === uri)?.diagnostics;
const whole = (text: string) => [{ text }];
const resolve = (action: CodeAction) => server.connection.sendRequest<CodeAction>('codeAction/resolve', action);

/** The actions for a finding, when the worker has said what there is. */
async function listed(document: TextDocument, finding: Diagnostic): Promise<CodeAction[]> {
  const actions = await server.actions(document, finding);
  expect(actions.length).toBeGreaterThan(0);
  return actions;
}

function mended(document: TextDocument, { edit }: CodeAction): string {
  const [change] = (edit?.documentChanges ?? []) as TextDocumentEdit[];
  return TextDocument.applyEdits(document, (change?.edits ?? []) as TextEdit[]);
}

describe('an editor that asks for the edits of the action that is chosen', () => {
  it('gets them, for the version that it has', async () => {
    const document = await server.open('ring.svg', ring);
    const [island] = await server.diagnostics(document);
    const bridge = (await listed(document, island!)).find(({ title }) => title.startsWith('Bridge this island'));
    const resolved = await resolve(bridge!);
    await server.change(document, whole(mended(document, resolved)));
    expect(await server.diagnostics(document)).toEqual([]);
    expect(server.shown).toEqual([]);
  });

  it('is told why there are none, and gets none', async () => {
    const document = await server.open('ring.svg', ring);
    const [island] = await server.diagnostics(document);
    const [bridge] = await listed(document, island!);
    await server.change(document, whole(ring.replace('M15 30', 'M14 30')));
    const resolved = await resolve(bridge!);
    expect(resolved.edit).toBeUndefined();
    const said = await server.until('a message', () => server.shown[0]);
    expect(said).toMatch(/: The drawing has changed since; choose the fix again\.$/);
  });
});

describe('while a large drawing is checked', () => {
  it('other documents are answered at once', async () => {
    const document = await server.open('ring.svg', ring);
    const [island] = await server.diagnostics(document);
    const before = await listed(document, island!);
    const busy = await server.open('large.svg', large);
    const textDocument = { uri: document.uri };
    const position = document.positionAt(ring.indexOf('<path') + 2);
    const hover = await server.connection.sendRequest<Hover>('textDocument/hover', { textDocument, position });
    expect(JSON.stringify(hover.contents)).toContain('path');
    const titles = (await server.actions(document, island!)).map(({ title }) => title);
    expect(titles).toHaveLength(before.length);
    expect(await server.connection.sendRequest('textDocument/documentSymbol', { textDocument })).toHaveLength(1);
    expect(server.checked.filter(({ uri }) => uri === busy.uri)).toEqual([]);
    await server.close(busy);
  });

  it('a newer text ends the check of the older one', async () => {
    const document = await server.open('large.svg', large);
    await new Promise((resolve) => setTimeout(resolve, 300));
    await server.change(document, whole(ring));
    expect(await server.diagnostics(document)).toHaveLength(1);
    expect(server.checked.map(({ version }) => version)).toEqual([2]);
  });
});

describe('the measures of a shape', () => {
  it('come from the worker, in whatever layer it is', async () => {
    server.write('tombolo.json', JSON.stringify({ layers: [{ from: 'moon.svg' }, { from: 'sun.svg' }] }));
    server.write('sun.svg', sheet(ringAt(5, 5)));
    const text = sheet(ringAt(30, 30));
    const document = await server.open('moon.svg', text);
    await server.diagnostics(document);
    const position = document.positionAt(text.indexOf('<path') + 2);
    const params = { textDocument: { uri: document.uri }, position };
    const hover = async () =>
      JSON.stringify((await server.connection.sendRequest<Hover>('textDocument/hover', params)).contents);
    await expect.poll(hover, { timeout: 10_000 }).toContain('12.00 × 12.00 mm · 108.00 mm²');
    expect(server.logged.filter((line) => /failed/.test(line))).toEqual([]);
  });
});

describe('a worker that ends', () => {
  it('is started again with the open documents, and what was found stays', async () => {
    const document = await server.open('ring.svg', ring);
    const [island] = await server.diagnostics(document);
    const runs = server.checked.length;
    const deadly = await server.open('end.svg', ring.replace('<path', `${END_WORKER}<path`));
    await server.until('another check', () => server.checked.length > runs || undefined);
    // Once more with a new worker, then no more.
    const [notice, ...others] = await server.until('the end of trying', () => lastOf(deadly));
    expect([notice?.message, others]).toEqual([expect.stringMatching(/stopped twice\. Nothing is known of it/), []]);
    expect(server.logged.filter((line) => /worker ended/.test(line))).toHaveLength(2);
    const emptied = server.published.filter(({ uri, diagnostics }) => uri === document.uri && diagnostics.length === 0);
    expect(emptied).toEqual([]);
    const [bridge] = await listed(document, island!);
    expect(mended(document, await resolve(bridge!))).not.toBe(ring);
    await server.close(deadly);
    await server.until('its notice to go', () => lastOf(deadly)?.length === 0 || undefined);
  });

  it('what was found in an earlier text is marked as old, where it stands now, until another is checked', async () => {
    const document = await server.open('ring.svg', ring);
    const found = await server.diagnostics(document);
    await server.change(document, whole(ring.replace('<path', `${END_WORKER}\n<path`)));
    const shown = await server.until('old findings', () =>
      lastOf(document)?.some(({ code }) => code === 'internal') ? lastOf(document) : undefined,
    );
    expect(shown.map(({ code }) => code)).toEqual(['internal', ...found.map(({ code }) => code)]);
    expect(shown[0]?.message).toMatch(/found in an earlier text/);
    expect(shown.slice(1).map(({ range }) => range.start.line)).toEqual(found.map(({ range }) => range.start.line + 1));
    await server.until('the word that it is old', () => server.checked.find(({ summary }) => summary?.outdated));
    // Whoever asks gets no answer, and kills no worker.
    await server.connection.sendRequest('tombolo/stack', { uri: document.uri });
    expect(server.logged.filter((line) => /worker ended/.test(line))).toHaveLength(2);
    await server.change(document, whole(ring));
    expect((await server.diagnostics(document)).map(({ code }) => code)).toEqual(found.map(({ code }) => code));
  });
});

describe('each bridge goes where it was asked', () => {
  const plan = (uri: string, finding: string | undefined, mend?: string) =>
    server.connection.sendRequest<BridgeOffer>('tombolo/bridgePlan', { uri, finding, mend });
  const stackOf = (uri: string) => server.connection.sendRequest<PreviewStack>('tombolo/stack', { uri });

  it('of two layers with one title into that of its island', async () => {
    const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="60mm" height="60mm"
      viewBox="0 0 60 60"><g><title>sky</title>${ringAt(5, 5)}</g><g><title>sky</title>${ringAt(30, 30)}</g></svg>`;
    const document = await server.open('two.svg', text);
    const islands = (await server.diagnostics(document)).filter(({ code }) => code === 'floating-island');
    const stack = await stackOf(document.uri);
    for (const { id, layer, at } of stack.findings.filter(({ check }) => check === 'floating-island')) {
      const offer = await plan(document.uri, id);
      expect(offer.bridges.map((bridge) => bridge.layer)).toEqual(offer.bridges.map(() => stack.layers[layer!]?.id));
      for (const { from } of offer.bridges) expect(Math.hypot(from.x - at!.x, from.y - at!.y)).toBeLessThan(15);
    }
    expect(islands).toHaveLength(2);
  });

  it('though another file of the project was edited between the look and the click', async () => {
    const layers = [{ from: 'moon.svg' }, { from: 'sun.svg' }];
    server.write('tombolo.json', JSON.stringify({ layers }));
    server.write('sun.svg', sheet(ringAt(5, 5)));
    const moon = await server.open('moon.svg', sheet(`${ringAt(5, 30)}${ringAt(30, 5)}`));
    await server.diagnostics(moon);
    const shown = await stackOf(moon.uri);
    const wanted = shown.findings.find(({ uri, check }) => uri.endsWith('sun.svg') && check === 'floating-island');
    await server.change(moon, whole(sheet(ringAt(5, 30))));
    const offer = await plan(moon.uri, wanted?.id);
    expect(offer.uri).toBe(server.uri('sun.svg'));
    expect(offer.bridges.length).toBeGreaterThan(0);
    for (const { layer, from } of offer.bridges) {
      expect(layer).toBe('sun.svg#0');
      expect(Math.hypot(from.x - wanted!.at!.x, from.y - wanted!.at!.y)).toBeLessThan(15);
    }
  });
});
