/** Each command that writes, killed by force, on a full disk and where files may not grow: old files or new, never half. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, watch, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { interruptions, withFileLimit } from '../cli/files/interrupted';
import { CliWorkshop } from '../cli/run-cli';
import { stencil } from '../cli/stencils';

const sun = '  <g id="sun" fill="#ffdd55"><path d="M20 15h20v10h-20z"/></g>';
const marsh = '  <g id="marsh" fill="#224433"><path fill-rule="evenodd" d="M10 10h40v20h-40z M20 15v10h20v-10z"/></g>';
/** So long that no single write takes it all. */
const padding = `<!-- ${'reeds '.repeat(40_000)} -->`;

/** Files before, and the command that changes them. */
const WRITERS: Readonly<Record<string, readonly string[]>> = {
  'bridges into a file': ['bridge', 'stack.svg', '--write'],
  'the order into a file': ['order', 'stack.svg', '--write'],
  'the order into a project': ['order', 'trail/tombolo.json', '--write'],
  'two sheets into a file': ['bridge', 'stack.svg', '--two-sheets', '--write'],
  'two sheets into a folder': ['bridge', 'stack.svg', '--two-sheets', '--out', 'both'],
  'a picture, as SVG': ['picture', 'stack.svg', '--out', 'out.svg'],
  'a picture, as PNG': ['picture', 'stack.svg', '--out', 'out.png'],
  'files for the cutter': ['cut', 'stack.svg', '--out', 'cut', '--anyway'],
  'a baseline': ['check', 'trail/marsh.svg', '--write-baseline'],
};

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
});
afterAll(() => workshop.dispose());

function putBack(folder: string): void {
  for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
  mkdirSync(join(folder, 'trail'));
  mkdirSync(join(folder, 'both'));
  const files = {
    'stack.svg': stencil([sun, marsh, padding].join('\n')),
    'trail/sun.svg': stencil(sun),
    'trail/marsh.svg': stencil(marsh),
    'trail/tombolo.json': `{ "layers": [{ "from": "sun.svg" }, { "from": "marsh.svg" }] } // ${padding}`,
    'both/first.svg': stencil(sun),
    'both/second.svg': stencil(sun),
    'both/tombolo.json': '{ "layers": [{ "from": "first.svg" }, { "from": "second.svg" }] }',
    'out.svg': 'an old picture',
    'out.png': 'an old picture',
  };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
}

/** All files by their paths, but for what a killed program leaves beside them. */
function contents(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  // What a killed program leaves beside them is never taken for one of them.
  const files = names.filter((name) => /\.(svg|png|json)$/.test(name) && !name.includes('.unfinished-'));
  return Object.fromEntries(files.map((name) => [name, readFileSync(join(folder, name), 'latin1')]));
}

/** What the files are before and after a command. */
function ends(folder: string, words: readonly string[]) {
  putBack(folder);
  const before = contents(folder);
  const { status, stderr } = spawnSync(process.execPath, [workshop.bundle, ...words], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect({ failed: status === 2, stderr: status === 2 ? stderr : '' }).toEqual({ failed: false, stderr: '' });
  const after = contents(folder);
  expect(after).not.toEqual(before);
  return { before, after };
}

/** @throws where a file is neither as it was nor as it is to be */
function expectOldOrNew(folder: string, { before, after }: ReturnType<typeof ends>): void {
  for (const [name, text] of Object.entries(contents(folder))) {
    expect(text === before[name] || text === after[name], `${name}: ${text.slice(0, 80)}…`).toBe(true);
  }
  // None has gone.
  expect(Object.keys(contents(folder))).toEqual(expect.arrayContaining(Object.keys(before)));
}

describe.each(Object.entries(WRITERS))('%s', (_, words) => {
  test('killed at each step', () => {
    const known = ends(workshop.folder, words);
    let killed = 0;
    for (const _run of interruptions([workshop.bundle, ...words], 'kill', workshop.folder, () =>
      putBack(workshop.folder),
    )) {
      expectOldOrNew(workshop.folder, known);
      killed += 1;
    }
    expect(killed).toBeGreaterThan(3);
  });

  test.skipIf(process.platform === 'win32')('where files may not grow so large', () => {
    const known = ends(workshop.folder, words);
    putBack(workshop.folder);
    const { code, stderr } = withFileLimit([workshop.bundle, ...words], 0, workshop.folder);
    expect({ code, stderr }).toEqual({ code: 2, stderr: expect.stringMatching(/: the file would be too large\n$/) });
    expectOldOrNew(workshop.folder, known);
    expect(leftovers(workshop.folder)).toEqual([]);
  });
});

const leftovers = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /\.\d+$/.test(name));

