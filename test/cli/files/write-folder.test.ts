import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it as test, vi } from 'vitest';

const failing = vi.hoisted(() => ({ at: undefined as string | undefined }));
vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof import('node:fs/promises')>();
  const writing: typeof real.writeFile = async (path, ...rest) => {
    if (failing.at !== undefined && String(path).endsWith(failing.at)) {
      await real.writeFile(path, 'half');
      throw Object.assign(new Error('no space'), { code: 'ENOSPC' });
    }
    return real.writeFile(path, ...rest);
  };
  return { ...real, default: real, writeFile: writing };
});

import { writeFolder } from '../../../src/cli/files/write-folder';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tombolo-folder-'));
  failing.at = undefined;
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const files = new Map([
  ['01-sky.svg', 'ours: sky'],
  ['02-sun.svg', 'ours: sun'],
]);
const isOurs = (start: string) => start.startsWith('ours');

test('writes all of them', async () => {
  await writeFolder(join(folder, 'a', 'b'), files, isOurs);
  expect((await readdir(join(folder, 'a', 'b'))).sort()).toEqual(['01-sky.svg', '02-sun.svg']);
});

test('where no space is left at the second, the first is as it was, and nothing is half-written', async () => {
  const target = join(folder, 'cut');
  await mkdir(target);
  await writeFile(join(target, '01-sky.svg'), 'ours: before');
  failing.at = '02-sun.svg';
  await expect(writeFolder(target, files, isOurs)).rejects.toThrow(`${target}: no space left on the device`);
  expect(await readdir(target)).toEqual(['01-sky.svg']);
  expect(await readFile(join(target, '01-sky.svg'), 'utf8')).toBe('ours: before');
});

test('a folder that was made for nothing goes again', async () => {
  failing.at = '02-sun.svg';
  await expect(writeFolder(join(folder, 'new', 'cut'), files, isOurs)).rejects.toThrow('no space left');
  expect(await readdir(folder)).toEqual([]);
});
