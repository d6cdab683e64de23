/** Seeded files to be read: three kinds of text that generators and editors write, each of about so many bytes. */
import { blobSheet, seededRandom } from './seeded';

/** How many segments of the seeded sheet a megabyte of text holds, about. */
const SEGMENTS_PER_MEGABYTE = 360_000;

export type ReadingKind = 'paths of curves' | 'small shapes' | 'one long line';

export function readingFile(kind: ReadingKind, megabytes: number): string {
  if (kind === 'paths of curves') return blobSheet(megabytes * SEGMENTS_PER_MEGABYTE);
  return kind === 'small shapes' ? smallShapes(megabytes * 1e6) : oneLongLine(megabytes);
}

/** Basic shapes, groups with transforms, styles, ids and classes: many elements, each with little geometry. */
function smallShapes(length: number): string {
  const random = seededRandom(3);
  const number = (): string => (random() * 500).toFixed(2);
  const disc = 'M12,2A10,10 0 0,0 2,12A10,10 0 0,0 12,22A10,10 0 0,0 22,12A10,10 0 0,0 12,2Z';
  const kinds = [
    (index: number) => `<rect id="r${index}" x="${number()}" y="${number()}" width="3" height="4" fill="#123456"/>`,
    () => `<circle class="dot" cx="${number()}" cy="${number()}" r="2"/>`,
    () => `<g transform="translate(${number()} ${number()})"><path style="fill:#333;stroke:none" d="${disc}"/></g>`,
    () =>
      `<polygon points="${number()},${number()} ${number()},${number()} ${number()},${number()}" fill-rule="evenodd"/>`,
    () => `<ellipse cx="${number()}" cy="${number()}" rx="2" ry="1"/>`,
  ];
  const parts = ['<svg xmlns="http://www.w3.org/2000/svg" width="500mm" height="500mm" viewBox="0 0 500 500">'];
  for (let index = 0, size = 0; size < length; index += 1) {
    const part = kinds[index % kinds.length]?.(index) ?? '';
    parts.push(part);
    size += part.length + 1;
  }
  return `${parts.join('\n')}\n</svg>\n`;
}

/** One path with all outlines of the seeded sheet, without a single line end. */
function oneLongLine(megabytes: number): string {
  const sheet = blobSheet(megabytes * SEGMENTS_PER_MEGABYTE);
  const data = Array.from(sheet.matchAll(/ d="([^"]*)"/g), (match) => match[1]);
  return `${sheet.slice(0, sheet.indexOf('\n'))}<path d="${data.join('')}"/></svg>`;
}