test('on a disk full at each step', () => {
  const words = WRITERS['two sheets into a folder'] ?? [];
  const { folder, bundle } = workshop;
  const known = ends(folder, words);
  for (const { code, stderr } of interruptions([bundle, ...words], 'full', folder, () => putBack(folder))) {
    expect({ code, stderr }).toEqual({ code: 2, stderr: expect.stringMatching(/: no space left on the device\n$/) });
    expectOldOrNew(folder, known);
    expect(leftovers(folder)).toEqual([]);
  }
});

/** Runs a command, and kills it from outside as soon as it begins to write. */
async function killWhenWriting(folder: string, words: readonly string[]): Promise<boolean> {
  const child = spawn(process.execPath, [workshop.bundle, ...words], { cwd: folder, stdio: 'ignore' });
  const watcher = watch(folder, (_, name) => {
    if (name !== null && /\.\d+$/.test(name)) child.kill('SIGKILL');
  });
  const signal = await new Promise((resolve) => child.once('exit', (_, by) => resolve(by)));
  watcher.close();
  return signal === 'SIGKILL';
}

test('killed from outside fifty times', async () => {
  const words = ['bridge', 'stack.svg', '--write'];
  const known = ends(workshop.folder, words);
  let killed = 0;
  for (let i = 0; i < 50; i += 1) {
    putBack(workshop.folder);
    if (await killWhenWriting(workshop.folder, words)) killed += 1;
    expectOldOrNew(workshop.folder, known);
  }
  expect(killed).toBeGreaterThan(25);
  console.log(`killed in mid-write: ${killed} of 50, old or new each time`);
});

/** A small file system of its own for a command, full to the last byte; what is in it afterwards goes to `kept`. */
const ON_FULL_DISK = `
disk=$1 kept=$2; shift 2
mount -t tmpfs -o size=1m none "$disk" && cp -r . "$disk" && cd "$disk" || exit 99
cat /dev/zero > fill 2>/dev/null
"$@"; code=$?
rm fill; cp -r . "$kept"; exit $code`;

const mayMount = (): boolean =>
  spawnSync('unshare', ['-Urm', 'mount', '-t', 'tmpfs', 'none', '/mnt'], { stdio: 'ignore' }).status === 0;

test.skipIf(!mayMount())('on a disk that is full in truth', () => {
  for (const words of Object.values(WRITERS)) {
    const known = ends(workshop.folder, words);
    putBack(workshop.folder);
    const [disk, kept] = ['disk', 'kept'].map((name) => join(workshop.folder, '..', name)) as [string, string];
    for (const each of [disk, kept]) {
      rmSync(each, { recursive: true, force: true });
      mkdirSync(each);
    }
    const run = ['-Urm', 'sh', '-c', ON_FULL_DISK, 'sh', disk, kept, process.execPath, workshop.bundle, ...words];
    const { status, stderr } = spawnSync('unshare', run, { cwd: workshop.folder, encoding: 'utf8' });
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: expect.stringMatching(/: no space left on the device\n$/),
    });
    expectOldOrNew(kept, known);
    expect(leftovers(kept)).toEqual([]);
  }
});
