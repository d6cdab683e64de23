import { chmod, mkdir, readdir, readFile, readlink, stat, symlink } from 'node:fs/promises';
import { applyPatch } from 'diff';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { encodeText } from '../../src/cli/files/read-input';
import type { Point } from '../../src/geometry/base/curve-types';
import { CliWorkshop } from './run-cli';
import { SOUND, stencil, WITH_ISLAND } from './stencils';

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('sound.svg', SOUND);
  await workshop.file('island.svg', WITH_ISLAND);
});
afterAll(() => workshop.dispose());

const read = (name: string) => readFile(workshop.path(name));

describe('tombolo bridge', () => {
  it('gives the bridged file to stdout, and that passes the check', async () => {
    const { code, stdout, stderr } = await workshop.run(['bridge', 'island.svg']);
    expect(stderr).toMatch(/^island\.svg: [1-9]\d* bridges? added\n$/);
    expect(code).toBe(0);
    expect(stdout).not.toBe(WITH_ISLAND);
    const again = await workshop.run(['check', '-', '--format', 'json'], { input: stdout });
    expect(JSON.parse(again.stdout).files[0].layers[0].islands).toBe(0);
    expect(again.code).toBe(0);
    expect((await read('island.svg')).toString()).toBe(WITH_ISLAND);
  });

  it('reads standard input', async () => {
    const [fromFile, fromInput] = await Promise.all([
      workshop.run(['bridge', 'island.svg']),
      workshop.run(['bridge', '-'], { input: WITH_ISLAND }),
    ]);
    expect(fromInput).toMatchObject({ code: 0, stdout: fromFile.stdout });
  });

  it('--width-of-bridge makes the bridges wider: less is open', async () => {
    const openArea = async (words: string[]) => {
      const { stdout } = await workshop.run(['bridge', 'island.svg', ...words]);
      const checked = await workshop.run(['check', '-', '--format', 'json'], { input: stdout });
      return JSON.parse(checked.stdout).files[0].layers[0].openingArea as number;
    };
    const [usual, wide] = await Promise.all([openArea([]), openArea(['--width-of-bridge', '3mm'])]);
    expect(wide).toBeLessThan(usual - 1);
  });

  it('what needs nothing comes out byte for byte, whatever its encoding', async () => {
    const text = SOUND.replace(/\n/g, '\r\n');
    for (const name of ['utf-8', 'utf-16le', 'utf-16be'] as const) {
      const bytes = encodeText(text, { name, byteOrderMark: true });
      await workshop.file('encoded.svg', bytes);
      const outcome = await workshop.run(['bridge', 'encoded.svg']);
      expect(outcome).toMatchObject({ code: 0, stderr: 'encoded.svg: no bridge added\n' });
      expect(outcome.bytes.equals(bytes)).toBe(true);
    }
  });

  it('works through several files and folders, each whatever becomes of the others', async () => {
    await mkdir(workshop.path('several/below'), { recursive: true });
    const names = ['several/sun.svg', 'several/below/moon.svg', 'several/sound.svg'];
    for (const name of names) await workshop.file(name, name.includes('sound') ? SOUND : WITH_ISLAND);
    const { code, stdout, stderr } = await workshop.run(['bridge', 'gone.svg', 'several', '--write']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('gone.svg: no such file or folder');
    expect(stderr.match(/: [1-9] bridges? added$/gm)).toHaveLength(2);
    expect((await read('several/sound.svg')).toString()).toBe(SOUND);
    expect((await workshop.run(['check', 'several'])).code).toBe(0);
  });

  it.each([
    [['several', '--at', '1,2', '--write'], '--plan, --with, --at and --out are for one file'],
    [['several'], 'several files need --write or --diff'],
  ])('%j: what is for one file is not for several', async (words, why) => {
    expect(await workshop.run(['bridge', ...words])).toMatchObject({
      code: 2,
      stdout: '',
      stderr: `tombolo: ${why}\n`,
    });
  });

  it('--layer that is not there', async () => {
    const { code, stdout, stderr } = await workshop.run(['bridge', 'island.svg', '--layer', 'moon']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^tombolo: island\.svg: no layer is called "moon"; its layers are ".*"\n$/);
  });

  it('an island that no bridge can hold is refused, and the file stays as it is', async () => {
    const { code, stdout, stderr } = await workshop.run(['bridge', 'island.svg', '--width-of-bridge', '50mm']);
    expect(stdout).toBe(WITH_ISLAND);
    expect(stderr).toMatch(/^island\.svg: no bridge added\nisland\.svg: refused: .+\n$/);
    expect(code).toBe(1);
  });

  it('says what the bridges bring: prongs of a comb, held at their roots alone, by long bridges', async () => {
    const comb = 'M10 10h200v82h-200zM20 25v42h6v-8h70v-6h-70v-8h70v-6h-70v-8h70v-6z';
    const size = 'width="220mm" height="110mm" viewBox="0 0 220 110"';
    await workshop.file(
      'comb.svg',
      `<svg xmlns="http://www.w3.org/2000/svg" ${size}><path fill-rule="evenodd" d="${comb}"/></svg>`,
    );
    const { code, stderr } = await workshop.run(['bridge', 'comb.svg', '--plan']);
    expect(stderr).toMatch(
      /^comb\.svg: \d bridges planned\n(comb\.svg: brings: Loose tongue .+\n){2}comb\.svg: brings: Bridge at .+: 15\.00 mm long; .+\n$/,
    );
    expect(code).toBe(0);
  });

  it('says when the file could not be read whole', async () => {
    await workshop.file('half.svg', SOUND.slice(0, 150));
    const { code, stderr } = await workshop.run(['bridge', 'half.svg']);
    expect(stderr).toContain('half.svg: parts of the file could not be read; tombolo check shows them\n');
    expect(code).toBe(1);
  });
});

describe('tombolo bridge --plan', () => {
  it('gives the bridges as JSON and changes nothing', async () => {
    const { code, stdout, stderr } = await workshop.run(['bridge', 'island.svg', '--plan', '--bridge', '1.5mm']);
    const { version, bridges } = JSON.parse(stdout);
    expect([code, version, stderr]).toEqual([0, 1, `island.svg: ${bridges.length} bridges planned\n`]);
    for (const bridge of bridges) {
      expect(bridge).toEqual({
        layer: expect.any(String),
        island: { at: expect.anything(), area: 200, box: [20, 15, 40, 25], element: [10, 10, 50, 30], ordinal: 0 },
        from: expect.anything(),
        to: expect.anything(),
        width: 1.5,
        length: expect.any(Number),
        shown: 1,
      });
      expect(Math.hypot(bridge.to.x - bridge.from.x, bridge.to.y - bridge.from.y)).toBeCloseTo(bridge.length, 2);
    }
    expect((await read('island.svg')).toString()).toBe(WITH_ISLAND);
  });

  it('does not go with --write', async () => {
    expect(await workshop.run(['bridge', 'island.svg', '--plan', '--write'])).toMatchObject({ code: 2, stdout: '' });
  });
});

describe('tombolo bridge --diff', () => {
  it('is a patch that gives the bridged file', async () => {
    const [patch, bridged] = await Promise.all([
      workshop.run(['bridge', 'island.svg', '--diff']),
      workshop.run(['bridge', 'island.svg']),
    ]);
    expect(patch.stdout).toMatch(/^--- a\/island\.svg\n\+\+\+ b\/island\.svg\n@@ /);
    expect(applyPatch(WITH_ISLAND, patch.stdout)).toBe(bridged.stdout);
    expect((await read('island.svg')).toString()).toBe(WITH_ISLAND);
  });

  it('names the file so that patch programs find it, blanks and all', async () => {
    await workshop.file('marsh heron.svg', WITH_ISLAND);
    const header = '--- a/marsh heron.svg\t\n+++ b/marsh heron.svg\t\n';
    for (const name of ['marsh heron.svg', './marsh heron.svg', workshop.path('marsh heron.svg')]) {
      const { stdout } = await workshop.run(['bridge', name, '--diff']);
      expect(stdout.slice(0, header.length)).toBe(header);
    }
  });

  it('is empty where nothing is to be done', async () => {
    expect(await workshop.run(['bridge', 'sound.svg', '--diff'])).toMatchObject({ code: 0, stdout: '' });
  });
});

describe('tombolo bridge --write', () => {
  it('changes the file as stdout would have it, keeps its mode, and leaves nothing behind', async () => {
    await workshop.file('write.svg', WITH_ISLAND);
    await chmod(workshop.path('write.svg'), 0o640);
    const before = await readdir(workshop.folder);
    const { code, stdout } = await workshop.run(['bridge', 'write.svg', '--write']);
    expect({ code, stdout }).toEqual({ code: 0, stdout: '' });
    expect((await read('write.svg')).toString()).toBe((await workshop.run(['bridge', 'island.svg'])).stdout);
    expect((await stat(workshop.path('write.svg'))).mode & 0o777).toBe(0o640);
    expect(await readdir(workshop.folder)).toEqual(before);
  });

  it('keeps encoding and links', async () => {
    const how = { name: 'utf-16le', byteOrderMark: true } as const;
    await workshop.file('wide.svg', encodeText(WITH_ISLAND, how));
    await symlink('wide.svg', workshop.path('link.svg'));
    expect((await workshop.run(['bridge', 'link.svg', '--write'])).code).toBe(0);
    expect(await readlink(workshop.path('link.svg'))).toBe('wide.svg');
    const expected = (await workshop.run(['bridge', 'island.svg'])).stdout;
    expect((await read('wide.svg')).equals(encodeText(expected, how))).toBe(true);
  });

  it('does not touch a file that needs nothing', async () => {
    const before = await stat(workshop.path('sound.svg'));
    await workshop.run(['bridge', 'sound.svg', '--write']);
    expect((await stat(workshop.path('sound.svg'))).ino).toBe(before.ino);
  });

  it('where no file can be made beside it, says so in one line and loses nothing', async () => {
    const name = `${'reed'.repeat(62)}.svg`;
    await workshop.file(name, WITH_ISLAND);
    const { code, stdout, stderr } = await workshop.run(['bridge', name, '--write']);
    const line = `tombolo: ${name}: the name is too long\n`;
    expect({ code, stdout, stderr }).toEqual({ code: 2, stdout: '', stderr: line });
    expect((await read(name)).toString()).toBe(WITH_ISLAND);
  });

  it.each([
    [['bridge', 'nowhere.svg', '--write'], /^tombolo: nowhere\.svg: no such file/],
    [['bridge', '-', '--write'], /^tombolo: --write needs a file/],
    [['bridge', '/dev/null/heron.svg', '--write'], /a part of this path is no folder/],
    [['bridge', 'island.svg', '--write', '--diff'], /^tombolo: option '--write' cannot be used with option '--diff'/],
    [['bridge', 'island.svg', '--width-of-bridge', 'broad'], /Write a length with its unit/],
  ])('%j ends with 2', async (words, line) => {
    const { code, stdout, stderr } = await workshop.run(words, { input: WITH_ISLAND });
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(line);
    expect((await read('island.svg')).toString()).toBe(WITH_ISLAND);
  });
});

describe('tombolo bridge --at', () => {
  const bridge = (words: string[], input = WITH_ISLAND) => workshop.run(['bridge', '-', ...words], { input });
  const plan = async (words: string[], input?: string) =>
    JSON.parse((await bridge([...words, '--plan'], input)).stdout).bridges;

  it('puts one bridge there, and on that changes it', async () => {
    const [put] = await plan(['--at', '15,20']);
    expect(put).toEqual({
      layer: expect.any(String),
      from: { x: 20, y: 20 },
      to: { x: 10, y: 20 },
      width: 0.8,
      length: 10,
      shown: 1,
    });
    const { stdout, stderr } = await bridge(['--at', '15,20']);
    expect(stderr).toBe('<stdin>: Bridge the gap here (1 bridge of 0.80 mm); leaves a loose tongue\n');
    const wide = await bridge(['--at', '15,20', '--bridge', '1.5mm'], stdout);
    expect(wide).toMatchObject({ code: 0, stderr: '<stdin>: Widen this bridge to 1.50 mm\n' });
    const moved = await plan(['--at', '15,20', '--move-to', '30,12.5'], wide.stdout);
    expect(moved).toMatchObject([{ from: { x: 30 }, to: { x: 30 }, width: 1.5, length: 5 }]);
    const removed = await bridge(['--at', '15,20', '--remove'], wide.stdout);
    expect(removed).toMatchObject({
      code: 0,
      stderr: '<stdin>: Remove this bridge (it is the last: 200.0 mm² will fall out)\n',
    });
    expect(removed.stdout).toMatch(/d="M10 10H50V30H10Z/);
  });

  it('says why not', async () => {
    expect(await bridge(['--at', '3,3'])).toMatchObject({
      code: 1,
      stdout: WITH_ISLAND,
      stderr: expect.stringMatching(/^<stdin>: nothing changed\n<stdin>: refused: There is no gap/),
    });
    for (const [words, line] of [
      [['--at', '15,20', '--remove'], 'tombolo: <stdin>: no bridge is at 15,20 mm\n'],
      [['--remove'], 'tombolo: --move-to and --remove need --at\n'],
      [['--at', '15'], /Write a place as two numbers/],
    ] as const) {
      const { code, stderr } = await bridge([...words]);
      expect(code).toBe(2);
      expect(stderr).toMatch(line);
    }
    const { stdout } = await bridge(['--at', '15,20']);
    expect(await bridge(['--at', '15,20'], stdout)).toMatchObject({
      code: 2,
      stderr: expect.stringMatching(/already; say --bridge/),
    });
  });
});

test('--style says how bridges stand, before tombolo.json does', async () => {
  const tall = stencil('  <path fill="#222222" fill-rule="evenodd" d="M10 4H40V36H10Z M16 12V28H34V12Z"/>');
  const lean = async (words: string[]) => {
    const { stdout } = await workshop.run(['bridge', '-', '--plan', ...words], { input: tall });
    const { bridges } = JSON.parse(stdout) as { bridges: readonly { from: Point; to: Point }[] };
    return bridges.map(({ from, to }) => ({ x: Math.abs(from.x - to.x), y: Math.abs(from.y - to.y) }));
  };
  const [upright, level, auto, usual, fewest] = await Promise.all(
    [['--style', 'upright'], ['--style', 'level'], ['--style', 'auto'], [], ['--style', 'fewest']].map(lean),
  );
  expect(Math.max(...(upright ?? []).map(({ x }) => x))).toBe(0);
  expect(Math.max(...(level ?? []).map(({ y }) => y))).toBe(0);
  expect(usual).toEqual(auto);
  expect(fewest).toHaveLength(1);
  expect(await workshop.run(['bridge', '-', '--style', 'slanted'], { input: tall })).toMatchObject({ code: 2 });
});

test('several layers: --layer bridges that one alone', async () => {
  const ring = (x: number) => `M${x} 5H${x + 20}V35H${x}Z M${x + 5} 10V30H${x + 15}V10Z`;
  const two = stencil(
    ['reeds', 'sun']
      .map(
        (id, index) =>
          `  <g id="${id}"><path fill="#22222${index}" fill-rule="evenodd" d="${ring(5 + 28 * index)}"/></g>`,
      )
      .join('\n'),
  );
  const { code, stdout } = await workshop.run(['bridge', '-', '--layer', 'sun'], { input: two });
  expect(code).toBe(0);
  const [, reeds, sun] = two.split('\n');
  expect(stdout.split('\n')[1]).toBe(reeds);
  expect(stdout.split('\n')[2]).not.toBe(sun);
});

describe('plans that are kept', () => {
  it('--with puts the bridges of --plan into the file, and so does tombolo.json', async () => {
    await workshop.file('plan.json', (await workshop.run(['bridge', 'island.svg', '--plan'])).stdout);
    const usual = await workshop.run(['bridge', 'island.svg']);
    const kept = await workshop.run(['bridge', 'island.svg', '--with', 'plan.json']);
    expect(kept).toMatchObject({ code: 0, stdout: usual.stdout });
    expect(kept.stderr).toMatch(/^island\.svg: \d+ bridges? of the plan added\n$/);
    await workshop.file('kept.json', '{ "bridges": { "plan": "plan.json" } }');
    const configured = await workshop.run(['bridge', 'island.svg', '--config', 'kept.json']);
    expect(configured).toMatchObject({ code: 0, stdout: usual.stdout, stderr: kept.stderr });
  });

  it('that are for another drawing, or no plans, are refused', async () => {
    const other = await workshop.run(['bridge', 'sound.svg', '--with', 'plan.json']);
    expect(other).toMatchObject({ code: 1, stdout: SOUND });
    expect(other.stderr).toContain(
      'refused: The plan is for another drawing: of the 1 islands that it names, 0 are here.',
    );
    for (const text of ['{', '{}', '[]', '{"version":1,"bridges":[{}]}']) {
      await workshop.file('none.json', text);
      const outcome = await workshop.run(['bridge', 'island.svg', '--with', 'none.json']);
      expect(outcome).toMatchObject({ code: 2, stdout: '' });
      expect(outcome.stderr).toBe('tombolo: none.json: is no plan of bridges; tombolo bridge --plan gives one\n');
    }
  });
});

test('--roots rounds the corners where bridges would tear, before tombolo.json does', async () => {
  await mkdir(workshop.path('roots'));
  await workshop.file('roots/frame.svg', WITH_ISLAND);
  const bridged = async (args: readonly string[]) => {
    const { code, stdout } = await workshop.run(['bridge', 'roots/frame.svg', ...args]);
    expect(code).toBe(0);
    return stdout;
  };
  const [plain, square, rounded] = [
    await bridged([]),
    await bridged(['--roots', 'square']),
    await bridged(['--roots', 'rounded']),
  ];
  expect(square).toBe(plain);
  expect(plain).not.toMatch(/A0?\.401/);
  expect(rounded.match(/A0?\.401/g)).toHaveLength(8);
  await workshop.file('roots/tombolo.json', '{"bridges": {"roots": "rounded"}}');
  expect(await bridged([])).toBe(rounded);
  expect(await bridged(['--roots', 'square'])).toBe(plain);
  // Bridging twice is bridging once.
  await workshop.file('roots/frame.svg', rounded);
  expect(await bridged([])).toBe(rounded);
  expect(await workshop.run(['bridge', 'roots/frame.svg', '--roots', 'round'])).toMatchObject({ code: 2, stdout: '' });
});
