import { chmod, mkdir, mkdtemp, readdir, readFile, readlink, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import { isSameFile, writeAtomically } from '../../../src/cli/files/write-output';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tombolo-write-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe('writeAtomically', () => {
  it('keeps the mode and leaves nothing else behind', async () => {
    const path = join(folder, 'heron.svg');
    await writeFile(path, 'old');
    await chmod(path, 0o640);
    await writeAtomically(path, 'new');
    expect(await readFile(path, 'utf8')).toBe('new');
    expect((await stat(path)).mode & 0o777).toBe(0o640);
    expect(await readdir(folder)).toEqual(['heron.svg']);
  });

  it('a reader who opened the old file still has it whole', async () => {
    const path = join(folder, 'heron.svg');
    await writeFile(path, 'old');
    const before = (await stat(path)).ino;
    await writeAtomically(path, 'new');
    expect((await stat(path)).ino).not.toBe(before);
  });

  it('follows a symbolic link and keeps it', async () => {
    await mkdir(join(folder, 'posts'));
    await writeFile(join(folder, 'posts/heron.svg'), 'old');
    const link = join(folder, 'link.svg');
    await symlink('posts/heron.svg', link);
    await writeAtomically(link, 'new');
    expect(await readlink(link)).toBe('posts/heron.svg');
    expect(await readFile(join(folder, 'posts/heron.svg'), 'utf8')).toBe('new');
  });

  it('writes large content whole', async () => {
    const path = join(folder, 'large.png');
    const bytes = Buffer.alloc(5_000_000, 7);
    await writeAtomically(path, bytes);
    expect((await readFile(path)).equals(bytes)).toBe(true);
  });

  it.each([
    ['a missing folder', 'nowhere/heron.svg', /nowhere\/heron\.svg: no such file or folder/],
    ['a path through a file', 'file.svg/heron.svg', /heron\.svg: a part of this path is no folder/],
    ['a folder', 'posts', /posts: is a folder/],
  ])('%s is refused in one line', async (_, name, message) => {
    await writeFile(join(folder, 'file.svg'), 'old');
    await mkdir(join(folder, 'posts'));
    await expect(writeAtomically(join(folder, name), 'new')).rejects.toThrow(message);
    expect((await readdir(folder)).sort()).toEqual(['file.svg', 'posts']);
    expect(await readFile(join(folder, 'file.svg'), 'utf8')).toBe('old');
  });

  it.skipIf(process.platform === 'win32')('a device is not replaced by a file', async () => {
    await expect(writeAtomically('/dev/null', 'new')).rejects.toThrow('/dev/null: is not a regular file');
    expect((await stat('/dev/null')).isCharacterDevice()).toBe(true);
  });

  it.skipIf(process.platform === 'win32' || process.getuid?.() === 0)('a write-protected file', async () => {
    const path = join(folder, 'heron.svg');
    await writeFile(path, 'old');
    await chmod(path, 0o444);
    await expect(writeAtomically(path, 'new')).rejects.toThrow('permission denied');
    expect(await readFile(path, 'utf8')).toBe('old');
  });
});

test('isSameFile sees through links', async () => {
  const path = join(folder, 'heron.svg');
  await writeFile(path, 'old');
  await symlink('heron.svg', join(folder, 'link.svg'));
  expect(await isSameFile(path, join(folder, 'link.svg'))).toBe(true);
  expect(await isSameFile(path, join(folder, 'other.svg'))).toBe(false);
});
