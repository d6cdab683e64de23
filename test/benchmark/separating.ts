/**
 * Pictures to layers: a photo of 12 megapixels at 148 mm, drawings of one megapixel and of more, and rough answers of the panel
 * while dials move. In CPU seconds, so that a busy machine tells nearly the same as an idle one.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import { encode } from 'fast-png';
import jpeg from 'jpeg-js';
import type { PictureDials } from '../../src/protocol/separating';
import { decodePicture } from '../../src/separator/file/decode';
import { Separator } from '../../src/separator/thread/separator';
import { growth } from './measure';
import { seededRandom } from './seeded';

const ONCE = fileURLToPath(new URL('separate-once.mjs', import.meta.url));

const folder = mkdtempSync(path.join(tmpdir(), 'tombolo-separating-'));

interface Row {
  readonly seconds: number;
  /** When all of the work is compiled. */
  readonly again: number;
  readonly megabytes: number;
  readonly nodes: number;
}

function row(name: string, file: string, ...dials: number[]): Row {
  const told = execFileSync(process.execPath, [ONCE, file, ...dials.map(String)], { encoding: 'utf8' });
  const once: Row = JSON.parse(told);
  const { seconds, again, megabytes, nodes } = once;
  const times = `${seconds.toFixed(2)} s, ${again.toFixed(2)} s again`;
  console.log(`separating ${name}: ${times}, ${megabytes.toFixed(0)} MB at the most, ${nodes} curves`);
  return once;
}

/** Dunes of light and shade with grain on them, as JPEG. */
function photo(width: number, height: number): string {
  const next = seededRandom(12);
  const data = Buffer.alloc(4 * width * height, 255);
  for (let y = 0, at = 0; y < height; y += 1) {
    const v = y / width;
    for (let x = 0; x < width; x += 1, at += 4) {
      const u = x / width;
      const shade =
        Math.sin(9 * u + 5 * Math.sin(7 * v)) + Math.sin(23 * v - 6 * Math.sin(11 * u)) + 0.4 * Math.sin(90 * u * v);
      const grain = 14 * (next() - 0.5);
      data[at] = clamped(130 + 45 * shade + grain);
      data[at + 1] = clamped(120 + 38 * shade + 30 * v + grain);
      data[at + 2] = clamped(100 - 25 * shade + 60 * u + grain);
    }
  }
  const file = path.join(folder, `photo-${width}.jpg`);
  writeFileSync(file, jpeg.encode({ width, height, data }, 90).data);
  return file;
}

function clamped(value: number): number {
  return Math.max(0, Math.min(255, Math.round(value)));
}

/** Leaves in five colours over each other, rendered with soft edges. */
function drawing(side: number): string {
  const next = seededRandom(5);
  const paints = ['#5f93a8', '#2f5d4a', '#e0902c', '#28323a', '#b04a3a'];
  const leaves = Array.from({ length: 60 }, (_, i) => {
    const [x, y, length, turn] = [1000 * next(), 1000 * next(), 60 + 140 * next(), 360 * next()];
    const half = length * (0.25 + 0.2 * next());
    const d = `M0 0C${length / 3} ${-half} ${length} ${-half} ${length} 0S${length / 3} ${half} 0 0Z`;
    return `<path fill="${paints[i % 5]}" transform="translate(${x} ${y})rotate(${turn})" d="${d}"/>`;
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 1000"><rect width="1000" height="1000" fill="#f2e6c8"/>${leaves.join('')}</svg>`;
  const { width, height, pixels } = new Resvg(svg, { fitTo: { mode: 'width', value: side } }).render();
  const file = path.join(folder, `drawing-${side}.png`);
  writeFileSync(file, encode({ width, height, data: new Uint8Array(pixels), channels: 4 }));
  return file;
}

const DIALS: PictureDials = {
  width: 148,
  colours: 5,
  paints: [],
  leaveOut: [],
  outline: false,
  merged: [],
  order: [],
  bridges: true,
};

/** CPU milliseconds of rough answers, while one dial after the other moves. */
async function roughAnswers(bytes: Uint8Array): Promise<number[]> {
  const laps: number[] = [];
  let newest = 0;
  let asked = process.cpuUsage();
  const separator = new Separator(
    (message) => {
      if (message.type !== 'answer') return;
      laps.push(process.cpuUsage(asked).user / 1000);
      // Nobody waits for the full answer.
      newest = -1;
    },
    () => newest,
    decodePicture,
  );
  await separator.receive({ type: 'open', bytes, before: '' });
  for (let i = 1; i <= 60; i += 1) {
    newest = i;
    asked = process.cpuUsage();
    const dials = { ...DIALS, colours: 3 + (Math.floor(i / 10) % 4), detail: 1 + 0.1 * (i % 10) };
    await separator.receive({ type: 'separate', id: i, dials });
  }
  return laps.sort((one, other) => one - other);
}

async function roughRow(name: string, file: string): Promise<void> {
  const laps = await roughAnswers(readFileSync(file));
  const at = (share: number): string => (laps[Math.floor(share * (laps.length - 1))] ?? NaN).toFixed(0);
  console.log(`rough answers for ${name}: ${at(0.5)} ms, 95 of 100 within ${at(0.95)} ms, all within ${at(1)} ms`);
}

async function run(): Promise<void> {
  const large = photo(4000, 3000);
  row('a photo of 12 megapixels at 148 mm', large, 148, 6);
  row('a drawing of 1 megapixel', drawing(1000), 148, 6);
  // Details of as many pixels, so that all of them are worked on.
  const [small, big] = [
    row('1 megapixel, all of it', drawing(1000), 148, 6, 1.48),
    row('9 megapixels, all of them', drawing(3000), 148, 6, 1.48 / 3),
  ];
  const power = growth({ size: 1, time: small.seconds }, { size: 9, time: big.seconds });
  console.log(`separating: growth exponent from 1 to 9 megapixels: ${power.toFixed(2)}`);
  await roughRow('a photo', photo(1200, 800));
  await roughRow('a drawing', drawing(1000));
  rmSync(folder, { recursive: true });
}

void run();
