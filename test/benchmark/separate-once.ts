/**
 * Run by itself, so that neither time nor memory is another picture's: one picture file, decoded, separated and written as SVG.
 * Prints user CPU seconds, the peak of its memory in MB and the curves, as JSON; and the seconds of the same work once more where
 * it has been done so often that all of it is compiled.
 */
import { readFileSync } from 'node:fs';
import { type Dials, layersAsSvg, separate } from '../../src/separate/index';
import { decodePicture } from '../../src/separator/file/decode';
import { peakMegabytes } from './peak-memory';

const [, , file = '', width, colours, detail] = process.argv;

/** Until then parts of the work run uncompiled. */
const TIMES = 5;

async function run(): Promise<void> {
  const bytes = readFileSync(file);
  const dials = {
    width: Number(width),
    colours: Number(colours),
    detail: detail === undefined ? undefined : Number(detail),
    paints: [],
    bridge: 0.8,
    opening: 0.6,
    slip: 0.5,
    leaveOut: [],
    outline: false,
  };
  const first = await timed(bytes, dials);
  const megabytes = peakMegabytes();
  let again = Infinity;
  for (let time = 1; time < TIMES; time += 1) again = Math.min(again, (await timed(bytes, dials)).seconds);
  console.log(JSON.stringify({ ...first, again, megabytes }));
}

async function timed(bytes: Uint8Array, dials: Dials) {
  const before = process.cpuUsage().user;
  const separation = separate(await decodePicture(bytes), dials);
  const { length } = layersAsSvg(separation).text;
  return { seconds: (process.cpuUsage().user - before) / 1e6, nodes: separation.nodes, length };
}

void run();
