/** Real sheets: the demo, letters of open typefaces, icons and pictures that others drew. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { check, type Sheet } from '../../../src/engine/index';
import { letterStencil, loadFace } from '../typefaces';

export interface NamedSheet {
  readonly name: string;
  readonly sheet: Sheet;
}

function sheetsOf(name: string, text: string, width?: number): NamedSheet[] {
  const { stack } = check(text, width === undefined ? {} : { width });
  return stack.layers
    .filter(({ sheet }) => sheet.openings.length > 0)
    .map(({ sheet }) => ({ name: `${name}, ${sheet.layer.name}`, sheet }));
}

export function demoSheets(): NamedSheet[] {
  return ['waymarker.svg', 'numeral-post.svg'].flatMap((file) =>
    sheetsOf(file, readFileSync(join('media/demo', file), 'utf8')),
  );
}

export function letterSheets(letters: string): NamedSheet[] {
  return ['dejavu-sans', 'noto-sans'].flatMap((face) =>
    [...letters].flatMap((letter) => sheetsOf(`${face} ${letter}`, letterStencil(loadFace(face), letter))),
  );
}

/** @param step every how many-th icon is taken */
export function iconSheets(folder: string, step: number, count: number): NamedSheet[] {
  const files = readdirSync(join('node_modules', folder)).sort();
  const taken = files.filter((_, i) => i % step === 0).slice(0, count);
  return taken.flatMap((file) => sheetsOf(file, readFileSync(join('node_modules', folder, file), 'utf8'), 100));
}

/** Taken apart by paint, as an artist would set them up. */
export function pictureSheets(pictures: readonly { readonly name: string; readonly text: string }[]): NamedSheet[] {
  return pictures.flatMap(({ name, text }) => sheetsOf(name, text));
}
