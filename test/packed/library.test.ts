/** What `npm pack` makes of a clone, installed into an empty project and used there in every way. */
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { checkPackage, createPackageFromTarballData } from '@arethetypeswrong/core';
import { build } from 'esbuild';
import { publint } from 'publint';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { createMessageConnection } from 'vscode-jsonrpc/node';
import { findChromium, launchBrowser } from '../../src/build/host/browser.mjs';
import { type InstalledPackage, installPackage, root } from './package';

let made: InstalledPackage;

beforeAll(() => {
  made = installPackage();
});
afterAll(() => rmSync(made.folder, { recursive: true }));

const RING =
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">' +
  '<path d="M10 10h40v40h-40z M20 20v20h20v-20z"/></svg>';

test('it is small, and holds nothing of the extension', () => {
  expect(made.facts.unpackedSize).toBeLessThan(3_000_000);
  const files = made.facts.files.map((file) => file.path);
  expect(files).toEqual(
    expect.arrayContaining(['LICENSE', 'README.md', 'CHANGELOG.md', 'dist/THIRD-PARTY-NOTICES.txt']),
  );
  expect(files.filter((file) => /extension|preview|separat|\.map$/.test(file))).toEqual([]);
  const manifest = JSON.parse(readFileSync(path.join(made.installed, 'package.json'), 'utf8'));
  expect(Object.keys(manifest)).not.toContain('contributes');
  expect(manifest.devDependencies).toBeUndefined();
});

test('packing leaves the repository as it was', () => {
  const clone = path.join(made.folder, 'clone');
  for (const name of ['package.json', 'README.md']) {
    expect(readFileSync(path.join(clone, name), 'utf8')).toBe(readFileSync(path.join(root, name), 'utf8'));
  }
});

describe('its command', () => {
  const tombolo = (...words: string[]) =>
    spawnSync('npx', ['tombolo', ...words], {
      cwd: made.project,
      encoding: 'utf8',
      shell: process.platform === 'win32',
    });

  it('checks', () => {
    writeFileSync(path.join(made.project, 'ring.svg'), RING);
    const { status, stdout } = tombolo('check', 'ring.svg');
    expect([status, stdout]).toEqual([1, expect.stringContaining('floating-island')]);
  });

  it('traces a program, and explains a check', () => {
    writeFileSync(
      path.join(made.project, 'draw.mjs'),
      `import { writeFileSync } from 'node:fs';\nwriteFileSync('drawn.svg', \`${RING}\`);`,
    );
    expect(tombolo('trace', '--format', 'unix', '--', 'node', 'draw.mjs').stdout).toMatch(/^draw\.mjs:2:/m);
    expect(tombolo('check', '--explain', 'sliver').stdout).toContain('# sliver');
  });

  it('serves an editor', async () => {
    const server = spawn(process.execPath, [path.join(made.installed, 'dist/cli.cjs'), 'server', '--stdio']);
    const editor = createMessageConnection(server.stdout, server.stdin);
    editor.listen();
    try {
      const told = new Promise<{ diagnostics: { code: string }[] }>((settle) => {
        editor.onNotification('textDocument/publishDiagnostics', settle);
      });
      await editor.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
      await editor.sendNotification('initialized', {});
      const text = RING.replace('<svg ', '<svg data-tombolo-reading="openings" ');
      const textDocument = { uri: 'file:///marsh/ring.svg', languageId: 'xml', version: 1, text };
      await editor.sendNotification('textDocument/didOpen', { textDocument });
      expect((await told).diagnostics.map(({ code }) => code)).toEqual(['floating-island']);
    } finally {
      editor.dispose();
      server.kill();
    }
  });

  it('says in one line that PNG pictures need another package', () => {
    const { status, stderr } = tombolo('picture', 'ring.svg', '--out', 'ring.png');
    expect(status).toBe(2);
    expect(stderr).toMatch(/^[^\n]*@resvg\/resvg-js[^\n]*\n$/);
    expect(tombolo('picture', 'ring.svg', '--out', 'ring.svg.svg').status).toBe(0);
  });
});

