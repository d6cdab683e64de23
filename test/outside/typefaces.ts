/** Open typefaces from the npm registry (Fontsource, OFL-1.1 and Bitstream Vera licences) as path data. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { type Font, parse } from 'opentype.js';

const PACKAGES = path.resolve(__dirname, '../../node_modules/@fontsource');

interface FaceChoice {
  readonly subset?: string;
  readonly weight?: number;
  readonly style?: 'normal' | 'italic';
}

/** A Fontsource face, by default its regular weight, Latin subset: `dejavu-sans`, `noto-sans`, … */
export function loadFace(name: string, { subset = 'latin', weight = 400, style = 'normal' }: FaceChoice = {}): Font {
  const file = readFileSync(path.join(PACKAGES, name, 'files', `${name}-${subset}-${weight}-${style}.woff`));
  return parse(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength));
}

/** Path data of a line of text that starts at 0 0, `height` mm tall; letters that reach over each other are not joined. */
export function lineOfText(face: Font, text: string, height = 40): string {
  let [data, x] = ['', 0];
  for (const character of text) {
    const glyph = face.charToGlyph(character);
    for (const command of glyph.getPath(x, 0, height).commands) {
      const { type, ...numbers } = command;
      const at = (key: string) => (numbers as Record<string, number>)[key];
      const values = ['x1', 'y1', 'x2', 'y2', 'x', 'y'].map(at).filter((value) => value !== undefined);
      data += type + values.map((value) => value.toFixed(3)).join(' ');
    }
    data += 'Z';
    x += ((glyph.advanceWidth ?? 0) * height) / face.unitsPerEm;
  }
  return data;
}

/** A stencil of one character, `height` mm tall, on a sheet with room around it. Millimetres are user units. */
export function letterStencil(face: Font, character: string, height = 40): string {
  const size = height * 2;
  const data = face.getPath(character, size / 4, size * 0.75, height).toPathData(4);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size}mm" height="${size}mm" viewBox="0 0 ${size} ${size}" ` +
    `data-tombolo-reading="openings"><path d="${data}"/></svg>`
  );
}
