/** `tombolo server`, spoken to as any editor does: by the protocol, on standard input and output. */
import { type ChildProcess, spawn } from 'node:child_process';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it as test } from 'vitest';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';
import type { PublishDiagnosticsParams } from 'vscode-languageserver-protocol';
import { writeBundles } from '../bundles';
import { CliWorkshop } from './run-cli';
import { WITH_ISLAND } from './stencils';

let workshop: CliWorkshop;
let server: ChildProcess | undefined;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  const outdir = path.dirname(workshop.bundle);
  await writeBundles(['server', 'worker'], { outdir, minify: true });
});
afterAll(async () => {
  server?.kill();
  await workshop.dispose();
});

test.each([[], ['--stdio']])(
  'publishes what it finds, and ends when it is told to (%j)',
  async (...words: string[]) => {
    server = spawn(process.execPath, [workshop.bundle, 'server', ...words], { cwd: workshop.folder });
    const ended = new Promise<number | null>((settle) => server?.on('close', settle));
    const { stdin, stdout } = server;
    if (!stdin || !stdout) throw new Error('It has no pipes.');
    const editor = createMessageConnection(new StreamMessageReader(stdout), new StreamMessageWriter(stdin));
    const published = new Promise<PublishDiagnosticsParams>((settle) =>
      editor.onNotification('textDocument/publishDiagnostics', (sent) => {
        if (sent.diagnostics.length > 0) settle(sent);
      }),
    );
    editor.listen();
    const uri = pathToFileURL(workshop.path('island.svg')).href;
    const { capabilities } = await editor.sendRequest<{ capabilities: Record<string, unknown> }>('initialize', {
      processId: process.pid,
      rootUri: pathToFileURL(workshop.folder).href,
      capabilities: {},
      initializationOptions: { run: 'onType', delay: 0 },
    });
    expect(Object.keys(capabilities)).toEqual(expect.arrayContaining(['hoverProvider', 'codeActionProvider']));
    await editor.sendNotification('initialized', {});
    const text = WITH_ISLAND.replace('<svg', '<svg data-tombolo-reading="openings"');
    await editor.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'svg', version: 1, text },
    });
    const { diagnostics } = await published;
    expect(diagnostics.map(({ code }) => code)).toContain('floating-island');
    await editor.sendRequest('shutdown');
    await editor.sendNotification('exit');
    expect(await ended).toBe(0);
  },
);

test('says in one line where its bundle is missing', async () => {
  const alone = await CliWorkshop.create();
  const { code, stdout, stderr } = await alone.run(['server']);
  await alone.dispose();
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toBe(
    "tombolo: the server comes with the extension's package, not with this one: run dist/cli.cjs of that\n",
  );
});
