/** Which files and which checks: folders, patterns, `ignore`, --only, --skip, --changed; and what else check prints. */
import { execFileSync } from 'node:child_process';
import { mkdir, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliWorkshop } from '../run-cli';
import { WITH_ISLAND, WITH_THIN_WEB } from '../stencils';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  const files = {
    'trail/tombolo.json': '{"ignore": ["drafts/**"]}',
    'trail/heron.svg': WITH_ISLAND,
    'trail/posts/reeds.svg': WITH_THIN_WEB,
    'trail/drafts/sun.svg': WITH_ISLAND,
    'trail/node_modules/kit/icon.svg': WITH_ISLAND,
    'trail/print.svg': WITH_ISLAND.replace('<svg', '<svg data-tombolo-picture="stack"'),
    'trail/stack/tombolo.json': '{"layers": [{"from": "../stack/sky.svg"}]}',
    'trail/stack/sky.svg': WITH_THIN_WEB,
  };
  for (const [name, text] of Object.entries(files)) {
    await mkdir(dirname(workshop.path(name)), { recursive: true });
    await workshop.file(name, text);
  }
});
afterAll(() => workshop.dispose());

async function checked(...words: string[]): Promise<{ path: string; checks: string[] }[]> {
  const { stdout } = await workshop.run(['check', ...words, '--format', 'json']);
  const { files } = JSON.parse(stdout) as { files: { path: string; findings: { check: string }[] }[] };
  return files.map(({ path, findings }) => ({ path, checks: [...new Set(findings.map(({ check }) => check))] }));
}
const paths = async (...words: string[]) => (await checked(...words)).map(({ path }) => path).sort();

describe('files', () => {
  const ALL = ['trail/heron.svg', 'trail/posts/reeds.svg', 'trail/stack/sky.svg'];

  it('a folder is entered downward, but for what is ignored, made or of other programs', async () => {
    expect(await paths('trail')).toEqual(ALL);
    expect(await paths()).toEqual(ALL);
  });

  it('patterns in quotes are followed', async () => {
    expect(await paths('trail/**/{heron,reeds}.svg')).toEqual(['trail/heron.svg', 'trail/posts/reeds.svg']);
    const { code, stderr } = await workshop.run(['check', 'trail/*.gif']);
    expect({ code, stderr }).toEqual({ code: 2, stderr: 'tombolo: trail/*.gif: no file matches\n' });
  });

  it('a file that is named is checked though it is ignored', async () => {
    expect(await paths('trail/drafts/sun.svg')).toEqual(['trail/drafts/sun.svg']);
  });

  it('--changed checks what git holds to be changed', async () => {
    const git = (...words: string[]) => execFileSync('git', words, { cwd: workshop.folder });
    git('init', '-q');
    git('add', '.');
    git('-c', 'user.name=marsh', '-c', 'user.email=marsh@trail.invalid', 'commit', '-qm', 'Begin');
    await workshop.file('trail/heron.svg', `${WITH_ISLAND}\n`);
    expect(await paths('trail', '--changed')).toEqual(['trail/heron.svg']);
  });
});

describe('checks', () => {
  it('--only and --skip choose what is told, and what counts', async () => {
    expect(await checked('trail/heron.svg', '--only', 'thin-bridge')).toEqual([
      { path: 'trail/heron.svg', checks: [] },
    ]);
    expect((await workshop.run(['check', 'trail/heron.svg', '--only', 'thin-bridge'])).code).toBe(0);
    expect((await workshop.run(['check', 'trail/heron.svg', '--only', 'thin-bridge,floating-island'])).code).toBe(1);
    expect((await workshop.run(['check', 'trail/heron.svg', '--skip', 'floating-island'])).code).toBe(0);
  });
});

describe('output', () => {
  it('--output-file writes there, and the exit code is the same', async () => {
    const words = ['check', 'trail/heron.svg', '--format', 'json'];
    const printed = await workshop.run(words);
    const { code, stdout } = await workshop.run([...words, '--output-file', 'report.json']);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(await readFile(workshop.path('report.json'), 'utf8')).toBe(printed.stdout);
  });

  it('--statistics counts by check', async () => {
    const { stdout } = await workshop.run(['check', 'trail', '--statistics']);
    expect(stdout).toMatch(/\nfindings {2}files {2}check\n(?: *\d+ +\d+ {2}[\w-]+\n)+$/);
    expect(stdout).toMatch(/\n +1 +1 {2}floating-island\n/);
  });

  it('--print-config says which settings hold', async () => {
    const { stdout } = await workshop.run(['check', 'trail/heron.svg', '--print-config']);
    expect(JSON.parse(stdout)).toMatchObject({
      'trail/heron.svg': { from: 'trail/tombolo.json', config: { ignore: ['drafts/**'], material: 'card-0.3' } },
    });
  });

  it('--explain tells of a check, and knows no others', async () => {
    expect((await workshop.run(['check', '--explain', 'thin-bridge'])).stdout).toMatch(/^# thin-bridge\n\n\S/);
    expect((await workshop.run(['check', '--explain', 'thin'])).code).toBe(2);
  });

  it('a file that could not be read is told to programs as well', async () => {
    const { code, stdout } = await workshop.run(['check', 'gone.svg', 'trail/heron.svg', '--format', 'json']);
    expect(code).toBe(2);
    const { files, errors } = JSON.parse(stdout);
    expect(files).toHaveLength(1);
    expect(errors).toEqual([{ message: 'gone.svg: no such file or folder' }]);
  });
});
