/**
 * Sixty open pictures of many colours, drawn by people who thought of no stencil, each set up as an artist would: at a
 * width, and taken apart by paint. From npm, as @iconify-json packages them: fluent-emoji-flat and flat-color-icons (MIT),
 * noto-v1 and fxemoji (Apache-2.0), openmoji (CC BY-SA 4.0), emojione and streamline-ultimate-color (CC BY 4.0); from
 * Debian: openclipart-svg (public domain). Picked by a hash of their names from those with three flat paints or more.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { viewBoxOf } from './view-box';

/** As `pictures.json` lists it. */
interface Entry {
  readonly name: string;
  /** A set's name, or `openclipart`. */
  readonly set: string;
  /** Its name in the set, or the file's path. */
  readonly picture: string;
  /** mm */
  readonly width: number;
}

export interface Picture {
  readonly name: string;
  readonly text: string;
}

/** The part that is read of a package's `icons.json`. */
interface IconSet {
  readonly width?: number;
  readonly height?: number;
  readonly icons: Readonly<Record<string, IconBody>>;
}

interface IconBody {
  readonly body: string;
  readonly left?: number;
  readonly top?: number;
  readonly width?: number;
  readonly height?: number;
}

const SETS = path.resolve(__dirname, '../../../src/build/corpora/node_modules/@iconify-json');
const CLIP_ART = '/usr/share/openclipart/svg';

/** @param list a file beside this one */
export function readPictures(list = 'pictures.json'): Picture[] {
  const entries = JSON.parse(readFileSync(path.join(__dirname, list), 'utf8')) as Entry[];
  const sets = new Map<string, IconSet>();
  const setOf = (name: string): IconSet => {
    const known = sets.get(name) ?? (JSON.parse(readFileSync(path.join(SETS, name, 'icons.json'), 'utf8')) as IconSet);
    sets.set(name, known);
    return known;
  };
  return entries.map(({ name, set, picture, width }) => {
    const text = set === 'openclipart' ? clipArt(picture) : iconText(setOf(set), picture);
    return { name, text: setUp(text, width) };
  });
}

function clipArt(file: string): string {
  return readFileSync(path.join(CLIP_ART, file), 'utf8');
}

function iconText(set: IconSet, name: string): string {
  const icon = set.icons[name];
  if (!icon) throw new Error(`The set has no picture ${name}.`);
  const [width, height] = [icon.width ?? set.width ?? 16, icon.height ?? set.height ?? 16];
  const box = [icon.left ?? 0, icon.top ?? 0, width, height].join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="${box}">${icon.body}</svg>\n`;
}

/** States the width, and that each paint is a layer. */
function setUp(text: string, width: number): string {
  return text.replace(/<svg\b[^>]*>/, (tag) => {
    const box = viewBoxOf(tag);
    const rest = tag.replace(/\s(width|height|viewBox)\s*=\s*"[^"]*"/g, '').slice('<svg'.length);
    const height = (width * box[3]) / box[2];
    return `<svg width="${width}mm" height="${height.toFixed(2)}mm" viewBox="${box.join(' ')}" data-tombolo-layers="by-paint"${rest}`;
  });
}
