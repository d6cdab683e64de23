/** What the extension does when an editor wakes it, before a stencil is open: next to nothing. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundle } from '../../src/build/bundles.mjs';

let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'tombolo-activation-'));
  await bundle('extension', { outdir: folder, minify: false });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Loads and activates it with an editor that answers everything and opens nothing; prints what was loaded for that. */
const WAKE = `
  const Module = require('node:module');
  const load = Module._load;
  const loaded = new Set();
  const anything = () =>
    new Proxy(function () {}, {
      get: (target, key) => (key === 'then' || key === Symbol.iterator ? undefined : key === Symbol.toPrimitive ? () => 0 : key === 'prototype' ? target.prototype : anything()),
      set: () => true,
      apply: () => anything(),
      construct: () => anything(),
    });
  // Bundles copy what a module has of its own, and inherit the rest.
  const editor = Object.create(new Proxy({}, { get: () => anything() }));
  Module._load = function (name, ...rest) {
    if (name === 'vscode') return editor;
    loaded.add(name.replace(/^node:/, ''));
    return load.call(this, name, ...rest);
  };
  const extension = require(process.argv[2]);
  loaded.delete(process.argv[2]);
  const subscriptions = [];
  const path = require('node:path');
  const uri = anything();
  if (process.argv[3] === 'activate') {
    extension.activate({ subscriptions, extensionUri: uri, globalStorageUri: uri, extension: { id: 'x' }, asAbsolutePath: (name) => path.join('/', name) });
  }
  console.log(JSON.stringify({ loaded: [...loaded].sort(), subscriptions: subscriptions.length }));
`;

function woken(step: 'load' | 'activate'): { readonly loaded: readonly string[]; readonly subscriptions: number } {
  const script = path.join(folder, 'wake.cjs');
  writeFileSync(script, WAKE);
  const words = [script, path.join(folder, 'extension.cjs'), step];
  return JSON.parse(execFileSync(process.execPath, words, { encoding: 'utf8' }));
}

/** Those of the client of a server, which is four fifths of the extension, and of programs. */
const FOR_LATER = ['child_process', 'net', 'crypto'];

test('loading it loads nothing of the client of the server and of programs', () => {
  const { loaded } = woken('load');
  expect(loaded.length).toBeGreaterThan(0);
  expect(loaded.filter((name) => FOR_LATER.includes(name))).toEqual([]);
});

test('so does activating it, and it listens from then on', () => {
  const { loaded, subscriptions } = woken('activate');
  expect(subscriptions).toBeGreaterThan(10);
  expect(loaded.filter((name) => FOR_LATER.includes(name))).toEqual([]);
});
