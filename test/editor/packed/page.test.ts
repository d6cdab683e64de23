/** What the marketplace shows and what is in the package, with the addresses of package.json filled in and without. */
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it as test } from 'vitest';
import { launchBrowser } from '../../../src/build/host/browser.mjs';
import { hostFolder } from '../../../src/build/host/host.mjs';
import { pack, packed } from '../../../src/build/package.mjs';
import { root } from '../workbench/root';

const require = createRequire(path.join(hostFolder, 'package.json'));
const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));

/** Addresses as a project has them that is hosted somewhere. */
const FILLED = {
  repository: { type: 'git', url: 'https://github.com/example/tombolo' },
  bugs: { url: 'https://github.com/example/tombolo/issues' },
  homepage: 'https://example.org/tombolo',
  author: { name: 'Example' },
};

let state: string;

/** The files of a package, unpacked; gives the folder. */
function unpacked(vsix: string, name: string): string {
  const folder = path.join(state, name);
  execFileSync('python3', ['-m', 'zipfile', '-e', vsix, folder]);
  return path.join(folder, 'extension');
}

beforeAll(() => {
  state = mkdtempSync(path.join(tmpdir(), 'tombolo-page-'));
});
afterAll(() => rmSync(state, { recursive: true, force: true }));

test('shows its page with the pictures of the package, where no address is filled in', async () => {
  const folder = unpacked(packed, 'unnamed');
  const page = readFileSync(path.join(folder, 'readme.md'), 'utf8');
  const { default: MarkdownIt } = require('markdown-it') as {
    default: new (how: object) => { render(text: string): string };
  };
  const Renderer = MarkdownIt ?? (require('markdown-it') as typeof MarkdownIt);
  const style =
    'body{font:16px/1.5 sans-serif;max-width:50rem;margin:2rem auto}img{max-width:100%}table{border-collapse:collapse}td,th{border:1px solid #ccc;padding:4px 8px}';
  const html = `<!DOCTYPE html><html lang="en"><meta charset="utf-8"><base href="${pathToFileURL(`${folder}/`)}"><style>${style}</style><title>page</title>${new Renderer({ html: true }).render(page)}`;
  writeFileSync(path.join(folder, 'page.html'), html);
  const browser = await launchBrowser();
  const view = await browser.newPage({ viewport: { width: 1000, height: 900 } });
  await view.goto(pathToFileURL(path.join(folder, 'page.html')).href);
  const broken = await view
    .locator('img')
    .evaluateAll((images) =>
      (images as HTMLImageElement[]).filter(({ naturalWidth }) => naturalWidth === 0).map(({ src }) => src),
    );
  expect(broken).toEqual([]);
  expect(await view.locator('img').count()).toBeGreaterThan(1);
  await view.screenshot({ path: path.join(root, 'test/editor/shots/marketplace.png'), fullPage: true });
  await browser.close();
  expect(page).not.toMatch(/npm (ci|run|start|test)/);
});

test('is packed without a flag that looks away, where they are filled in', () => {
  const folder = path.join(state, 'filled');
  for (const name of [...manifest.files, 'src/extension/page.md']) {
    if (existsSync(path.join(root, name))) cpSync(path.join(root, name), path.join(folder, name), { recursive: true });
  }
  // What is built is there already.
  const { 'vscode:prepublish': _build, ...scripts } = manifest.scripts;
  writeFileSync(path.join(folder, 'package.json'), JSON.stringify({ ...manifest, ...FILLED, scripts }));
  const page = readFileSync(
    path.join(unpacked(pack(folder, path.join(state, 'filled.vsix')), 'named'), 'readme.md'),
    'utf8',
  );
  const targets = [...page.matchAll(/\]\(([^)]+)\)/g)].map(([, target = '']) => target);
  expect(targets.length).toBeGreaterThan(1);
  expect(targets.filter((target) => !target.startsWith('https://github.com/example/tombolo/'))).toEqual([]);
});

test('is small', () => {
  // Below what a phone loads in a second or two. Where it grows: `unzip -lv`, and what programs could share.
  expect(statSync(packed).size).toBeLessThan(1.2e6);
});

test('has what its programs are made of once', () => {
  const dist = path.join(unpacked(packed, 'shared'), 'dist');
  const programs = readdirSync(dist).filter((name) => /\.c?js$/.test(name));
  const holders = (words: string) =>
    programs.filter((name) => readFileSync(path.join(dist, name), 'utf8').includes(words));
  // Of the engine, of the protocol and of the decoder of pictures.
  expect(holders('it will fall out')).toEqual(['engine.cjs']);
  expect(holders('textDocument/willSaveWaitUntil')).toEqual(['extension-web.cjs']);
  expect(holders('marker was not found')).toEqual(['node-parts.cjs']);
});

test('holds what it uses and nothing else', () => {
  const folder = unpacked(packed, 'listed');
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    statSync(path.join(folder, name)).isFile(),
  );
  const { main, browser } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as typeof manifest;
  for (const entry of [main, browser]) expect(existsSync(path.join(folder, entry)), entry).toBe(true);
  // Neither the library nor its types, no sources of ours, no maps.
  expect(names.filter((name) => /\.(map|ts)$|^dist\/(types|library|engine)\/|^(?:src|test)\//.test(name))).toEqual([]);
});
