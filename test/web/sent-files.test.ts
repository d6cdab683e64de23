/** Files that the editor sends: asked for once, kept until others come, told of when they do. */
import { beforeEach, expect, it as test } from 'vitest';
import { SentFiles } from '../../src/web/sent-files';

const SUN = 'vscode-vfs://github/marsh/trail/sun.svg';
const CONFIG = 'vscode-vfs://github/marsh/trail/tombolo.json';

let asked: (readonly string[])[];
let told: string[];
let files: SentFiles;

beforeEach(() => {
  [asked, told] = [[], []];
  files = new SentFiles((uris) => asked.push(uris));
  files.follow((uri) => told.push(uri));
});

const settled = () => new Promise((resolve) => setTimeout(resolve));

test('asks for all that is wanted at once, and for none twice', async () => {
  expect([files.stampOf(SUN, 99), files.stampOf(CONFIG, 99), files.stampOf(SUN, 99)]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
  await settled();
  expect(asked).toEqual([[SUN, CONFIG]]);
  files.stampOf(SUN, 99);
  await settled();
  expect(asked).toHaveLength(1);
});

test('gives what was sent, and tells of it; what is missing is nothing new', async () => {
  files.stampOf(SUN, 99);
  files.stampOf(CONFIG, 99);
  await settled();
  files.take([
    { uri: SUN, text: '<svg/>' },
    { uri: CONFIG, text: null },
  ]);
  expect(told).toEqual([SUN]);
  expect(files.textOf(SUN)).toBe('<svg/>');
  expect(files.stampOf(SUN, 99)).toBeDefined();
  expect(files.stampOf(CONFIG, 99)).toBeUndefined();
});

test('keeps the old text until the new one comes, whose stamp is another', async () => {
  files.take([{ uri: SUN, text: '<svg/>' }]);
  const before = files.stampOf(SUN, 99);
  files.changed(SUN);
  await settled();
  expect(asked).toEqual([[SUN]]);
  expect(files.stampOf(SUN, 99)).toBe(before);
  files.take([{ uri: SUN, text: '<svg></svg>' }]);
  expect(files.stampOf(SUN, 99)).not.toBe(before);
  files.changed(SUN);
  await settled();
  files.take([{ uri: SUN, text: null }]);
  expect(files.stampOf(SUN, 99)).toBeUndefined();
  expect(told).toEqual([SUN, SUN, SUN]);
});

test('takes nothing that is longer than it may be', () => {
  files.take([{ uri: SUN, text: '<svg/>' }]);
  expect(files.stampOf(SUN, 3)).toBeUndefined();
});