test.each([
  ['node16', 'mts', ts.ModuleKind.Node16, ts.ModuleResolutionKind.Node16],
  ['node16', 'cts', ts.ModuleKind.Node16, ts.ModuleResolutionKind.Node16],
  ['nodenext', 'mts', ts.ModuleKind.NodeNext, ts.ModuleResolutionKind.NodeNext],
  ['nodenext', 'cts', ts.ModuleKind.NodeNext, ts.ModuleResolutionKind.NodeNext],
  ['bundler', 'ts', ts.ModuleKind.ESNext, ts.ModuleResolutionKind.Bundler],
] as const)(
  'a program in TypeScript compiles under %s as .%s, its declarations checked',
  (_, suffix, module, resolution) => {
    const program = path.join(made.project, `consumer.${suffix}`);
    cpSync(path.join(__dirname, 'consumer.ts.txt'), program);
    const host = ts.createProgram([program], {
      module,
      moduleResolution: resolution,
      target: ts.ScriptTarget.ES2022,
      lib: ['lib.es2023.d.ts', 'lib.dom.d.ts'],
      types: [],
      strict: true,
      exactOptionalPropertyTypes: true,
      skipLibCheck: false,
      noEmit: true,
    });
    const wrong = ts.getPreEmitDiagnostics(host);
    expect(wrong.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'))).toEqual([]);
  },
);

test('its types are found by every resolver, and are of the kind of module that they describe', async () => {
  const { types, ...result } = await checkPackage(createPackageFromTarballData(made.tarball));
  expect(types).toBeTruthy();
  expect('problems' in result ? result.problems : 'no types').toEqual([]);
});

test('publint has nothing to say', async () => {
  const { messages } = await publint({ pkgDir: made.installed, pack: false, strict: true });
  expect(messages).toEqual([]);
});

describe('in a browser', () => {
  let server: Server;
  afterAll(() => server?.close());

  it.skipIf(!findChromium())('a worker runs it under a content security policy of "self"', async () => {
    const { outputFiles } = await build({
      stdin: {
        contents: `import { check } from 'tombolo-stencil';
          onmessage = ({ data }) => postMessage(check(data, { width: '148mm' }));`,
        resolveDir: made.project,
      },
      bundle: true,
      minify: true,
      write: false,
      format: 'esm',
    });
    expect(gzipSync(outputFiles[0]!.contents, { level: 9 }).length).toBeLessThan(180_000);
    const page = '<!doctype html><title>marsh</title>';
    server = createServer((request, response) => {
      const isWorker = request.url === '/worker.js';
      response.setHeader('Content-Security-Policy', "default-src 'self'");
      response.setHeader('Content-Type', isWorker ? 'text/javascript' : 'text/html');
      response.end(isWorker ? outputFiles[0]!.contents : page);
    }).listen(0, '127.0.0.1');
    const browser = await launchBrowser();
    try {
      const tab = await browser.newPage();
      await tab.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
      const found = await tab.evaluate(
        (text) =>
          new Promise<string[]>((settle, fail) => {
            const worker = new Worker('/worker.js', { type: 'module' });
            worker.onerror = ({ message }) => fail(new Error(message));
            worker.onmessage = ({ data }) => settle(data.findings.map(({ check }: { check: string }) => check));
            worker.postMessage(text);
          }),
        RING,
      );
      expect(found).toEqual(['floating-island']);
    } finally {
      await browser.close();
    }
  });
});

test('programs of both kinds of modules load it, and nothing is said on the way', () => {
  for (const [name, text] of [
    ['a.mjs', `import { check } from 'tombolo-stencil'; console.log(check('').counts.error);`],
    ['a.cjs', `console.log(require('tombolo-stencil').check('').counts.error);`],
  ] as const) {
    writeFileSync(path.join(made.project, name), text);
    const { stdout, stderr } = spawnSync(process.execPath, [name], { cwd: made.project, encoding: 'utf8' });
    expect([stdout, stderr]).toEqual([expect.stringMatching(/^\d+\n$/), '']);
  }
});
