import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { encode } from 'fast-png';
import jpeg from 'jpeg-js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawn, painted, rendered } from '../separate/pictures';
import { cmykJpeg, type Inks } from '../separator/file/cmyk-jpeg';
import { madePng } from '../separator/file/made-png';
import { CliWorkshop } from './run-cli';

/** A heron's eye in the sun over water. */
const MARSH = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 300 200"><rect width="300" height="200" fill="#f2e6c8"/>
<path d="M0 140C80 110 220 170 300 130V200H0Z" fill="#5f93a8"/><circle cx="150" cy="80" r="50" fill="#e0902c"/>
<circle cx="150" cy="80" r="20" fill="#28323a"/><circle cx="150" cy="80" r="8" fill="#f2e6c8"/></svg>`;

let workshop: CliWorkshop;

beforeAll(async () => {
  workshop = await CliWorkshop.create();
  await workshop.file('marsh.png', png(rendered(MARSH, 300)));
});
afterAll(() => workshop.dispose());

function png({ width, height, data }: { width: number; height: number; data: Uint8Array | Uint8ClampedArray }): Buffer {
  return Buffer.from(encode({ width, height, data: Uint8Array.from(data), channels: 4 }));
}

const separate = (picture: string, ...words: string[]) => workshop.run(['separate', picture, ...words]);
const read = async (name: string) => (await readFile(workshop.path(name))).toString();
const has = async (name: string) => (await readdir(workshop.path('.'), { recursive: true })).includes(name);

describe('tombolo separate', () => {
  it('writes a drawing and its project, which the other commands read', async () => {
    const { code, stdout } = await separate('marsh.png', '--width', '148mm', '--out', 'trail', '--format', 'json');
    expect(code).toBe(0);
    const told = JSON.parse(stdout);
    expect(told).toMatchObject({
      version: 1,
      kind: 'drawing',
      unpainted: [],
      twoSheets: [],
      files: ['marsh.svg', 'tombolo.json'],
    });
    expect(told.palette.map(({ paint }: { paint: string }) => paint).sort()).toEqual([
      '#28323a',
      '#5f93a8',
      '#e0902c',
      '#f2e6c8',
    ]);
    expect(told.deltaE).toBeLessThan(0.5);
    expect(told.islands.ordered).toBeLessThan(told.islands.alone);
    expect(JSON.parse(await read('trail/tombolo.json'))).toMatchObject({
      size: { width: '148mm' },
      margin: '10mm',
      layers: [{ from: 'marsh.svg' }],
      separate: { picture: '../marsh.png' },
    });
    const check = await workshop.run(['check', 'trail', '--format', 'json']);
    const [file] = JSON.parse(check.stdout).files;
    expect(file.layers.map(({ paint }: { paint: string }) => paint)).toHaveLength(4);
    expect(file.size).toMatchObject({ width: 148 });
    expect((await workshop.run(['picture', 'trail', '--out', 'print.png'])).code).toBe(0);
  });

  it('leaves no island with --bridge', async () => {
    const words = ['--width', '148mm', '--out', 'bridged', '--bridge', '--ground', '#f2e6c8', '--format', 'json'];
    const { stdout } = await separate('marsh.png', ...words);
    const told = JSON.parse(stdout);
    expect(told.unpainted).toEqual(['#f2e6c8']);
    expect(told.islands).toMatchObject({ ordered: 2, bridged: 0 });
    expect(told.bridges).toBeGreaterThan(0);
    expect(JSON.parse(await read('bridged/tombolo.json'))).toMatchObject({ ground: '#f2e6c8' });
  });

  it('takes the paints that are named, and no others', async () => {
    const words = ['--width', '90mm', '--paints', '#112233,#ddeeff', '--out', 'paints', '--format', 'json'];
    const { palette } = JSON.parse((await separate('marsh.png', ...words)).stdout);
    expect(palette.map(({ paint }: { paint: string }) => paint).sort()).toEqual(['#112233', '#ddeeff']);
  });

  it('leaves out a rectangle', async () => {
    const words = ['--width', '150mm', '--leave-out', '50mm,15mm,50mm,50mm', '--out', 'left-out', '--format', 'json'];
    const { palette } = JSON.parse((await separate('marsh.png', ...words)).stdout);
    expect(palette.map(({ paint }: { paint: string }) => paint).sort()).toEqual(['#5f93a8', '#f2e6c8']);
  });

  it('keeps what was said, and separates again from that', async () => {
    await separate('marsh.png', '--width', '120mm', '--colours', '3', '--detail', '2mm', '--out', 'again');
    const config = await read('again/tombolo.json');
    expect(JSON.parse(config).separate).toMatchObject({ colours: 3, detail: '2mm' });
    await workshop.file('again/tombolo.json', config.replace('{', '{ // our marsh'));
    const { stdout } = await separate('marsh.png', '--out', 'again', '--format', 'json');
    expect(JSON.parse(stdout)).toMatchObject({ detail: 2, size: { width: 120 } });
    expect(await read('again/tombolo.json')).toContain('// our marsh');
  });

  it('never writes over a drawing that was edited, but beside it, unless it is told to', async () => {
    await separate('marsh.png', '--width', '120mm', '--out', 'edited');
    const edited = (await read('edited/marsh.svg')).replace('<svg', '<!-- mine --><svg');
    await workshop.file('edited/marsh.svg', edited);
    const before = await read('edited/tombolo.json');
    const { stdout } = await separate('marsh.png', '--out', 'edited');
    expect(stdout).toContain('marsh.svg was edited and is left as it is; the new sheets are in marsh.new.svg');
    expect(await read('edited/marsh.svg')).toBe(edited);
    expect(await read('edited/tombolo.json')).toBe(before);
    expect(await read('edited/marsh.new.svg')).toContain('<svg');
    await separate('marsh.png', '--out', 'edited', '--overwrite');
    expect(await read('edited/marsh.svg')).not.toContain('mine');
  });

  it('writes nothing where one file cannot be written', async () => {
    await mkdir(workshop.path('half/tombolo.json'), { recursive: true });
    const { code, stderr } = await separate('marsh.png', '--width', '120mm', '--out', 'half');
    expect([code, stderr.split('\n')]).toEqual([2, [expect.stringContaining('half/tombolo.json'), '']]);
    expect(await has('half/marsh.svg')).toBe(false);
    await rm(workshop.path('half'), { recursive: true });
  });

  it('asks for a width', async () => {
    const { code, stderr } = await separate('marsh.png', '--out', 'nowhere');
    expect([code, stderr]).toEqual([2, 'tombolo: say how wide the print becomes, such as --width 148mm\n']);
  });
});

describe('masks', () => {
  it('become layers, black the sheet, white and clear the openings', async () => {
    const ring = (x: number, y: number) => Math.hypot(x - 50, y - 50);
    await workshop.file('sun.png', png(painted(100, 100, (x, y) => (ring(x, y) < 30 ? [255, 255, 255] : [0, 0, 0]))));
    const halo = painted(100, 100, () => [0, 0, 0]);
    for (let at = 0; at < 10_000; at += 1) {
      const far = ring(at % 100, Math.floor(at / 100));
      if (far > 32 && far < 40) halo.data[4 * at + 3] = 0;
    }
    await workshop.file('halo.png', png(halo));
    const words = ['--masks', '--width', '100mm', '--paints', '#e8a33d', '--out', 'masks', '--format', 'json'];
    const { code, stdout } = await workshop.run(['separate', 'sun.png', 'halo.png', ...words]);
    expect(code).toBe(0);
    const told = JSON.parse(stdout);
    expect(told.palette).toEqual([
      { name: 'sun', paint: '#e8a33d' },
      { name: 'halo', paint: '#1e1e1e' },
    ]);
    expect(told.islands).toMatchObject({ alone: 1, bridged: 1 });
    const check = await workshop.run(['check', 'masks', '--format', 'json']);
    const [sun, rim] = JSON.parse(check.stdout).files[0].layers;
    // Pixels of a disc without soft edges.
    expect(sun.openingArea / (Math.PI * 30 ** 2)).toBeCloseTo(1, 1.7);
    expect(rim.openingArea / (Math.PI * (40 ** 2 - 32 ** 2))).toBeCloseTo(1, 1.2);
  });

  it('are not taken for pictures', async () => {
    const { code, stderr } = await workshop.run([
      'separate',
      'sun.png',
      'halo.png',
      '--width',
      '9mm',
      '--out',
      'never',
    ]);
    expect([code, stderr]).toEqual([2, 'tombolo: several pictures are sheets of one print: say --masks\n']);
  });
});

/** A PNG that says it is larger than it is. */
function bomb(width: number, height: number): Buffer {
  const bytes = png(painted(4, 4, () => [0, 0, 0]));
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  return bytes;
}

/** JPEG of the marsh, with an Exif header that says how it is turned. */
function turnedJpeg(orientation: number): Buffer {
  const { width, height, data } = rendered(MARSH, 300);
  const plain = jpeg.encode({ width, height, data: Buffer.from(data) }, 90).data;
  const exif = Buffer.from(
    '457869660000' + '49492a0008000000' + '0100' + '120103000100000000000000' + '00000000',
    'hex',
  );
  exif.writeUInt16LE(orientation, 6 + 8 + 2 + 8);
  const segment = Buffer.concat([Buffer.from([0xff, 0xe1, 0, exif.length + 2]), exif]);
  return Buffer.concat([plain.subarray(0, 2), segment, plain.subarray(2)]);
}

const MOST_MEGABYTES = 500;

/** Runs the command, and tells the most memory that it held. */
async function measured(picture: string, ...words: string[]) {
  const hook = "process.on('exit', () => require('fs').writeFileSync('peak', String(process.resourceUsage().maxRSS)))";
  await workshop.file('peak.cjs', hook);
  const environment = { NODE_OPTIONS: `--require ${workshop.path('peak.cjs')}` };
  const outcome = await workshop.run(['separate', picture, ...words], { environment });
  return { outcome, megabytes: Number(await read('peak')) / 1024 };
}

describe('pictures that cannot be separated', () => {
  const half = png(rendered(MARSH, 300)).subarray(0, 2000);
  const halfJpeg = turnedJpeg(1).subarray(0, 3000);
  const clear = {
    ...drawn([
      [1, 2, 3],
      [4, 5, 6],
      [7, 8, 9],
      [9, 9, 9],
    ]),
    data: new Uint8Array(4 * 80 * 80),
  };
  const cases: [string, Buffer, string][] = [
    ['cut short', half, 'the picture is damaged or cut short'],
    ['cut short as JPEG', halfJpeg, 'the picture is damaged or cut short'],
    ['of one pixel', png(painted(1, 1, () => [9, 9, 9])), 'a picture of 1 × 1 pixels has nothing to separate'],
    [
      'too large by its header',
      bomb(30_000, 30_000),
      '30000 × 30000 pixels are too many; make it smaller than 27 megapixels',
    ],
    ['larger than its pixels', bomb(3000, 3000), 'the picture is damaged or cut short'],
    ['clear all over', png(clear), 'is clear all over: there is nothing to paint'],
    [
      'of one colour',
      png(painted(60, 60, () => [9, 99, 9])),
      'has one colour only at this size: there is nothing to separate',
    ],
    [
      'interlaced, and cut short',
      Buffer.from(
        madePng(40, 40, { depth: 1, colourType: 0, isInterlaced: true }, (x, y) => [(x ^ y) & 8 ? 1 : 0]),
      ).subarray(0, -40),
      'the picture is damaged or cut short',
    ],
    ['of another kind', Buffer.from('RIFF....WEBPVP8 '), 'is a WebP picture; save it as PNG or JPEG first'],
    ['no picture', Buffer.from('hello'), 'is neither a PNG nor a JPEG picture'],
    ['empty', Buffer.alloc(0), 'is empty'],
  ];
  it.each(cases)('%s: one line, and nothing is written', async (_, bytes, message) => {
    await writeFile(workshop.path('bad'), bytes);
    const { outcome, megabytes } = await measured('bad', '--width', '100mm', '--out', 'never');
    expect([outcome.code, outcome.stdout, outcome.stderr]).toEqual([2, '', `tombolo: bad: ${message}\n`]);
    expect(await has('never')).toBe(false);
    expect(megabytes).toBeLessThan(MOST_MEGABYTES);
  });

  it('one colour in as many pixels as are read: one line, in bounded memory', async () => {
    const side = 5000;
    const one = { width: side, height: side, data: new Uint8Array(4 * side * side).fill(200) };
    await writeFile(workshop.path('large'), png(one));
    const { outcome, megabytes } = await measured('large', '--width', '100mm', '--out', 'never');
    expect(outcome.stderr).toBe('tombolo: large: has one colour only at this size: there is nothing to separate\n');
    expect(megabytes).toBeLessThan(MOST_MEGABYTES);
  });
});

describe('pictures of other kinds', () => {
  const sizeOf = async (name: string, bytes: Buffer) => {
    await writeFile(workshop.path(name), bytes);
    const { stdout, stderr } = await separate(
      name,
      '--width',
      '100mm',
      '--out',
      'kinds',
      '--overwrite',
      '--format',
      'json',
    );
    expect(stderr).toBe('');
    return JSON.parse(stdout);
  };

  it('are turned as their camera says', async () => {
    expect((await sizeOf('level.jpg', turnedJpeg(1))).size.height).toBeCloseTo(66.7, 0);
    expect((await sizeOf('upright.jpg', turnedJpeg(6))).size.height).toBeCloseTo(150, 0);
  });

  it('of four inks, as print has them', async () => {
    const [water, reeds]: [Inks, Inks] = [
      [0.6, 0.2, 0, 0],
      [0, 0, 0, 0.8],
    ];
    const blocks = Array.from({ length: 8 }, (_, y) =>
      Array.from({ length: 8 }, (_, x) => (x + y < 8 ? water : reeds)),
    );
    const { palette } = await sizeOf('print.jpg', Buffer.from(cmykJpeg(blocks)));
    expect(palette.map(({ paint }: { paint: string }) => paint).sort()).toEqual(['#333333', '#66ccff']);
  });

  it('interlaced', async () => {
    const kind = { depth: 8, colourType: 2, isInterlaced: true } as const;
    const bytes = madePng(60, 60, kind, (x, y) => (x + y < 60 ? [10, 200, 90] : [200, 20, 40]));
    const { palette } = await sizeOf('interlaced.png', Buffer.from(bytes));
    expect(palette.map(({ paint }: { paint: string }) => paint).sort()).toEqual(['#0ac85a', '#c81428']);
  });

  it('interlaced, of a bit', async () => {
    const bytes = madePng(60, 60, { depth: 1, colourType: 0, isInterlaced: true }, (x, y) => [x + y < 60 ? 1 : 0]);
    const { palette } = await sizeOf('bits.png', Buffer.from(bytes));
    expect(palette.map(({ paint }: { paint: string }) => paint).sort()).toEqual(['#000000', '#ffffff']);
  });

  it('of 16 bits, of a palette, of grey with clear ground', async () => {
    const wide = Uint16Array.from({ length: 3 * 3600 }, (_, i) => (Math.floor(i / 3) % 60 < 30 ? 60_000 : 1000));
    const deep = encode({ width: 60, height: 60, data: wide, channels: 3, depth: 16 });
    expect((await sizeOf('deep.png', Buffer.from(deep))).palette).toHaveLength(2);
    const grey = Uint8Array.from({ length: 2 * 3600 }, (_, i) =>
      i % 2 === 0 ? 40 : Math.floor(i / 2) % 60 < 30 ? 255 : 0,
    );
    const clear = await sizeOf('grey.png', Buffer.from(encode({ width: 60, height: 60, data: grey, channels: 2 })));
    expect(clear).toMatchObject({ unpainted: ['#ffffff'], palette: [{ paint: '#282828' }] });
  });
});
