/**
 * Run by itself, so that neither time nor memory is another picture's: one picture file, decoded, separated and written as SVG.
 * Prints user CPU seconds, the peak of its memory in MB and the curves, as JSON.
 */
import { readFileSync } from 'node:fs';
import { layersAsSvg, separate } from '../../src/separate/index';
import { decodePicture } from '../../src/separator/file/decode';
import { peakMegabytes } from './peak-memory';

const [, , file = '', width, colours, detail] = process.argv;

async function run(): Promise<void> {
  const bytes = readFileSync(file);
  const before = process.cpuUsage().user;
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
  const separation = separate(await decodePicture(bytes), dials);
  const { length } = layersAsSvg(separation).text;
  const seconds = (process.cpuUsage().user - before) / 1e6;
  console.log(JSON.stringify({ seconds, megabytes: peakMegabytes(), nodes: separation.nodes, length }));
}

void run();
