/** Open typefaces from the npm registry (Fontsource, OFL-1.1 and Bitstream Vera licences) as path data. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { type Font, parse } from 'opentype.js';

const PACKAGES = path.resolve(__dirname, '../../node_modules/@fontsource');

/** The regular weight of a Fontsource face, Latin subset: `dejavu-sans`, `noto-sans`, … */
export function loadFace(name: string): Font {
  const file = readFileSync(path.join(PACKAGES, name, 'files', `${name}-latin-400-normal.woff`));
  return parse(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength));
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
