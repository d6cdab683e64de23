/** Bridged drawings to be looked at, before and now: the paint that is left in grey, bridges in colour. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { Resvg } from '@resvg/resvg-js';
import { check } from '../../../src/engine/index';
import type { Point } from '../../../src/geometry/base/curve-types';
import { pathData } from '../../../src/picture/path-data';
import type { Before } from './before';
import { isUpright, type Judgement, slantOf } from './judge';
import { FINENESS } from './pixels';
import { isFlapping } from './table';

/** Pixels of a cell, and of the lines of words below it. */
const [WIDTH, HEIGHT, WORDS] = [240, 220, 30];
const [COLUMNS, ROWS] = [4, 5];

/** Level or upright bridges, others, and islands that are left. */
const COLOURS = { straight: '#d0107a', slanted: '#0a62d0', left: '#ff2a00' };

/** Writes `bridges-<set>-00.png` and so on, twenty drawings a sheet. */
export async function writeContactSheets(
  folder: string,
  judgements: readonly Judgement[],
  before: Readonly<Record<string, Before>>,
): Promise<void> {
  mkdirSync(folder, { recursive: true });
  for (const set of new Set(judgements.map(({ drawing }) => drawing.set))) {
    const own = judgements.filter(({ drawing }) => drawing.set === set);
    for (let first = 0; first < own.length; first += COLUMNS * ROWS) {
      const cells = own.slice(first, first + COLUMNS * ROWS);
      const number = String(first / (COLUMNS * ROWS)).padStart(2, '0');
      writeFileSync(path.join(folder, `bridges-${set}-${number}.png`), sheetOf(cells, before));
      await setImmediate();
    }
  }
}

function sheetOf(cells: readonly Judgement[], before: Readonly<Record<string, Before>>): Buffer {
  const body = cells.map((each, i) => {
    const [x, y] = [(i % COLUMNS) * 2 * WIDTH, Math.floor(i / COLUMNS) * (HEIGHT + WORDS)];
    const panels = panelOf(each, 0, linesBefore(before[each.drawing.name])) + panelOf(each, WIDTH, linesNow(each));
    return `<g transform="translate(${x} ${y})">${panels}${wordsOf(each)}</g>`;
  });
  const size = `width="${COLUMNS * 2 * WIDTH}" height="${Math.ceil(cells.length / COLUMNS) * (HEIGHT + WORDS)}"`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${body.join('')}</svg>`;
  return new Resvg(svg, { background: '#ffffff' }).render().asPng();
}

/** The drawing before it was bridged, and over it what stays of the sheet. */
function panelOf({ drawing }: Judgement, x: number, over: string): string {
  const { sheets } = check(drawing.text, { budget: Infinity });
  const { width, height } = sheets[0]!.drawing;
  const paint = sheets.map(({ openings }) => `<path fill-rule="evenodd" d="${pathData(openings)}" fill="#7d848b"/>`);
  return (
    `<svg x="${x}" width="${WIDTH - 6}" height="${HEIGHT - 4}" viewBox="0 0 ${width} ${height}">` +
    `<rect width="${width}" height="${height}" fill="#f4efe4"/>${paint.join('')}${over}</svg>`
  );
}

/** mm: all were as wide. */
const WIDTH_BEFORE = 0.8;

function linesBefore(before: Before | undefined): string {
  const bridges = before?.bridges ?? [];
  return bridges
    .map(([x0 = 0, y0 = 0, x1 = 0, y1 = 0]) => line({ x: x0, y: y0 }, { x: x1, y: y1 }, WIDTH_BEFORE, false))
    .join('');
}

function linesNow({ drawing, plan, left }: Judgement): string {
  const bridges = plan.map(({ from, to, width }) => line(from, to, width, drawing.word !== undefined));
  const rings = left.map(({ at }) => {
    const place = `cx="${at.x / FINENESS}" cy="${at.y / FINENESS}"`;
    return `<circle ${place} r="3" fill="none" stroke="${COLOURS.left}" stroke-width="1"/>`;
  });
  return [...bridges, ...rings].join('');
}

function line(from: Point, to: Point, width: number, inWord: boolean): string {
  const isStraight = slantOf({ from, to }) <= 1 && (!inWord || isUpright({ from, to }));
  const colour = isStraight ? COLOURS.straight : COLOURS.slanted;
  return `<path d="M${from.x} ${from.y}L${to.x} ${to.y}" stroke="${colour}" stroke-width="${width}"/>`;
}

function wordsOf({ drawing, plan, islands, left, lifts, mirrored }: Judgement): string {
  const flapping = lifts.filter(isFlapping).length;
  const facts = [
    `${islands} islands`,
    `${plan.length} bridges`,
    ...(left.length > 0 ? [`${left.length} left`] : []),
    ...(flapping > 0 ? [`${flapping} flap`] : []),
    ...(mirrored === false ? ['not mirrored'] : []),
  ];
  return [drawing.name.slice(-46), facts.join(', ')]
    .map(
      (line, i) =>
        `<text x="3" y="${HEIGHT + 8 + 12 * i}" font-size="10.5" font-family="DejaVu Sans">${escaped(line)}</text>`,
    )
    .join('');
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;');
}
