/** The page as HTML that prints on one sheet of paper. Nothing in it is executed or fetched. */
import type { Region } from '../../geometry/base/polygon-types';
import { ringsOf } from '../../geometry/base/ring';
import { escapeText } from '../../text/markup-text';
import { written } from '../write/numbers';
import { BESIDE, type Job, type NumberedPiece, type Positions } from './job';
import { placePositions } from './positions';
import { COLUMNS, paragraphsOf, rowOf, sumRow } from './table';

const STYLE = `@page{size:A4;margin:12mm}body{font:10pt system-ui,sans-serif;color:#222;max-width:186mm;margin:auto}@media screen{body{padding:8mm 4mm}}
h1{font-size:16pt;margin:0 0 3mm}h2{font-size:11pt;margin:4mm 0 1mm}p{margin:0 0 1mm}svg{display:block;overflow:visible;max-width:100%;max-height:120mm;margin:0 auto 4mm}
table{border-collapse:collapse;width:100%}th,td{text-align:left;padding:1mm 1.5mm;border-bottom:.2mm solid #bbb;font-variant-numeric:tabular-nums}
section{break-before:page}section svg{max-height:none}@media screen{section{margin-top:12mm}}
i{display:inline-block;width:4mm;height:4mm;border:.2mm solid #888;vertical-align:-.7mm;margin-right:1mm;print-color-adjust:exact;-webkit-print-color-adjust:exact}`;

export function jobHtml(job: Job): string {
  const cells = (tag: string, texts: readonly string[]) =>
    `<tr>${texts.map((text, i) => `<${tag}>${i === 2 && text.startsWith('#') ? `<i style="background:${text}"></i>` : ''}${escapeText(text)}</${tag}>`).join('')}</tr>`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${escapeText(job.title)}</title><style>${STYLE}</style></head><body>
<h1>${escapeText(job.title)}</h1>
${picture(job)}
<table><thead>${cells('th', COLUMNS)}</thead><tbody>
${job.layers.map((layer) => cells('td', rowOf(layer))).join('\n')}
${cells('th', sumRow(job))}
</tbody></table>
${paragraphsOf(job)
  .map(({ heading, lines }) => `<h2>${heading}</h2>${lines.map((line) => `<p>${escapeText(line)}</p>`).join('')}`)
  .join('\n')}
${job.positions.map(positions).join('\n')}
</body></html>
`;
}

/** The print, with the numbers of loose pieces in their places. */
function picture({ frame, ground, layers, pieces }: Job): string {
  const [width, height] = [frame.maxX - frame.minX, frame.maxY - frame.minY];
  const size = Math.max(2.5, Math.max(width, height) / 40);
  const painted = layers.map(
    ({ paint, openings }) => `<path fill-rule="evenodd" fill="${paint}" d="${pathOf(openings)}"/>`,
  );
  const numbers = pieces.map((piece) => numberBeside(piece, size));
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${written(width, 3)}mm" height="${written(height, 3)}mm" viewBox="${written(frame.minX, 3)} ${written(frame.minY, 3)} ${written(width, 3)} ${written(height, 3)}">` +
    `<rect x="${written(frame.minX, 3)}" y="${written(frame.minY, 3)}" width="${written(width, 3)}" height="${written(height, 3)}" fill="${ground}" stroke="#888" stroke-width="0.2"/>` +
    `${painted.join('')}${numbers.join('')}</svg>`
  );
}

/** A piece's number, with a line to the piece. */
function numberBeside({ label, at }: NumberedPiece, size: number): string {
  const [x, y] = [at.x + BESIDE.x * size, at.y + BESIDE.y * size].map((place) => written(place, 2));
  return (
    `<path d="M${written(at.x, 2)} ${written(at.y, 2)}L${x} ${y}" stroke="#000" stroke-width="${written(size / 12, 2)}"/>` +
    `<text x="${x}" y="${y}" font-size="${written(size, 2)}" fill="#000" stroke="#fff" stroke-width="${written(size / 5, 2)}" paint-order="stroke">${label}</text>`
  );
}

/** The sheet's openings in grey, and the pieces with their numbers. */
function positions(drawn: Positions): string {
  const { frame, openings, pieces } = drawn;
  const { scale, heading } = placePositions(drawn);
  const [width, height] = [frame.maxX - frame.minX, frame.maxY - frame.minY];
  const box = `${written(frame.minX, 3)} ${written(frame.minY, 3)} ${written(width, 3)} ${written(height, 3)}`;
  const line = `stroke="#000" stroke-width="${written(0.2 / scale, 3)}"`;
  return [
    `<section><h2>${escapeText(heading)}</h2>`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${written(width * scale, 3)}mm" height="${written(height * scale, 3)}mm" viewBox="${box}">`,
    `<rect x="${written(frame.minX, 3)}" y="${written(frame.minY, 3)}" width="${written(width, 3)}" height="${written(height, 3)}" fill="#fff" ${line}/>`,
    `<path fill-rule="evenodd" fill="#ddd" d="${pathOf(openings)}"/>`,
    ...pieces.map(({ outline }) => `<path fill-rule="evenodd" fill="#fff" ${line} d="${pathOf([outline])}"/>`),
    ...pieces.map((piece) => numberBeside(piece, 4 / scale)),
    '</svg></section>',
  ].join('');
}

function pathOf(region: Region): string {
  return region
    .flatMap(ringsOf)
    .map(
      (ring) =>
        `M${Array.from({ length: ring.length / 2 }, (_, i) => `${written(ring[2 * i] ?? 0, 2)} ${written(ring[2 * i + 1] ?? 0, 2)}`).join('L')}Z`,
    )
    .join('');
}
