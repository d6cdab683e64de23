// npm run pictures:separate: the painted marsh and the print that it is separated to, side by side, as media/separate.png.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { bundle, dist, root } from './bundles.mjs';

const WORDS = ['--width', '148mm', '--colours', '6', '--paints', '#fbe3a6,#5b3a26', '--bridge'];

/** Pixels across each of the two, and between them. */
const WIDE = 560;
const TALL = 397;
const APART = 20;

// Within the repository, for the command line finds the renderer there.
mkdirSync(dist, { recursive: true });
const folder = mkdtempSync(path.join(dist, 'marsh-'));
try {
  const picture = path.join(folder, 'marsh.png');
  writeFileSync(picture, new Resvg(readFileSync(path.join(root, 'media/marsh.svg'), 'utf8')).render().asPng());
  const cli = await bundle('cli', { outdir: folder });
  execFileSync(process.execPath, [cli, 'separate', picture, ...WORDS, '--out', path.join(folder, 'trail')]);
  const sheets = readFileSync(path.join(folder, 'trail/marsh.svg'), 'utf8');
  const print = new Resvg(sheets, { fitTo: { mode: 'width', value: WIDE } }).render().asPng();
  const image = (bytes, x) =>
    `<image x="${x}" width="${WIDE}" height="${TALL}" href="data:image/png;base64,${bytes.toString('base64')}"/>`;
  const both = `<svg xmlns="http://www.w3.org/2000/svg" width="${2 * WIDE + APART}" height="${TALL}">${
    image(readFileSync(picture), 0) + image(print, WIDE + APART)
  }</svg>`;
  writeFileSync(path.join(root, 'media/separate.png'), new Resvg(both).render().asPng());
} finally {
  rmSync(folder, { recursive: true });
}
