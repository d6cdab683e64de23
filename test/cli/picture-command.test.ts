import { readdir, readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CliWorkshop } from './run-cli';
import { SOUND, stencil, TWO_LAYERS } from './stencils';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('two.svg', TWO_LAYERS);
});
afterAll(() => workshop.dispose());

const read = (name: string) => readFile(workshop.path(name));

async function pngSize(name: string): Promise<[number, number]> {
  const png = await read(name);
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
  return [png.readUInt32BE(16), png.readUInt32BE(20)];
}

describe('tombolo picture', () => {
  it('draws an SVG at true size', async () => {
    const outcome = await workshop.run(['picture', 'two.svg', '--out', 'stack.svg', '--ground', 'linen']);
    expect(outcome).toMatchObject({ code: 0, stdout: '', stderr: '' });
    const svg = (await read('stack.svg')).toString();
    expect(svg).toContain('width="60mm" height="40mm" viewBox="0 0 60 40"');
    expect(svg).toContain('fill="#faf0e6"');
    expect(svg.indexOf('#8fd3ff')).toBeLessThan(svg.indexOf('#ffb300'));
  });

  it('draws a PNG at the scale asked for, else at 10 pixels to the mm', async () => {
    expect((await workshop.run(['picture', 'two.svg', '--out', 'stack.png', '--scale', '2.5'])).code).toBe(0);
    expect(await pngSize('stack.png')).toEqual([150, 100]);
    expect((await workshop.run(['picture', 'two.svg', '--out', 'STACK.PNG'])).code).toBe(0);
    expect(await pngSize('STACK.PNG')).toEqual([600, 400]);
  });

  it('--layer draws one alone', async () => {
    await workshop.run(['picture', 'two.svg', '--out', 'sun.svg', '--layer', 'sun']);
    const svg = (await read('sun.svg')).toString();
    expect(svg).toContain('#ffb300');
    expect(svg).not.toContain('#8fd3ff');
  });

  it('the ground is that of tombolo.json, unless another is asked for', async () => {
    await workshop.file('wall.json', '{"ground": "#556b2f"}');
    await workshop.run(['picture', 'two.svg', '--config', 'wall.json', '--out', 'wall.svg']);
    expect((await read('wall.svg')).toString()).toContain('fill="#556b2f"');
    await workshop.run(['picture', 'two.svg', '--config', 'wall.json', '--out', 'wall.svg', '--ground', 'linen']);
    expect((await read('wall.svg')).toString()).not.toContain('#556b2f');
  });

  it('--look draws one sheet or all of them, --opacity thins the paint', async () => {
    const words = ['picture', 'two.svg', '--scale', '2'];
    expect((await workshop.run([...words, '--out', 'sheets.png', '--look', 'sheets'])).code).toBe(0);
    const [width, height] = await pngSize('sheets.png');
    expect(width * height).toBeGreaterThan(2 * 120 * 80);
    expect((await workshop.run([...words, '--out', 'sheet.svg', '--look', 'sheet', '--layer', 'sun'])).code).toBe(0);
    const sheet = (await read('sheet.svg')).toString();
    expect(sheet).toContain('fill="#d8c39b"');
    expect(sheet).not.toContain('#ffb300');
    expect((await workshop.run([...words, '--out', 'thin.svg', '--opacity', '40%'])).code).toBe(0);
    expect((await read('thin.svg')).toString()).toContain('fill="#8fd3ff" fill-opacity="0.4"');
    for (const odd of [
      ['--look', 'poster'],
      ['--opacity', '140'],
      ['--opacity', 'half'],
    ]) {
      expect((await workshop.run([...words, '--out', 'odd.svg', ...odd])).code).toBe(2);
    }
  });

  it('standard input, and --width', async () => {
    const words = ['picture', '-', '--out', 'wide.svg', '--width', '120mm'];
    expect((await workshop.run(words, { input: SOUND })).code).toBe(0);
    expect((await read('wide.svg')).toString()).toContain('width="120mm" height="80mm"');
  });

  it('a stencil without openings leaves the ground bare, and that is said', async () => {
    await workshop.file('bare.svg', stencil(''));
    const outcome = await workshop.run(['picture', 'bare.svg', '--out', 'bare-stack.svg']);
    expect(outcome).toMatchObject({ code: 0, stderr: 'bare.svg: no openings; the picture shows the bare ground\n' });
  });

  it('what has no size has no picture', async () => {
    const { code, stderr } = await workshop.run(['picture', '-', '--out', 'none.svg'], { input: '' });
    expect(code).toBe(2);
    expect(stderr).toMatch(/^tombolo: <stdin>: has no size/m);
    expect(await readdir(workshop.folder)).not.toContain('none.svg');
  });

  it.each([
    [['picture', 'two.svg', '--out', 'stack.jpg'], /^tombolo: stack\.jpg: a picture's name ends in \.svg or \.png\n$/],
    [['picture', 'two.svg', '--out', 'two.svg'], /^tombolo: two\.svg: this is the stencil itself/],
    [['picture', 'two.svg', '--out', 'nowhere/stack.svg'], /^tombolo: nowhere\/stack\.svg: no such file or folder\n$/],
    [['picture', 'two.svg', '--out', 'two.svg/stack.png'], /^tombolo: two\.svg\/stack\.png: a part of this path/],
    [['picture', 'nowhere.svg', '--out', 'other.svg'], /^tombolo: nowhere\.svg: no such file/],
    [['picture', 'two.svg', '--out', 'other.png', '--scale', '999'], /^tombolo: the picture would have 59940 × 39960/],
    [['picture', 'two.svg', '--out', 'other.svg', '--layer', 'moon'], /its layers are "sky", "sun"\n$/],
    [['picture', 'two.svg', '--out', 'other.svg', '--ground', 'url(#a)'], /Write a colour such as/],
    [['picture', 'two.svg', '--out', 'other.png', '--scale', '0'], /how many pixels a millimetre gets/],
    [['picture', 'two.svg'], /^tombolo: required option '--out <file>' not specified/],
  ])('%j ends with 2 and writes nothing', async (words, line) => {
    const before = await readdir(workshop.folder);
    const { code, stdout, stderr } = await workshop.run(words);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(line);
    expect(await readdir(workshop.folder)).toEqual(before);
    expect((await read('two.svg')).toString()).toBe(TWO_LAYERS);
  });
});
