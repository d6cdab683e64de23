/** How a program is run, and what is left behind: nothing. */
import { readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { asPath, TraceWorkshop } from './workshop';

let workshop: TraceWorkshop;
beforeAll(async () => {
  workshop = await TraceWorkshop.create();
});
afterAll(() => workshop.dispose());
beforeEach(() => workshop.empty());

const fixture = (name: string) => readFileSync(path.join(import.meta.dirname, 'programs', name), 'utf8');
const names = (outputs: readonly { readonly file: string }[]) => outputs.map(({ file }) => path.basename(file)).sort();
const runFolders = () => readdirSync(tmpdir()).filter((name) => name.startsWith('tombolo-trace-')).length;

describe('a program', () => {
  it.each([
    ["console.log('<g>', process.argv.slice(2)); console.error('<path/>'); process.exitCode = 7;", 7],
    ["const draw = () => { throw new Error('no reed'); };\nconst t = '<g>' + draw() + '<path/>';", 1],
  ])('%j prints and ends as it does by itself', async (text, code) => {
    await workshop.file('gen.mjs', text);
    const plain = await workshop.plain(['node', 'gen.mjs', 'a', 'b c']);
    const traced = await workshop.traced(['node', 'gen.mjs', 'a', 'b c']);
    expect(traced).toMatchObject({ code, stdout: plain.stdout });
    expect(asPath(traced.stderr)).toBe(asPath(plain.stderr));
  });

  it('that prints a drawing prints it plain, and its places are kept', async () => {
    await workshop.file('gen.mjs', 'process.stdout.write(`<svg><path id="a"/></svg>\\n`);');
    const { stdout, printed } = await workshop.traced(['node', 'gen.mjs']);
    expect(stdout).toBe('<svg><path id="a"/></svg>\n');
    expect(printed.bytes.toString()).toBe(stdout);
    expect(printed.marks?.places).toEqual([['gen.mjs:1:23'], ['gen.mjs:1:28']]);
  });

  it('that writes fifty files, in folders, in UTF-16 and elsewhere, has all of them stripped', async () => {
    await workshop.file('gen.mjs', fixture('many.mjs'));
    await workshop.plain(['node', 'gen.mjs']);
    const all = [
      ...Array.from({ length: 50 }, (_, i) => `posts/old/${i}.svg`),
      'wide.svg',
      'page.json',
      '../elsewhere.svg',
    ];
    const plain = all.map((name) => workshop.read(name));
    const { outputs } = await workshop.traced(['node', 'gen.mjs']);
    expect(all.map((name) => workshop.read(name))).toEqual(plain);
    expect(names(outputs)).toEqual([...all.map((name) => path.basename(name))].sort());
    expect(outputs.every(({ marks }) => marks && marks.offsets.length > 0)).toBe(true);
  });

  it('that writes nothing has no outputs, and nothing is left of the run', async () => {
    await workshop.file('gen.mjs', 'export {};');
    const before = runFolders();
    expect((await workshop.traced(['node', 'gen.mjs'])).outputs).toEqual([]);
    expect(workshop.files()).toEqual(['gen.mjs']);
    expect(runFolders()).toBeLessThanOrEqual(before);
  });

  it('that is not there is refused', async () => {
    await expect(workshop.traced(['no-such-program-here'])).rejects.toThrow('ENOENT');
  });

  it('that runs for ever is ended, with what it started, and what it wrote is stripped', async () => {
    await workshop.file(
      'gen.mjs',
      "import { writeFileSync } from 'node:fs';\nwriteFileSync('out.svg', `<svg><g/></svg>`);\nsetInterval(() => {}, 1000);",
    );
    const ending = new AbortController();
    const run = workshop.traced(['node', 'gen.mjs'], ending.signal);
    while (!workshop.has('out.svg')) await new Promise((settle) => setTimeout(settle, 50));
    ending.abort();
    expect(await run).toMatchObject({ code: 143 });
    expect(workshop.read('out.svg')).toBe('<svg><g/></svg>');
  });

  it('keeps the options and the paths that its environment has', async () => {
    await workshop.file('before.cjs', 'globalThis.before = 1;');
    await workshop.file('gen.mjs', 'console.log(globalThis.before);');
    process.env.NODE_OPTIONS = '--require ./before.cjs';
    try {
      expect((await workshop.traced(['node', 'gen.mjs'])).stdout).toBe('1\n');
    } finally {
      delete process.env.NODE_OPTIONS;
    }
  });
});
