/** The page as PDF: A4, upright, with the letters that every reader of PDF brings. mm, y down. */
import type { Region } from '../../geometry/base/polygon-types';
import { ringsOf } from '../../geometry/base/ring';
import { written } from '../write/numbers';
import { pdfFile } from '../write/pdf';
import { BESIDE, type Job, type NumberedPiece, type Positions } from './job';
import { placePositions } from './positions';
import { COLUMNS, paragraphsOf, rowOf, sumRow } from './table';

/** ISO 216, and a border that printers keep to. */
const PAGE = { width: 210, height: 297, border: 12 } as const;

/** mm from the border to each column. */
const COLUMN_STARTS = [0, 13, 47, 70, 93, 110, 134, 147, 166, 178] as const;

/** At most so many characters of a cell's text are shown, so that it ends before the next one. */
const CELL_ROOM = [6, 19, 9, 12, 9, 13, 6, 10, 6, 6] as const;

const PICTURE_HEIGHT = 110;
const LINE = 5;
const POINT = 25.4 / 72;

/** A character of Helvetica is about half as wide as it is high. */
const MEAN_WIDTH = 0.5;

export function jobPdf(job: Job, mark: string): string {
  const out: string[] = [];
  let y = PAGE.border + 6;
  const write = (text: string, x: number, points = 9, bold = false): void => {
    out.push(
      `BT /F${bold ? 2 : 1} ${written(points * POINT, 4)} Tf 1 0 0 -1 ${written(x, 2)} ${written(y, 2)} Tm (${literal(text)}) Tj ET`,
    );
  };
  const row = (texts: readonly string[], bold = false): void => {
    texts.forEach((text, i) => {
      const room = CELL_ROOM[i] ?? 6;
      const short = [...text].length > room ? `${[...text].slice(0, room - 2).join('')}..` : text;
      write(short, PAGE.border + (COLUMN_STARTS[i] ?? 0), 8, bold);
    });
    y += LINE;
  };
  out.push('0 g');
  write(job.title, PAGE.border, 15, true);
  out.push(picture(job, y + 4));
  y += PICTURE_HEIGHT + 12;
  row(COLUMNS, true);
  for (const layer of job.layers) {
    out.push(`${colour(layer.paint)} rg ${written(PAGE.border + 6, 2)} ${written(y - 3, 2)} 4 3.5 re f 0 g`);
    row(rowOf(layer));
  }
  row(sumRow(job), true);
  for (const { heading, lines } of paragraphsOf(job)) {
    y += 2;
    write(heading, PAGE.border, 10, true);
    y += LINE;
    for (const line of lines.flatMap((each) => wrapped(each, 9))) {
      write(line, PAGE.border);
      y += LINE - 0.6;
    }
  }
  const font = (name: string) => `<</Type/Font/Subtype/Type1/BaseFont/${name}/Encoding/WinAnsiEncoding>>`;
  const resources = `/Font<</F1 ${font('Helvetica')}/F2 ${font('Helvetica-Bold')}>>`;
  const pages = [out.join('\n'), ...job.positions.map(positionsPage)];
  return pdfFile(
    pages.map((content) => ({ width: PAGE.width, height: PAGE.height, content })),
    job.title,
    mark,
    resources,
  );
}

/** As large as there is room for, in the middle. */
function picture({ frame, ground, layers, pieces }: Job, top: number): string {
  const [width, height] = [frame.maxX - frame.minX, frame.maxY - frame.minY];
  const scale = Math.min((PAGE.width - 2 * PAGE.border) / width, PICTURE_HEIGHT / height);
  const left = (PAGE.width - scale * width) / 2;
  const place = `${written(scale)} 0 0 ${written(scale)} ${written(left - scale * frame.minX)} ${written(top - scale * frame.minY)} cm`;
  const rectangle = `${written(frame.minX, 3)} ${written(frame.minY, 3)} ${written(width, 3)} ${written(height, 3)} re`;
  const size = 3.2 / scale;
  return [
    `q ${place}`,
    `${colour(ground)} rg 0.5 G ${written(0.2 / scale)} w ${rectangle} B`,
    ...layers.map(({ paint, openings }) => `${colour(paint)} rg ${pathOf(openings)} f*`),
    '0 g',
    ...pieces.map((piece) => numberBeside(piece, size)),
    'Q',
  ].join('\n');
}

/** A piece's number, with a line to the piece. */
function numberBeside({ label, at }: NumberedPiece, size: number): string {
  const [x, y] = [at.x + BESIDE.x * size, at.y + BESIDE.y * size].map((place) => written(place, 3));
  const line = `${written(at.x, 3)} ${written(at.y, 3)} m ${x} ${y} l S`;
  return `0 G ${line} BT /F1 ${written(size)} Tf 1 0 0 -1 ${x} ${y} Tm (${label}) Tj ET`;
}

/** A page with the sheet's openings in grey, and the pieces with their numbers. */
function positionsPage(drawn: Positions): string {
  const { frame, openings, pieces } = drawn;
  const { scale, heading } = placePositions(drawn);
  const [width, height] = [frame.maxX - frame.minX, frame.maxY - frame.minY];
  const [left, top] = [(PAGE.width - scale * width) / 2, PAGE.border + 2 * LINE];
  return [
    `0 g BT /F2 ${written(10 * POINT, 4)} Tf 1 0 0 -1 ${PAGE.border} ${PAGE.border + LINE} Tm (${literal(heading)}) Tj ET`,
    `q ${written(scale)} 0 0 ${written(scale)} ${written(left - scale * frame.minX)} ${written(top - scale * frame.minY)} cm`,
    `0 G ${written(0.2 / scale)} w ${written(frame.minX, 3)} ${written(frame.minY, 3)} ${written(width, 3)} ${written(height, 3)} re S`,
    `0.87 g ${pathOf(openings)} f*`,
    ...pieces.map(({ outline }) => `1 g ${pathOf([outline])} B*`),
    '0 g',
    ...pieces.map((piece) => numberBeside(piece, 4 / scale)),
    'Q',
  ].join('\n');
}

function pathOf(region: Region): string {
  return region
    .flatMap(ringsOf)
    .map((ring) => {
      const points = Array.from(
        { length: ring.length / 2 },
        (_, i) => `${written(ring[2 * i] ?? 0, 3)} ${written(ring[2 * i + 1] ?? 0, 3)} ${i === 0 ? 'm' : 'l'}`,
      );
      return `${points.join(' ')} h`;
    })
    .join(' ');
}

function colour(hex: string): string {
  return [1, 3, 5].map((at) => written(Number.parseInt(hex.slice(at, at + 2), 16) / 255, 4)).join(' ');
}

function wrapped(text: string, points: number): string[] {
  const room = Math.floor((PAGE.width - 2 * PAGE.border) / (MEAN_WIDTH * points * POINT));
  const lines = [''];
  for (const word of text.split(' ')) {
    const longer = `${lines.at(-1)} ${word}`.trim();
    if (longer.length <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A string of PDF: Latin letters as octal numbers where they are not ASCII; others have no place in the encoding. */
function literal(text: string): string {
  return [...text]
    .map((letter) => {
      const code = letter.codePointAt(0) ?? 0;
      if (/[()\\]/.test(letter)) return `\\${letter}`;
      if (code >= 0x20 && code < 0x7f) return letter;
      return code >= 0xa0 && code <= 0xff ? `\\${code.toString(8)}` : '?';
    })
    .join('');
}
