/** Real drawings with counters: icons, and glyph outlines. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'opentype.js';

const ICONS = join('node_modules', '@mdi', 'svg', 'svg');
const FONTS = join('node_modules', '@fontsource', 'dejavu-sans', 'files');

/** Icons are drawn on 24 × 24 units; here they are cut 120 mm wide. */
export function icons(): { name: string; text: string }[] {
  return readdirSync(ICONS)
    .sort()
    .map((name) => {
      const text = readFileSync(join(ICONS, name), 'utf8').replace(/<svg /, '<svg width="120mm" height="120mm" ');
      return { name, text };
    });
}

/** Glyphs as path elements: 100 mm high, as fonts wind them (nonzero) or read with evenodd. */
export function glyphs(letters: string, weight = '400', evenodd = false): { name: string; text: string }[] {
  const file = readFileSync(join(FONTS, `dejavu-sans-latin-${weight}-normal.woff`));
  const font = parse(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength));
  return [...letters].map((letter) => {
    const data = font.getPath(letter, 10, 100, 100).toPathData(3);
    const rule = evenodd ? ' fill-rule="evenodd"' : '';
    const text =
      `<svg xmlns="http://www.w3.org/2000/svg" width="140mm" height="140mm" viewBox="0 0 140 140">\n` +
      `  <path id="glyph"${rule} d="${data}"/>\n</svg>\n`;
    return { name: letter, text };
  });
}
