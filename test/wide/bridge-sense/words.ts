/**
 * Sixty words in fifteen open faces, as they stand on waymarkers. From npm, as @fontsource packages them: DejaVu Sans
 * (Bitstream Vera licence); Noto Sans, Montserrat, Oswald, Playfair Display, PT Serif, Roboto Slab, Abril Fatface, Lobster,
 * Pacifico and Great Vibes (all OFL-1.1; Roboto Slab Apache-2.0).
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { type Font, parse } from 'opentype.js';

type Style = 'upright' | 'slanted' | 'script';

interface Face {
  readonly package: string;
  /** The end of the file's name: weight and slant. */
  readonly cut: string;
  readonly style: Style;
  readonly words: readonly string[];
}

const FACES: readonly Face[] = [
  {
    package: 'dejavu-sans',
    cut: '400-normal',
    style: 'upright',
    words: ['BOARDWALK', 'Otter pond', '4680', 'Reedbed'],
  },
  { package: 'dejavu-sans', cut: '700-normal', style: 'upright', words: ['HERON', 'Marsh road', '9 km', 'DABBADO'] },
  { package: 'dejavu-sans', cut: '400-italic', style: 'slanted', words: ['Boardwalk', 'PADDOCK', 'bogbean', '806'] },
  { package: 'noto-sans', cut: '400-normal', style: 'upright', words: ['Болото', 'Дорога', 'ПЕРЕВОД', 'Фабрика'] },
  { package: 'noto-sans', cut: '800-normal', style: 'upright', words: ['BARRAGE', 'good', 'Ford 608', 'OPEN'] },
  { package: 'montserrat', cut: '700-normal', style: 'upright', words: ['DRAGONPOOL', 'Ebb road', '4 gate 9', 'ЖАБА'] },
  { package: 'montserrat', cut: '500-italic', style: 'slanted', words: ['Aqueduct', 'BOARD', 'peatbog', '8906'] },
  { package: 'oswald', cut: '600-normal', style: 'upright', words: ['PADDLE', 'Boathouse', '400 m', 'ВОДА'] },
  { package: 'playfair-display', cut: '700-normal', style: 'upright', words: ['Bog path', 'ORBAD', 'Дом 8', 'geese'] },
  { package: 'pt-serif', cut: '400-normal', style: 'upright', words: ['Берег', 'Вода', 'ABODE', 'reed bed'] },
  { package: 'roboto-slab', cut: '700-normal', style: 'upright', words: ['BADGER', 'Quagga', '690', 'Abode'] },
  { package: 'abril-fatface', cut: '400-normal', style: 'upright', words: ['Adder', 'BROOK', 'egg 8', 'Pond'] },
  { package: 'lobster', cut: '400-normal', style: 'script', words: ['Boardwalk', 'Дорога', 'good egg', 'Reeds'] },
  { package: 'pacifico', cut: '400-normal', style: 'script', words: ['Dragonpool', 'бабочка', 'Otter', 'bed & loo'] },
  { package: 'great-vibes', cut: '400-normal', style: 'script', words: ['Paddock', 'Boardwalk', 'lagoon', 'eagle'] },
];

/** One letter: its sign, and from where to where it lies along the sheet, in mm. */
export interface PlacedLetter {
  readonly sign: string;
  readonly from: number;
  readonly to: number;
}

export interface Word {
  readonly name: string;
  readonly style: Style;
  readonly text: string;
  readonly letters: readonly PlacedLetter[];
}

/** mm: the body size, the bare sheet all round, and the grid that letters stand on, so that the same look the same. */
const [BODY, MARGIN, GRID] = [36, 8, 0.125];

const PACKAGES = path.resolve(__dirname, '../../..');
const FOLDERS = ['node_modules/@fontsource', 'src/build/corpora/node_modules/@fontsource'];

/** Where the faces of the corpora are not installed, those that are. */
export function readWords(): Word[] {
  return FACES.flatMap((face) => face.words.flatMap((word) => placed(face, word) ?? []));
}

/** @returns undefined where the face is not installed */
export function placed(face: Pick<Face, 'package' | 'cut' | 'style'>, word: string): Word | undefined {
  const font = fontFor(face, /[а-я]/i.test(word) ? 'cyrillic' : 'latin');
  // Blanks and numerals of a Cyrillic word stand in the Latin file.
  const latin = fontFor(face, 'latin');
  if (!font || !latin) return undefined;
  const baseline = MARGIN + onGrid(0.95 * BODY);
  const letters: PlacedLetter[] = [];
  const paths: string[] = [];
  let x = MARGIN;
  for (const sign of word) {
    const own = font.charToGlyphIndex(sign) > 0 ? font : latin;
    const width = onGrid(own.getAdvanceWidth(sign, BODY));
    const data = dataOf(own.getPath(sign, x, baseline, BODY));
    if (data) paths.push(`<path d="${data}"/>`);
    letters.push({ sign, from: x, to: x + width });
    x += width;
  }
  const [width, height] = [x + MARGIN, 2 * MARGIN + onGrid(1.3 * BODY)].map((each) => each.toFixed(1));
  const text =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" ` +
    `data-tombolo-reading="openings">\n${paths.join('\n')}\n</svg>\n`;
  return { name: `${face.package} ${face.cut} ${word}`, style: face.style, text, letters };
}

/** The library's own path data has NaN where a decimal part is written with an exponent. */
function dataOf({ commands }: ReturnType<Font['getPath']>): string {
  const steps = commands.map((command) => {
    const { x1, y1, x2, y2, x, y } = { x1: [], y1: [], x2: [], y2: [], x: [], y: [], ...command };
    return (
      command.type +
      [x1, y1, x2, y2, x, y]
        .flat()
        .map((value) => Number(value.toFixed(4)))
        .join(' ')
    );
  });
  return steps.join('');
}

function onGrid(value: number): number {
  return Math.round(value / GRID) * GRID;
}

const fonts = new Map<string, Font | undefined>();

function fontFor(face: Pick<Face, 'package' | 'cut'>, script: string): Font | undefined {
  const file = `${face.package}/files/${face.package}-${script}-${face.cut}.woff`;
  if (!fonts.has(file))
    fonts.set(file, FOLDERS.map((folder) => loadFont(path.join(PACKAGES, folder, file))).find(Boolean));
  return fonts.get(file);
}

function loadFont(file: string): Font | undefined {
  try {
    const { buffer, byteOffset, byteLength } = readFileSync(file);
    return parse(buffer.slice(byteOffset, byteOffset + byteLength));
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOENT') return undefined;
    throw error;
  }
}
