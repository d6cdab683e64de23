/** `tombolo strip`: the strip, and the limits that were read from it. */
import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, expect, it as test } from 'vitest';
import { CliWorkshop } from '../run-cli';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
});
afterAll(() => workshop.dispose());

test('writes a strip that can be checked and cut, and never over a file', async () => {
  expect(await workshop.run(['strip', '--out', 'strip.svg'])).toMatchObject({ code: 0, stdout: '', stderr: '' });
  expect((await workshop.run(['strip'])).stdout).toBe(await readFile(workshop.path('strip.svg'), 'utf8'));
  expect((await workshop.run(['check', 'strip.svg'])).code).toBe(0);
  expect((await workshop.run(['cut', 'strip.svg', '--out', 'cut'])).code).toBe(0);
  const again = await workshop.run(['strip', '--out', 'strip.svg']);
  expect(again).toMatchObject({ code: 2, stderr: 'tombolo: strip.svg: is there already; name another file\n' });
});

test('keeps limits in a new tombolo.json, then changes that one; its comments stay', async () => {
  const { code, stdout } = await workshop.run(['strip', '--bridge', '0.7mm', '--opening', '0.5mm']);
  expect({ code, stdout }).toEqual({
    code: 0,
    stdout: 'tombolo.json: the least that counts as sound is now bridge 0.7mm, opening 0.5mm.\n',
  });
  expect(JSON.parse(await readFile(workshop.path('tombolo.json'), 'utf8'))).toEqual({
    limits: { bridge: '0.7mm', opening: '0.5mm' },
  });
  await workshop.file('tombolo.json', '{\n  // card of 300 g\n  "limits": { "slip": "0.4mm" }\n}\n');
  await workshop.run(['strip', '--bridge', '0.9mm']);
  const text = await readFile(workshop.path('tombolo.json'), 'utf8');
  expect(text).toContain('// card of 300 g');
  expect(text).toMatch(/"slip": "0\.4mm",\s+"bridge": "0\.9mm"/);
});

test.each([
  [['--bridge', '0'], 'Write a length with its unit'],
  [['--bridge', '40mm'], '10 mm is the most'],
  [['--bridge', '1mm', '--out', 'other.svg'], '--out is for the strip'],
])('refuses %j in one line, and writes nothing', async (words, why) => {
  const before = await readFile(workshop.path('tombolo.json'), 'utf8');
  const { code, stderr } = await workshop.run(['strip', ...words]);
  expect(code).toBe(2);
  expect(stderr).toContain(why);
  expect(await readFile(workshop.path('tombolo.json'), 'utf8')).toBe(before);
});

test('leaves a tombolo.json that has errors as it is', async () => {
  await workshop.file('tombolo.json', '{ "limits": ');
  const { code, stderr } = await workshop.run(['strip', '--bridge', '0.7mm']);
  expect({ code, stderr }).toEqual({ code: 2, stderr: 'tombolo: tombolo.json: has errors; fix those first\n' });
  expect(await readFile(workshop.path('tombolo.json'), 'utf8')).toBe('{ "limits": ');
});
