import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { URI } from 'vscode-uri';
import * as engine from '../../../src/engine/index';
import * as finding from '../../../src/server/documents/find-config';
import { KnownConfigs } from '../../../src/server/documents/known-configs';
import { NODE_FILES } from '../../../src/server/host/node-files';

vi.mock('../../../src/server/documents/find-config', { spy: true });
vi.mock('../../../src/engine/index', { spy: true });

let folder: string;
const uri = (name: string) => URI.file(path.join(folder, name)).toString();

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tombolo known configs '));
  mkdirSync(path.join(folder, 'trail'));
  writeFileSync(path.join(folder, 'tombolo.json'), '{"margin": "5mm"}');
});
afterAll(() => rmSync(folder, { recursive: true }));
beforeEach(() => vi.clearAllMocks());

test('all questions of one keystroke walk the folders once and read the text once', () => {
  const configs = new KnownConfigs(() => undefined, NODE_FILES);
  for (const name of ['trail/sun.svg', 'trail/sun.svg', 'trail/heron.svg']) {
    const found = configs.find(uri(name));
    expect(found).toEqual({ uri: uri('tombolo.json'), text: '{"margin": "5mm"}' });
    expect(configs.read(found!).config.margin).toBe(5);
  }
  expect(finding.findConfig).toHaveBeenCalledTimes(1);
  expect(engine.readConfig).toHaveBeenCalledTimes(1);
});

test('what changes is looked for anew', () => {
  const configs = new KnownConfigs(() => undefined, NODE_FILES);
  const sun = uri('trail/sun.svg');
  configs.find(sun);
  writeFileSync(path.join(folder, 'trail/tombolo.json'), '{}');
  configs.changed();
  expect(configs.find(sun)).toEqual({ uri: uri('trail/tombolo.json'), text: '{}' });
  rmSync(path.join(folder, 'trail/tombolo.json'));
  configs.changed();
  expect(configs.find(sun)?.uri).toBe(uri('tombolo.json'));
});

test('what stands in the editor counts with every keystroke', () => {
  let typed = '{"margin": "5mm"}';
  const configs = new KnownConfigs((address) => (address === uri('tombolo.json') ? typed : undefined), NODE_FILES);
  const margin = () => configs.read(configs.find(uri('sun.svg'))!).config.margin;
  expect(margin()).toBe(5);
  typed = '{"margin": "7mm"}';
  expect(margin()).toBe(7);
});
