/** `tombolo check` by several threads, by shares for several machines, and with what earlier runs found. */
import { mkdir, readdir, readFile, utimes, writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it, it as test } from 'vitest';
import { CliWorkshop } from '../run-cli';
import { SOUND, stencil, WITH_ISLAND } from '../stencils';

let workshop: CliWorkshop;

/** A dozen drawings, one file that cannot be read, and a project of two. */
beforeAll(async () => {
  workshop = await CliWorkshop.create();
  for (let i = 0; i < 12; i += 1) {
    const hole = `<path d="M${i + 2} 2h30v20h-30z M${i + 6} 6v8h6v-8z"/>`;
    await workshop.file(`reed-${String(i).padStart(2, '0')}.svg`, i % 3 === 0 ? stencil(hole) : SOUND);
  }
  await workshop.file('spoilt.svg', Buffer.from([0x3c, 0xff, 0xfe, 0x3e]));
  await mkdir(workshop.path('trail'));
  await workshop.file('trail/sun.svg', WITH_ISLAND);
  await workshop.file('trail/reeds.svg', SOUND);
  await workshop.file('trail/tombolo.json', JSON.stringify({ layers: [{ from: 'sun.svg' }, { from: 'reeds.svg' }] }));
});
afterAll(() => workshop.dispose());

const check = (...words: string[]) => workshop.run(['check', '.', '--format', 'json', ...words]);
const pathsIn = (stdout: string): string[] => JSON.parse(stdout).files.map(({ path }: { path: string }) => path);

test('says the same by however many threads', async () => {
  const alone = await check('--jobs', '1');
  const together = await check('--jobs', '3');
  expect(alone.code).toBe(2);
  expect(pathsIn(alone.stdout)).toHaveLength(14);
  expect(together).toEqual(alone);
});

test('prints text in the order of the files, by however many threads, and as all of it makes at once', async () => {
  const alone = await workshop.run(['check', '.', '--jobs', '1']);
  const together = await workshop.run(['check', '.', '--jobs', '3']);
  expect(together).toEqual(alone);
  await workshop.run(['check', '.', '--output-file', 'all.txt']);
  expect(alone.stdout).toBe(await readFile(workshop.path('all.txt'), 'utf8'));
});

test('shares are apart, and are everything together; a project is in one of them', async () => {
  const whole = pathsIn((await check()).stdout);
  const shares = await Promise.all([1, 2, 3].map(async (k) => pathsIn((await check('--shard', `${k}/3`)).stdout)));
  expect(shares.every((share) => share.length > 1)).toBe(true);
  expect(shares.flat().sort()).toEqual([...whole].sort());
  expect(shares.filter((share) => share.some((path) => path.startsWith('trail/')))).toHaveLength(1);
});

test.each(['0/3', '4/3', '2', 'a/b'])('no share is %s', async (share) => {
  const { code, stderr } = await check('--shard', share);
  expect(code).toBe(2);
  expect(stderr).toContain('Write which share of how many, such as 2/5.');
});

describe('what was found before', () => {
  const entries = async () => (await readdir(workshop.path('kept'))).filter((name) => name.endsWith('.json'));

  it('is told again, byte for byte; what could not be read is not kept', async () => {
    const first = await check('--cache', 'kept');
    expect(await entries()).toHaveLength(13);
    expect(await check('--cache', 'kept')).toEqual(first);
    expect(await check()).toEqual(first);
  });

  it('is not worked out again, unless it was spoilt', async () => {
    const [name = ''] = await entries();
    const kept = workshop.path(`kept/${name}`);
    const { files } = JSON.parse(await readFile(kept, 'utf8'));
    files[0].checked.layers = [];
    await writeFile(kept, JSON.stringify({ files, configs: [] }));
    expect((await check('--cache', 'kept')).stdout).toContain('"layers": []');
    await writeFile(kept, '{"files":');
    expect(await check('--cache', 'kept')).toEqual(await check());
  });

  it.each([
    ['another content', 'reed-01.svg', WITH_ISLAND],
    ['another file of its project', 'trail/reeds.svg', stencil('<path d="M2 2h9v9h-9z"/>')],
    [
      'another configuration',
      'trail/tombolo.json',
      '{"layers":[{"from":"sun.svg"},{"from":"reeds.svg"}],"width":"90mm"}',
    ],
  ])('is not told of %s', async (_what, name, content) => {
    await check('--cache', 'kept');
    await workshop.file(name, content);
    expect(await check('--cache', 'kept')).toEqual(await check());
  });

  it('is not told under other settings', async () => {
    await check('--cache', 'kept');
    expect(await check('--cache', 'kept', '--width', '80mm')).toEqual(await check('--width', '80mm'));
  });

  it('is removed when nobody asked for it in a month', async () => {
    await check('--cache', 'kept');
    const [name = ''] = await entries();
    const long = new Date(Date.now() - 40 * 24 * 3_600_000);
    await writeFile(workshop.path(`kept/${'0'.repeat(64)}.json`), '{}');
    await utimes(workshop.path(`kept/${'0'.repeat(64)}.json`), long, long);
    await check('--cache', 'kept');
    expect(await entries()).toContain(name);
    expect(await entries()).not.toContain(`${'0'.repeat(64)}.json`);
  });

  it('has a folder, or the run says in one line that it has none', async () => {
    await workshop.file('no-folder', '');
    const { code, stderr } = await check('--cache', 'no-folder');
    expect(code).toBe(2);
    expect(stderr).toMatch(/^tombolo: no-folder: .*\n$/);
  });
});
