/** Short texts, or simply made ones, that ask for much work. */
import { readdirSync, readFileSync } from 'node:fs';
import { seededRandom } from '../../benchmark/seeded';

/** A sheet of 100 mm, one unit a millimetre. */
const sheet = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;

const repeat = (count: number, make: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => make(i)).join('');

const circle = (x: number, y: number, r: number) =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;

/** Each group draws the one before it twice. */
function doublings(levels: number): string {
  const twice = (i: number) => `<g id="u${i + 1}"><use href="#u${i}"/><use href="#u${i}"/></g>`;
  const defined = `<defs><g id="u0"><rect width="1" height="1"/></g>${repeat(levels - 1, twice)}</defs>`;
  return sheet(`${defined}<use href="#u${levels - 1}"/>`);
}

function entities(levels: number): string {
  const ten = (i: number) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`;
  const declared = `<!DOCTYPE svg [<!ENTITY e0 "M0 0h9v9z">${repeat(levels, ten)}]>`;
  return declared + sheet(`<path d="&e${levels};"/>`);
}

function randomLines(count: number): string {
  const random = seededRandom(5);
  const place = () => `${(random() * 100).toFixed(2)} ${(random() * 100).toFixed(2)}`;
  return sheet(`<path d="M${place()}${repeat(count, () => `L${place()}`)}z"/>`);
}

function overlappingCircles(count: number): string {
  const random = seededRandom(9);
  return sheet(`<path d="${repeat(count, () => circle(30 + random() * 40, 30 + random() * 40, 5 + random() * 20))}"/>`);
}

function nestedClips(shapes: number, depth: number): string {
  const clip = (i: number) =>
    `<clipPath id="c${i}"${i > 0 ? ` clip-path="url(#c${i - 1})"` : ''}>` +
    `<circle cx="50" cy="50" r="${49 - i / 9}"/></clipPath>`;
  const rects = repeat(shapes, (i) => `<rect x="${i % 20}" y="${Math.floor(i / 20)}" width="70" height="80"/>`);
  return sheet(`<defs>${repeat(depth, clip)}</defs><g clip-path="url(#c${depth - 1})">${rects}</g>`);
}

const hairlineRings = (count: number) =>
  sheet(`<path fill-rule="evenodd" d="${repeat(count, (i) => circle(50, 50, 49 - i * 0.12))}"/>`);

function lattice(bars: number): string {
  const pitch = 100 / bars;
  const bar = (i: number) => `M0 ${i * pitch}h100v.05h-100zM${i * pitch} 0v100h.05v-100z`;
  return sheet(`<path d="${repeat(bars, bar)}"/>`);
}

const fullLayers = (count: number) =>
  sheet(repeat(count, (i) => `<g id="l${i}"><rect x="${i / 100}" width="90" height="90"/></g>`));

const equalSquares = (count: number) => sheet('<rect x="9" y="9" width="9" height="9"/>'.repeat(count));

function markersOnLine(count: number): string {
  const marker = '<marker id="m" markerWidth="3" markerHeight="3"><circle cx="1" cy="1" r="1"/></marker>';
  const line = repeat(count, (i) => `L${(i * 7919) % 100} ${(i * 104729) % 100}`);
  return sheet(`${marker}<path fill="none" stroke="#000" stroke-width=".1" marker-mid="url(#m)" d="M0 0${line}"/>`);
}

const nestedGroups = (depth: number) =>
  sheet('<g>'.repeat(depth) + '<rect width="9" height="9"/>' + '</g>'.repeat(depth));

const dashedSquare = (dashes: number) =>
  sheet(`<path d="M0 0H100V100H0Z" fill="none" stroke="red" stroke-width="1" stroke-dasharray="${200 / dashes}"/>`);

const roundDashes = (dashes: number) =>
  sheet(
    `<path d="M10 10H90V90H10Z" fill="none" stroke="red" stroke-width="1" stroke-linecap="round" ` +
      `stroke-dasharray="${160 / dashes}"/>`,
  );

const nestedFallbacks = (depth: number) =>
  sheet(
    `<style>rect{fill:${'var(--x,'.repeat(depth)}red${')'.repeat(depth)}}</style>` +
      '<rect width="9" height="9"/>'.repeat(99),
  );

const longPath = (commands: number) =>
  sheet(`<path d="M0 0${repeat(commands, (i) => `L${(i * 7919) % 100} ${Math.floor(i / 10_000)}`)}z"/>`);

const acceptingComments = (count: number) => sheet('<!-- tombolo accept thin-bridge: known --><g/>'.repeat(count));

const folder = new URL('heavy/', import.meta.url);

/** Icons in which a number or an attribute was changed at random. */
const mutated = readdirSync(folder).map((name) => [name, () => readFileSync(new URL(name, folder), 'utf8')] as const);

/** By name; made when asked for, as some are long. */
export const HEAVY_DRAWINGS: ReadonlyMap<string, () => string> = new Map([
  ['thirty doublings of use', () => doublings(30)],
  ['entities that hold ten of each other', () => entities(9)],
  ['a square of 7,000 dashes', () => dashedSquare(7000)],
  ['a square of 740,000 dashes', () => dashedSquare(740_740)],
  ['4,000 dashes with round caps', () => roundDashes(4000)],
  ['2,000 lines at random', () => randomLines(2000)],
  ['1,000 circles over each other', () => overlappingCircles(1000)],
  ['200 shapes under 90 nested clips', () => nestedClips(200, 90)],
  ['400 nested hairline rings', () => hairlineRings(400)],
  ['a lattice of 300 bars each way', () => lattice(300)],
  ['500 full layers', () => fullLayers(500)],
  ['30,000 equal squares', () => equalSquares(30_000)],
  ['20,000 markers on a line', () => markersOnLine(20_000)],
  ['a million nested groups', () => nestedGroups(1_000_000)],
  ['5,000 nested fallbacks of a variable', () => nestedFallbacks(5000)],
  ['a path of a million commands', () => longPath(1_000_000)],
  ['a million accepting comments', () => acceptingComments(1_000_000)],
  ...mutated,
]);
