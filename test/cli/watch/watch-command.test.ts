import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { afterAll, afterEach, beforeAll, describe, expect, it, it as test } from 'vitest';
import { partWords } from '../../../src/cli/watch/watch-command';
import type { ProgramMarks } from '../../../src/protocol/programs';
import { hashOfText } from '../../../src/text/hash';
import { CliWorkshop } from '../run-cli';
import { SOUND, WITH_ISLAND } from '../stencils';

let workshop: CliWorkshop;
let watching: Watching | undefined;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
});
afterEach(async () => {
  await watching?.end();
  watching = undefined;
});
afterAll(() => workshop.dispose());

/** A watch that runs, and what it has printed so far. */
class Watching {
  stdout = '';
  stderr = '';
  private readonly child: ChildProcess;
  private readonly closed: Promise<number | null>;

  constructor(words: readonly string[]) {
    this.child = spawn(process.execPath, [workshop.bundle, 'watch', ...words], { cwd: workshop.folder });
    this.child.stdout?.on('data', (chunk: Buffer) => void (this.stdout += chunk));
    this.child.stderr?.on('data', (chunk: Buffer) => void (this.stderr += chunk));
    this.closed = new Promise((settle) => void this.child.on('close', settle));
  }

  /** The reports so far, without the lines around them. */
  get reports(): string[] {
    return [...this.stdout.matchAll(/tombolo: check begins\n([\s\S]*?)tombolo: check ended\n/g)].map(
      ([, text]) => text!,
    );
  }

  async until(holds: () => boolean): Promise<void> {
    for (let tries = 0; !holds(); tries += 1) {
      if (tries > 600) throw new Error(`nothing came; stdout: ${this.stdout}; stderr: ${this.stderr}`);
      await new Promise((settle) => setTimeout(settle, 50));
    }
  }

  async end(): Promise<number | null> {
    this.child.kill('SIGINT');
    return this.closed;
  }
}

describe('tombolo watch', () => {
  it('checks again when a drawing changes, and ends when it is told to', async () => {
    await workshop.file('sun.svg', WITH_ISLAND);
    watching = new Watching(['sun.svg', '--format', 'unix']);
    await watching.until(() => watching?.reports.length === 1);
    expect(watching.reports[0]).toMatch(/^sun\.svg:\d+:\d+: error: .* \[floating-island\]\n$/);
    await writeFile(workshop.path('sun.svg'), SOUND);
    await watching.until(() => watching?.reports.length === 2);
    expect(watching.reports[1]).toBe('');
    expect(await watching.end()).toBe(0);
  });

  it('runs a program again when one of its files changes, and keeps what was found when it fails', async () => {
    const program = (drawing: string) =>
      `import { writeFileSync } from 'node:fs';\nwriteFileSync('post.svg', ${JSON.stringify(drawing)});\n`;
    await workshop.file('post.mjs', program(WITH_ISLAND));
    watching = new Watching(['--format', 'unix', '--', process.execPath, 'post.mjs']);
    await watching.until(() => watching?.reports.length === 1);
    expect(watching.reports[0]).toMatch(/^post\.mjs:2:\d+: error: .*post\.svg:\d+:\d+\) \[floating-island\]\n$/);
    await writeFile(workshop.path('post.mjs'), 'throw new Error("no reeds");');
    await watching.until(() => /ended with 1; what was found before still stands/.test(watching?.stderr ?? ''));
    expect(watching.reports).toHaveLength(1);
    await writeFile(workshop.path('post.mjs'), program(SOUND));
    await watching.until(() => watching?.reports.length === 2);
    expect(watching.reports[1]).toBe('');
  });

  it('puts the bridges of the plan into each run, and leaves marks that fit, until it ends', async () => {
    const program = `import { writeFileSync } from 'node:fs';\nwriteFileSync('ring.svg', \`${WITH_ISLAND}\`);\n`;
    await workshop.file('ring.mjs', program);
    await workshop.file('ring.svg', WITH_ISLAND);
    await workshop.file('bridges.json', (await workshop.run(['bridge', 'ring.svg', '--plan'])).stdout);
    await workshop.file('tombolo.json', '{ "bridges": { "plan": "bridges.json" } }');
    const marks = workshop.path('marks.json');
    watching = new Watching(['--format', 'unix', '--marks', marks, '--', process.execPath, 'ring.mjs']);
    await watching.until(() => watching?.reports.length === 1);
    expect(watching.reports[0]).toBe('');
    const text = readFileSync(workshop.path('ring.svg'), 'utf8');
    const left = JSON.parse(readFileSync(marks, 'utf8')) as ProgramMarks;
    expect(left.drawings).toMatchObject([{ file: workshop.path('ring.svg'), hash: hashOfText(text) }]);
    const offsets = left.drawings[0]?.marks?.offsets ?? [];
    expect(offsets.map((offset) => /<\w+$/.exec(text.slice(0, offset))?.[0])).toEqual(['<svg', '<path']);
    expect(await watching.end()).toBe(0);
    expect(existsSync(marks)).toBe(false);
  });

  it('ends a program that runs for ever', async () => {
    await workshop.file('ever.mjs', 'console.error("pid", process.pid); setInterval(() => undefined, 1000);');
    watching = new Watching(['--', process.execPath, 'ever.mjs']);
    await watching.until(() => /pid \d+/.test(watching?.stderr ?? ''));
    const pid = Number(/pid (\d+)/.exec(watching.stderr)?.[1]);
    expect(await watching.end()).toBe(0);
    expect(() => process.kill(pid, 0)).toThrow();
  });
});

test('words before the dashes are paths, those after them the program', () => {
  const raw = ['watch', 'layers', '--', 'node', 'a.mjs', '--fast'];
  const parted = { paths: ['layers'], program: ['node', 'a.mjs', '--fast'] };
  expect(partWords(['layers', 'node', 'a.mjs', '--fast'], raw)).toEqual(parted);
  expect(partWords(['layers', '--', 'node', 'a.mjs', '--fast'], raw)).toEqual(parted);
  expect(partWords(['a', 'b'], ['watch', 'a', 'b'])).toEqual({ paths: ['a', 'b'], program: [] });
});
