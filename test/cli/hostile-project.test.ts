/** Projects of strangers: what their tombolo.json names is read only within the workspace, and only if it is a file. */
import { execFileSync } from 'node:child_process';
import { mkdir, symlink, truncate, writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sheet, square } from '../engine/project-files';
import { CliWorkshop } from './run-cli';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await mkdir(workshop.path('print'));
  await workshop.file('print/own.svg', sheet(square(5, 5, 9)));
  await workshop.file('beside.svg', sheet(square(5, 5, 9)));
  await writeFile(workshop.path('../outside.svg'), sheet(square(5, 5, 9)));
  await symlink('../../outside.svg', workshop.path('print/led-out.svg'));
  await symlink('own.svg', workshop.path('print/led-in.svg'));
  await symlink('/dev/zero', workshop.path('print/endless.svg'));
  execFileSync('mkfifo', [workshop.path('print/pipe.svg')]);
  await writeFile(workshop.path('print/huge.svg'), '');
  await truncate(workshop.path('print/huge.svg'), 200_000_000);
});
afterAll(() => workshop.dispose());

/** What is told of each entry, beside a drawing that is read in any case. */
async function toldOf(from: string): Promise<string[]> {
  await workshop.file('print/tombolo.json', JSON.stringify({ layers: [{ from: 'own.svg' }, { from }] }));
  const { stdout, stderr, code } = await workshop.run(['check', 'print', '--format', 'json']);
  expect([stderr, code]).not.toEqual(['', 2]);
  const { files } = JSON.parse(stdout) as { files: { path: string; findings: { message: string }[] }[] };
  expect(files[0]?.path).toBe('print/own.svg');
  return files.flatMap(({ path, findings }) => (path.endsWith('.json') ? findings.map(({ message }) => message) : []));
}

describe('layers of a tombolo.json', () => {
  it.each(['../beside.svg', 'led-in.svg', './own.svg'])('%s lies within the workspace', async (from) => {
    expect(await toldOf(from)).toEqual([]);
  });

  it.each(['../../outside.svg', 'led-out.svg', '../print/../../outside.svg'])('%s leads out of it', async (from) => {
    expect(await toldOf(from)).toEqual([expect.stringContaining('the stack is checked without it')]);
  });

  it.each(['endless.svg', 'pipe.svg', 'huge.svg', 'sub\u0000.svg', '/dev/zero', 'C:\\x.svg', '//host/x.svg'])(
    '%s is nothing to be read',
    async (from) => {
      expect((await toldOf(from)).length).toBe(1);
    },
  );

  it('which lies outside is told, with what that means', async () => {
    expect((await toldOf('../../outside.svg'))[0]).toMatch(/^Outside this workspace, or not readable: "/);
  });
});

describe('files that are named on the command line', () => {
  it('a device without an end is refused at the bound; the other file is checked', async () => {
    const { stdout, stderr, code } = await workshop.run(['check', '/dev/zero', 'beside.svg', '--format', 'unix']);
    expect(stderr).toMatch(/^tombolo: \/dev\/zero: is larger than 100 MB/);
    expect([stdout, code]).toEqual([expect.any(String), 2]);
  });

  it.each(['pipe', 'endless', 'folder', 'huge'])('a tombolo.json that is a %s keeps nothing waiting', async (kind) => {
    await mkdir(workshop.path(kind));
    const config = workshop.path(`${kind}/tombolo.json`);
    if (kind === 'pipe') execFileSync('mkfifo', [config]);
    else if (kind === 'endless') await symlink('/dev/zero', config);
    else if (kind === 'folder') await mkdir(config);
    else {
      await writeFile(config, '');
      await truncate(config, 200_000_000);
    }
    await workshop.file(`${kind}/a.svg`, sheet(square(5, 5, 9)));
    const { stderr, code } = await workshop.run(['check', `${kind}/a.svg`, 'beside.svg']);
    expect([stderr.split('\n').length, code]).toEqual([2, 2]);
    expect(stderr).toMatch(/^tombolo: .*tombolo\.json: is /);
  });
});
