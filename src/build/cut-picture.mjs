// Draws two sheets of the demo as their cut files have them, in lines that are thick enough to be seen, for the README.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { bundle, root } from './bundles.mjs';

const SHEETS = ['02-reeds.svg', '03-heron.svg'];
const GAP = 8;

const folder = mkdtempSync(path.join(tmpdir(), 'tombolo-cut-picture-'));
const program = await bundle('cli', { outdir: folder, minify: false });
const words = ['cut', 'media/demo/trail', '--anyway', '--labels', '--notches', '--out', path.join(folder, 'cut')];
execFileSync(process.execPath, [program, ...words], {
  cwd: root,
  env: { ...process.env, NODE_PATH: path.join(root, 'node_modules') },
});
const texts = SHEETS.map((name) => readFileSync(path.join(folder, 'cut', name), 'utf8'));
const [width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(texts[0]).slice(1).map(Number);
const sheets = texts.map((text, i) => {
  const lines = text.replace(/^<svg[^>]*>|<\/svg>\s*$/g, '').replaceAll('stroke-width="0.01"', 'stroke-width="0.4"');
  return `<g transform="translate(${GAP + i * (width + GAP)} ${GAP})">${lines}</g>`;
});
const [all, high] = [SHEETS.length * (width + GAP) + GAP, height + 2 * GAP];
const picture = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${all} ${high}"><rect width="${all}" height="${high}" fill="#fff"/>${sheets.join('')}</svg>`;
writeFileSync(
  path.join(root, 'media/cut-files.png'),
  new Resvg(picture, { fitTo: { mode: 'width', value: 1100 } }).render().asPng(),
);
rmSync(folder, { recursive: true, force: true });
