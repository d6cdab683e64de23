/**
 * Thousands of files that people drew for other purposes, each as we read it beside what @resvg/resvg-js paints:
 * npm packages @mdi/svg (Apache-2.0), @tabler/icons (MIT), @twemoji/svg (MIT), flag-icons (MIT) and
 * cryptocurrency-icons (CC0-1.0). The painted area of no file may differ by 0.5 % or more; files with other pixels
 * apart (of another colour, mostly) are printed with their reasons.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { readDrawing } from '../../src/drawing/index';
import { parseMarkup } from '../../src/markup/parse';
import { compare, renderDrawing, renderText } from '../outside/paint';

interface IconSet {
  readonly name: string;
  readonly folder: string;
  /** Every how many-th file is taken. */
  readonly step: number;
}

const SETS: readonly IconSet[] = [
  { name: '@mdi/svg', folder: '@mdi/svg/svg', step: 8 },
  { name: '@tabler/icons, outline', folder: '@tabler/icons/icons/outline', step: 5 },
  { name: '@tabler/icons, filled', folder: '@tabler/icons/icons/filled', step: 4 },
  { name: '@twemoji/svg', folder: '@twemoji/svg', step: 5 },
  { name: 'flag-icons', folder: 'flag-icons/flags/4x3', step: 1 },
  { name: 'cryptocurrency-icons', folder: 'cryptocurrency-icons/svg/color', step: 1 },
];

const WIDTH = 512;
const LIMIT = 0.005;

/** Findings that say that something is not painted as the renderer does. */
const EXPLAINED = /^(A mask|A filter|A gradient|A pattern|Text|A raster image)/;

/** Files where the renderer is at fault, found by looking at both pictures and at the file. */
const RENDERER_AT_FAULT: Readonly<Record<string, string>> = {
  'tj.svg': 'the renderer leaves out stars that are drawn large and scaled down to a twenty-thousandth',
  'um.svg': 'the renderer leaves out markers on a line without a stroke',
  'us.svg': 'the renderer leaves out markers on a line without a stroke',
};

interface Row {
  readonly file: string;
  readonly share: number;
  readonly wrong: number;
  readonly reasons: readonly string[];
}

function measure(path: string, file: string): Row {
  const text = readFileSync(path, 'utf8');
  const drawing = readDrawing(parseMarkup(text));
  const { painted, ours, wrong } = compare(renderText(text, WIDTH), renderDrawing(drawing, WIDTH));
  const found = [...new Set(drawing.problems.map(({ message }) => message.split(/[:;,.]/)[0] ?? ''))];
  const fault = RENDERER_AT_FAULT[file];
  const reasons = fault === undefined ? found : [fault];
  return { file, share: Math.abs(painted - ours) / Math.max(painted, 1), wrong, reasons };
}

test.each(SETS)('$name', async ({ name, folder, step }) => {
  const root = join('node_modules', folder);
  const files = readdirSync(root)
    .filter((file) => file.endsWith('.svg'))
    .filter((_, index) => index % step === 0);
  const rows: Row[] = [];
  for (const file of files) {
    rows.push(measure(join(root, file), file));
    // The renderer's pictures are only freed between turns of the event loop; there are gigabytes of them.
    await setImmediate();
  }
  const apart = rows.filter(({ share, wrong }) => share >= LIMIT || wrong > 40);
  const mean = rows.reduce((sum, { share }) => sum + share, 0) / rows.length;
  console.log(`${name}: ${rows.length} files, mean difference ${(100 * mean).toFixed(4)} %, ${apart.length} apart`);
  for (const { file, share, wrong, reasons } of apart) {
    console.log(`  ${file}: ${(100 * share).toFixed(2)} %, ${wrong} pixels; ${reasons.join('; ') || 'unexplained'}`);
  }
  const explained = ({ file, reasons }: Row): boolean =>
    file in RENDERER_AT_FAULT || reasons.some((reason) => EXPLAINED.test(reason));
  expect(rows.filter(({ share }) => share >= LIMIT)).toEqual([]);
  expect(apart.filter((row) => !explained(row))).toEqual([]);
});
