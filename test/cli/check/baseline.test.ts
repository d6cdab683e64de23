import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withBaseline } from '../../../src/cli/check/baseline';
import { readConfig } from '../../../src/engine/check/known-checks';
import { CliWorkshop } from '../run-cli';
import { WITH_ISLAND, WITH_THIN_WEB } from '../stencils';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('island.svg', WITH_ISLAND);
  await workshop.file('web.svg', WITH_THIN_WEB);
});
afterAll(() => workshop.dispose());

describe('check --write-baseline', () => {
  it('needs a tombolo.json', async () => {
    const { code, stdout, stderr } = await workshop.run(['check', 'island.svg', '--write-baseline']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toBe('tombolo: island.svg: has no tombolo.json to keep a baseline in\n');
  });

  it('lets what is found now pass, and nothing that comes later', async () => {
    const text = '{\n  // how we cut\n  "margin": "2mm"\n}\n';
    await workshop.file('tombolo.json', text);
    const found = await workshop.run(['check', 'island.svg', 'web.svg']);
    expect(found.code).toBe(1);
    expect(await workshop.run(['check', 'web.svg', '--write-baseline'])).toMatchObject({ code: 0, stderr: '' });
    expect((await workshop.run(['check', 'web.svg'])).code).toBe(0);
    expect((await workshop.run(['check', 'island.svg'])).code).toBe(1);
    const both = await workshop.run(['check', 'island.svg', 'web.svg', '--write-baseline']);
    expect(both.stdout).toMatch(/^tombolo\.json: \d+ findings are let pass from now on\.\n$/);
    expect(await workshop.run(['check', 'island.svg', 'web.svg'])).toMatchObject({ code: 0 });
    const written = await readFile(workshop.path('tombolo.json'), 'utf8');
    expect(written).toContain('// how we cut');
    expect(readConfig(written).problems).toEqual([]);
  });
});

describe('withBaseline', () => {
  const entry = { check: 'thin-bridge', layer: 'ink', at: [1, 2] } as const;

  it('keeps the rest of the text, and takes an empty baseline out', () => {
    const text = '{\n  "margin": "2mm" // all round\n}\n';
    const written = withBaseline(text, [entry]);
    expect(written).toContain('"margin": "2mm"');
    expect(written).toContain('// all round');
    expect(readConfig(written).config.baseline).toEqual([entry]);
    expect(readConfig(withBaseline(written, [])).config.baseline).toEqual([]);
    expect(readConfig(withBaseline('', [entry])).config.baseline).toEqual([entry]);
  });
});

describe('the baseline of several files', () => {
  const config = '{"margin": "0mm"}';
  const entriesNow = async () =>
    readConfig(await readFile(workshop.path('tombolo.json'), 'utf8')).config.baseline.map(({ file }) => file);
  const write = (...files: string[]) => workshop.run(['check', ...files, '--write-baseline']);

  it('of one hides nothing in another', async () => {
    await workshop.file('tombolo.json', config);
    await workshop.file('twin.svg', WITH_ISLAND);
    await write('island.svg');
    expect((await workshop.run(['check', 'island.svg'])).code).toBe(0);
    expect((await workshop.run(['check', 'twin.svg'])).code).toBe(1);
  });

  it('keeps the entries of files that were not checked', async () => {
    await workshop.file('tombolo.json', config);
    await write('island.svg');
    await write('web.svg');
    expect(new Set(await entriesNow())).toEqual(new Set(['island.svg', 'web.svg']));
    expect((await workshop.run(['check', 'island.svg', 'web.svg'])).code).toBe(0);
  });

  it('says what matches nothing any more, and takes it out when it is written anew', async () => {
    await workshop.file('tombolo.json', config);
    await workshop.file('mended.svg', WITH_ISLAND);
    await write('mended.svg', 'web.svg');
    await workshop.file('mended.svg', WITH_ISLAND.replace(/<path[^>]*\/>/g, ''));
    const { code, stderr } = await workshop.run(['check', 'mended.svg', 'web.svg']);
    expect(code).toBe(0);
    expect(stderr).toMatch(/^tombolo\.json: \d+ entr(y|ies) of the baseline match(es)? nothing any more; /);
    await write('mended.svg');
    expect(await entriesNow()).toEqual(['web.svg']);
  });

  it('says how much it let pass, in text and in JSON', async () => {
    await workshop.file('tombolo.json', config);
    await write('web.svg');
    expect((await workshop.run(['check', 'web.svg'])).stdout).toMatch(/ The baseline let \d+ findings? pass\.\n$/);
    const { stdout } = await workshop.run(['check', 'web.svg', '--format', 'json']);
    expect(JSON.parse(stdout).passedByBaseline).toBe((await entriesNow()).length);
  });
});
