import { mkdir, readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeText } from '../../src/cli/files/read-input';
import { CliWorkshop } from './run-cli';
import { stencil } from './stencils';

let workshop: CliWorkshop;

const sun = '  <g id="sun" fill="#ffdd55"><path d="M20 15h20v10h-20z"/></g>';
const marsh =
  '  <!-- round the sun -->\n' +
  '  <g id="marsh" fill="#224433"><path fill-rule="evenodd" d="M10 10h40v20h-40z M20 15v10h20v-10z"/></g>';
const post = '  <g id="post" fill="#884422"><path d="M54 10h3v20h-3z"/></g>';

/** The sun is sprayed before the ring that it lies in. */
const LATE = stencil([post, sun, marsh].join('\n'));
const BEST = stencil([post, marsh, sun].join('\n'));

const HEAVY = stencil(Array.from({ length: 17 }, (_, i) => post.replace('post', `post-${i}`)).join('\n'));

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('late.svg', LATE);
  await workshop.file('best.svg', BEST);
  await workshop.file('heavy.svg', HEAVY);
  await mkdir(workshop.path('trail'));
  for (const [name, group] of Object.entries({ sun, marsh, post })) {
    await workshop.file(`trail/${name}.svg`, stencil(group));
  }
  const layers = '{ "from": "post.svg" }, { "from": "sun.svg" }, // last year\n  { "from": "marsh.svg" }';
  await workshop.file('trail/tombolo.json', `{ "layers": [${layers}] }`);
});
afterAll(() => workshop.dispose());

const read = async (name: string) => (await readFile(workshop.path(name))).toString();

describe('tombolo order', () => {
  it('says the best order, and changes nothing', async () => {
    expect(await workshop.run(['order', 'late.svg'])).toMatchObject({
      code: 0,
      stderr: '',
      stdout:
        'late.svg: 0 islands to bridge in the best spray order, 1 as it is now\n' +
        '  1  post\n  2  marsh\n  3  sun (was 2)\n' +
        '  1 island can be cut away: later paint covers the place.\n',
    });
    expect(await read('late.svg')).toBe(LATE);
  });

  it('says so where the order is the best already', async () => {
    const { code, stdout } = await workshop.run(['order', 'best.svg', '--write']);
    expect({ code, stdout }).toEqual({
      code: 0,
      stdout:
        'best.svg: the spray order is the best already: 0 islands to bridge\n' +
        '  1 island can be cut away: later paint covers the place.\n',
    });
    expect(await read('best.svg')).toBe(BEST);
  });

  it('--format json gives a line for each stack', async () => {
    const { stdout } = await workshop.run(['order', 'late.svg', 'trail', 'trail/sun.svg', '--format', 'json']);
    const same = { version: 1, order: ['post', 'marsh', 'sun'], places: [0, 2, 1], moved: ['sun'] };
    const counts = { islands: 1, islandsBefore: 1, islandsAfter: 0 };
    expect(
      stdout
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line) as object),
    ).toEqual([
      { ...same, ...counts, path: 'late.svg' },
      { ...same, ...counts, path: 'trail/tombolo.json' },
    ]);
  });

  it('--write puts the groups in order, with their comments and in their encoding', async () => {
    const encoding = { name: 'utf-16le', byteOrderMark: true } as const;
    await workshop.file('written.svg', encodeText(LATE, encoding));
    const { code, stderr } = await workshop.run(['order', 'written.svg', '--write']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: 'written.svg: 1 layer moved\n' });
    expect(await readFile(workshop.path('written.svg'))).toEqual(encodeText(BEST, encoding));
  });

  it('--write puts the entries of tombolo.json in order', async () => {
    const { code, stderr } = await workshop.run(['order', 'trail/post.svg', '--write']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: 'trail/tombolo.json: 1 layer moved\n' });
    expect(await read('trail/tombolo.json')).toBe(
      '{ "layers": [{ "from": "post.svg" }, { "from": "marsh.svg" }, // last year\n  { "from": "sun.svg" }] }',
    );
    expect((await workshop.run(['order', 'trail'])).stdout).toMatch(/^trail\/tombolo.json: .* best already/);
  });

  it('--light-over-dark weighs coats against islands', async () => {
    const orderBy = async (weight: string) => {
      const { stdout } = await workshop.run(['order', 'late.svg', '--light-over-dark', weight, '--format', 'json']);
      return (JSON.parse(stdout) as { order: string[] }).order;
    };
    expect(await orderBy('0.9')).toEqual(['post', 'marsh', 'sun']);
    expect(await orderBy('1.5')).toEqual(['post', 'sun', 'marsh']);
  });

  it('too many layers are refused in one line', async () => {
    const { code, stdout, stderr } = await workshop.run(['order', 'heavy.svg']);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toBe('heavy.svg: refused: This stack has 17 layers; the best order is only found for up to 16.\n');
  });

  it('layers that are no groups are refused in one line', async () => {
    const loose = stencil([post, sun, marsh.replaceAll('g>', 'a>').replaceAll('<g', '<a')].join('\n'));
    await workshop.file('loose.svg', loose);
    const { code, stderr } = await workshop.run(['order', 'loose.svg', '--write']);
    expect(code).toBe(1);
    expect(stderr).toMatch(/^loose\.svg: refused: The order is that of the groups .*\n$/);
    expect(await read('loose.svg')).toBe(loose);
  });

  it.each([
    [['late.svg', '--light-over-dark', 'much'], /Write a number/],
    [['-', '--write'], /^tombolo: --write needs a file/],
    [['none.svg'], /^tombolo: none\.svg: /],
    [[], /missing required argument/],
  ])('wrong use: %j', async (words, message) => {
    const { code, stderr } = await workshop.run(['order', ...words]);
    expect(code).toBe(2);
    expect(stderr).toMatch(message);
  });

  it('reads standard input', async () => {
    const { stdout } = await workshop.run(['order', '-', '--format', 'json'], { input: LATE });
    expect(JSON.parse(stdout)).toMatchObject({ path: '<stdin>', islandsBefore: 1, islandsAfter: 0 });
  });
});
