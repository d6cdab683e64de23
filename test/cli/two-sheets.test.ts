/** `tombolo bridge --two-sheets`: into the file, and as two files with their project. */
import { mkdir, readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliWorkshop } from './run-cli';

const ring = (x: number, y: number) => `M${x} ${y}h20v20h-20z M${x + 5} ${y + 5}h10v10h-10z`;
const POST =
  '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60">' +
  '<g id="Water"><rect x="5" y="45" width="90" height="10"/></g>' +
  `<g id="Numerals" fill="#345"><path fill-rule="evenodd" d="${ring(10, 10)} ${ring(50, 10)}"/></g></svg>`;

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('post.svg', POST);
});
afterAll(() => workshop.dispose());

const checked = async (what: string, input?: string) => {
  const { stdout } = await workshop.run(['check', what, '--format', 'json'], input ? { input } : {});
  return JSON.parse(stdout);
};

describe('tombolo bridge --two-sheets', () => {
  it('writes a second layer behind each that has islands, and tells the difference in tone', async () => {
    const { code, stdout, stderr } = await workshop.run(['bridge', 'post.svg', '--two-sheets']);
    expect(code).toBe(0);
    expect(stderr).toBe(
      'post.svg: "Numerals" is two sheets now, with 4 bridges and 4. Expect one coat of paint in the shadows of bridges, two elsewhere\n',
    );
    const { files, summary } = await checked('-', stdout);
    const layers = files[0].layers.map(({ name, islands }: { name: string; islands: number }) => [name, islands]);
    expect(layers).toEqual([
      ['Water', 0],
      ['Numerals', 0],
      ['Numerals-2', 0],
    ]);
    expect(summary).toMatchObject({ error: 0, warning: 0 });
  });

  it('lists the bridges of both sheets', async () => {
    const { stdout } = await workshop.run(['bridge', 'post.svg', '--two-sheets', '--plan']);
    const { bridges } = JSON.parse(stdout) as { bridges: { sheet: number }[] };
    expect(bridges.map(({ sheet }) => sheet)).toEqual([1, 1, 1, 1, 2, 2, 2, 2]);
  });

  it('writes two files and the project that makes one stack of them', async () => {
    const { code } = await workshop.run(['bridge', 'post.svg', '--two-sheets', '--out', 'both']);
    expect(code).toBe(0);
    const project = JSON.parse(await readFile(workshop.path('both/tombolo.json'), 'utf8'));
    expect(project.layers).toEqual([
      { from: 'first.svg#Water', name: 'Water', paint: '#000000' },
      { from: 'first.svg#Numerals', name: 'Numerals', paint: '#334455' },
      { from: 'second.svg#Numerals', name: 'Numerals (second sheet)', paint: '#334455', with: 'Numerals' },
    ]);
    expect(await readFile(workshop.path('both/second.svg'), 'utf8')).not.toContain('Water');
    const { summary } = await checked('both');
    expect(summary).toMatchObject({ error: 0, warning: 0 });
    // What the same command wrote may be written again, another project not.
    expect((await workshop.run(['bridge', 'post.svg', '--two-sheets', '--out', 'both'])).code).toBe(0);
    await mkdir(workshop.path('other'));
    await workshop.file('other/tombolo.json', '{ "layers": [{ "from": "sun.svg" }] }');
    const other = await workshop.run(['bridge', 'post.svg', '--two-sheets', '--out', 'other']);
    expect(other.code).toBe(2);
    expect(other.stderr).toContain('another project is in this folder');
  });

  it('ends where no folder can be made', async () => {
    const { code, stderr } = await workshop.run(['bridge', 'post.svg', '--two-sheets', '--out', '/proc/tombolo']);
    expect([code, stderr]).toEqual([2, 'tombolo: /proc/tombolo: no such file or folder\n']);
  });

  it('needs --two-sheets for --out', async () => {
    const { code, stderr } = await workshop.run(['bridge', 'post.svg', '--out', 'both']);
    expect([code, stderr]).toEqual([2, 'tombolo: --out needs --two-sheets\n']);
  });
});
