/** Killed in mid-write, a full disk, a limit on the size of files: the old file or the new one is there, never half. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { interruptions, withFileLimit } from './interrupted';

const ROOT = resolve(import.meta.dirname, '../../..');
const [OLD, NEW] = ['old '.repeat(5000), 'new '.repeat(50_000)];

let folder: string;
let program: string;

/** A program that does nothing but write one file. */
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tombolo-interrupted-'));
  program = join(folder, 'program.cjs');
  const contents = `import { writeAtomically } from './src/cli/files/write-output';
    writeAtomically('heron.svg', 'new '.repeat(50_000)).catch(({ message }) => {
      process.stderr.write(message);
      process.exitCode = 2;
    });`;
  const stdin = { contents, resolveDir: ROOT, loader: 'ts' } as const;
  await build({ stdin, bundle: true, platform: 'node', format: 'cjs', outfile: program });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const read = (): string => readFileSync(join(folder, 'heron.svg'), 'utf8');
const beside = (): string[] => readdirSync(folder).filter((name) => name.startsWith('heron.svg.'));
const putBack = (): void => {
  for (const name of beside()) rmSync(join(folder, name));
  writeFileSync(join(folder, 'heron.svg'), OLD);
};

test('killed at each step, it leaves the old file or the new one', () => {
  const left: string[] = [];
  for (const { step } of interruptions([program], 'kill', folder, putBack)) {
    const text = read();
    expect(text === OLD || text === NEW, `step ${step}`).toBe(true);
    left.push(text === OLD ? 'old' : 'new');
  }
  // One more step comes after the renaming: what is left of the temporary file is removed.
  expect(new Set(left)).toEqual(new Set(['old', 'new']));
  expect(left.length).toBeGreaterThan(7);
  expect(read()).toBe(NEW);
});

test('on a disk that is full at any step, it leaves the old file, and says so', () => {
  let count = 0;
  for (const { step, code, stderr } of interruptions([program], 'full', folder, putBack)) {
    expect({ code, stderr }, `step ${step}`).toEqual({ code: 2, stderr: 'heron.svg: no space left on the device' });
    expect(read() === OLD, `step ${step}`).toBe(true);
    expect(beside(), `step ${step}`).toEqual([]);
    count += 1;
  }
  expect(count).toBeGreaterThan(4);
});

test.skipIf(process.platform === 'win32')('where files may not grow so large, it leaves the old file', () => {
  putBack();
  const { code, stderr } = withFileLimit([program], 100, folder);
  expect({ code, stderr }).toEqual({ code: 2, stderr: 'heron.svg: the file would be too large' });
  expect(read() === OLD).toBe(true);
  expect(beside()).toEqual([]);
});

test('nothing else in the command line writes files', () => {
  const sources = readdirSync(join(ROOT, 'src/cli'), { recursive: true, encoding: 'utf8' });
  const writing =
    /\b(writeFile|writeFileSync|appendFile\w*|createWriteStream|copyFile\w*|rename\w*|truncate\w*)\(|\bopen\([^)]*'[wa]/;
  const writers = sources.filter(
    (name) => name.endsWith('.ts') && writing.test(readFileSync(join(ROOT, 'src/cli', name), 'utf8')),
  );
  expect(writers.sort()).toEqual(['files/write-folder.ts', 'files/write-output.ts']);
});
