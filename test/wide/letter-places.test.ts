/**
 * Where bridges go in the letters that sign painters agree on (common practice, no source): upright, on one line through
 * each counter, one above and one below. `TOMBOLO_SHEETS=folder` writes the picture. Faces: as in `bridge-sense/words.ts`.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { bridgeIslands, check } from '../../src/engine/index';
import { pathData } from '../../src/picture/path-data';
import { isUpright } from './bridge-sense/judge';
import { placed } from './bridge-sense/words';

/** Those with a counter, and Ж, which has none. */
const LETTERS = 'A4eagRДЖ';
const FACES = [
  ['noto-sans', '400-normal'],
  ['noto-sans', '800-normal'],
  ['pt-serif', '400-normal'],
  ['playfair-display', '700-normal'],
] as const;

const words = FACES.flatMap(([name, cut]) => placed({ package: name, cut, style: 'upright' }, LETTERS) ?? []);
const bridged = words.map((word) => ({ word, ...bridgeIslands(check(word.text)) }));

describe('each letter of a word', () => {
  it('is there in every face', () => {
    expect(words).toHaveLength(FACES.length);
  });

  it.each(bridged)('$word.name', ({ word, plan, refusals }) => {
    expect(refusals).toEqual([]);
    for (const { sign, from, to } of word.letters) {
      const own = plan.filter(({ from: { x } }) => x > from && x < to);
      expect(own.length === 0, sign).toBe(sign === 'Ж');
      const upright = own.filter(isUpright);
      // The thin stroke of an A in a face with contrast is crossed squarely.
      expect(own.length - upright.length, sign).toBeLessThanOrEqual(sign === 'A' ? 1 : 0);
      for (const counter of new Set(own.map(({ island }) => island))) {
        const pair = upright.filter(({ island }) => island === counter);
        const places = pair.map((each) => each.from.x);
        expect(Math.max(...places) - Math.min(...places), sign).toBeLessThan(0.1);
        const sides = pair.map((each) => Math.sign(each.to.y - each.from.y));
        expect(new Set(sides).size, sign).toBe(own.length === upright.length ? 2 : 1);
      }
    }
  });

  it.runIf(process.env.TOMBOLO_SHEETS)('is drawn', () => {
    const folder = process.env.TOMBOLO_SHEETS as string;
    mkdirSync(folder, { recursive: true });
    writeFileSync(
      path.join(folder, 'letters.png'),
      new Resvg(picture(), { fitTo: { mode: 'width', value: 1400 } }).render().asPng(),
    );
  });
});

/** mm: from one line of letters to the next. */
const LEADING = 44;

/** A line of letters a face: what is painted once they are bridged. */
function picture(): string {
  const lines = bridged.map(({ text, word: { name } }, i) => {
    const [sheet] = check(text).sheets;
    if (!sheet) throw new Error(`nothing is drawn of ${name}`);
    const drawn = `<path transform="translate(0 ${i * LEADING})" d="${pathData(sheet.openings)}"/>`;
    return { width: sheet.drawing.width, drawn };
  });
  const width = Math.max(...lines.map((line) => line.width));
  const height = LEADING * lines.length + 10;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">` +
    `<rect width="${width}" height="${height}" fill="#f4efe4"/>` +
    `<g fill="#2d5d3f" fill-rule="evenodd">${lines.map(({ drawn }) => drawn).join('')}</g></svg>`
  );
}
