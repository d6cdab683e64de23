import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ConfigFinder } from '../../../src/cli/files/find-config';
import { DEFAULT_CONFIG } from '../../../src/config/types';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tombolo-config-'));
  await mkdir(join(folder, 'marsh/posts'), { recursive: true });
  await writeFile(join(folder, 'tombolo.json'), '{"margin": "1mm"}');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe('ConfigFinder', () => {
  it('takes the nearest one above the file', async () => {
    const finder = new ConfigFinder();
    const file = join(folder, 'marsh/posts/heron.svg');
    expect((await finder.configFor(file)).config.margin).toBe(1);
    await writeFile(join(folder, 'marsh/tombolo.json'), '\ufeff{"margin": "2mm"}');
    const { config, problems } = await finder.configFor(file);
    expect({ margin: config.margin, problems }).toEqual({ margin: 2, problems: [] });
  });

  it('a stated one holds for every file', async () => {
    await writeFile(join(folder, 'other.json'), '{"margin": "3mm"}');
    const finder = new ConfigFinder(join(folder, 'other.json'));
    expect((await finder.configFor(join(folder, 'marsh/heron.svg'))).config.margin).toBe(3);
  });

  it('reads each once', async () => {
    const finder = new ConfigFinder();
    const [first, second] = await Promise.all([
      finder.configFor(join(folder, 'a.svg')),
      finder.configFor(join(folder, 'marsh/b.svg')),
    ]);
    expect(first).toBe(second);
  });

  it('none anywhere gives the defaults', async () => {
    await rm(join(folder, 'tombolo.json'));
    expect(await new ConfigFinder().configFor(join(folder, 'a.svg'))).toMatchObject({
      path: undefined,
      config: DEFAULT_CONFIG,
    });
  });

  it('one that is a folder is a failure that names it', async () => {
    await mkdir(join(folder, 'marsh/tombolo.json'));
    const reading = new ConfigFinder().configFor(join(folder, 'marsh/a.svg'));
    await expect(reading).rejects.toThrow(/tombolo\.json: is a folder/);
  });
});
