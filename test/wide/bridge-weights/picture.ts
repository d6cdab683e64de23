/** All weights in one picture: each with its example without it and with it. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import type { Bridge } from '../../../src/edits/plan/index';
import { WEIGHTS } from '../../../src/edits/plan/search/weights';
import { pathData } from '../../../src/picture/path-data';
import type { Sheet } from '../../../src/sheet/types';
import { compared, EXAMPLES, type Weight } from './examples';

/** Pixels. */
const [SIDE, GAP, WORDS] = [150, 10, 64];
const COLUMNS = 4;
const CELL = { width: 2 * SIDE + 3 * GAP, height: SIDE + WORDS + GAP };
const COLOURS = {
  sheet: '#f4efe4',
  paint: '#7d848b',
  later: '#7fb3b8',
  bridge: '#d0107a',
  words: '#222222',
  quiet: '#666666',
};

export function writeWeightsPicture(folder: string): void {
  mkdirSync(folder, { recursive: true });
  const weights = Object.keys(EXAMPLES) as Weight[];
  const cells = weights.map((weight, i) => {
    const [x, y] = [(i % COLUMNS) * CELL.width, Math.floor(i / COLUMNS) * CELL.height];
    return `<g transform="translate(${x} ${y})">${cellOf(weight)}</g>`;
  });
  const [width, height] = [COLUMNS * CELL.width, Math.ceil(weights.length / COLUMNS) * CELL.height];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${cells.join('')}</svg>`;
  writeFileSync(path.join(folder, 'weights.png'), new Resvg(svg, { background: '#ffffff' }).render().asPng());
}

function cellOf(weight: Weight): string {
  const { sheet, later, withIt, without } = compared(weight);
  const over = later.map(
    ({ openings }) => `<path fill-rule="evenodd" d="${pathData(openings)}" fill="${COLOURS.later}" fill-opacity=".6"/>`,
  );
  const { value, unit, meaning } = WEIGHTS[weight];
  const shown = Number(value.toFixed(2));
  const lines = wrap(meaning, 58);
  return [
    panel(sheet, without, over.join(''), GAP),
    panel(sheet, withIt, over.join(''), SIDE + 2 * GAP),
    label(weight, GAP, SIDE + 18, 13, COLOURS.words, 'bold'),
    label(`${shown} ${unit}; without it, with it`, GAP, SIDE + 33, 10, COLOURS.quiet),
    ...lines.map((line, i) => label(line, GAP, SIDE + 47 + 12 * i, 10, COLOURS.words)),
  ].join('');
}

function panel(
  { drawing: { width, height }, openings }: Sheet,
  bridges: readonly Bridge[],
  over: string,
  x: number,
): string {
  const lines = bridges.map(
    ({ from, to, width: wide }) =>
      `<path d="M${from.x} ${from.y}L${to.x} ${to.y}" stroke="${COLOURS.bridge}" stroke-width="${wide}"/>`,
  );
  return (
    `<svg x="${x}" y="${GAP / 2}" width="${SIDE}" height="${SIDE}" viewBox="0 0 ${width} ${height}">` +
    `<rect width="${width}" height="${height}" fill="${COLOURS.sheet}"/>` +
    `<path fill-rule="evenodd" d="${pathData(openings)}" fill="${COLOURS.paint}"/>${lines.join('')}${over}</svg>`
  );
}

function label(text: string, x: number, y: number, size: number, fill: string, weight = 'normal'): string {
  const font = `font-family="DejaVu Sans" font-size="${size}" font-weight="${weight}" fill="${fill}"`;
  return `<text x="${x}" y="${y}" ${font}>${text.replace(/&/g, '&amp;').replace(/</g, '&lt;')}</text>`;
}

function wrap(text: string, length: number): string[] {
  return text.split(' ').reduce<string[]>((lines, each) => {
    const last = lines.at(-1);
    if (last !== undefined && last.length + each.length < length) lines[lines.length - 1] = `${last} ${each}`;
    else lines.push(each);
    return lines;
  }, []);
}
