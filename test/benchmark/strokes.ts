/**
 * What a slip of the hand at the end of a line costs: strokes with and without a hook there, checked, and painted by
 * @resvg/resvg-js. Artwork on a background, whose union is the background alone. A mesh that later paint hides a part
 * of, where what is thin spans the sheet.
 */
import { row } from './beside-renderer';

const SIDE = 150;

const picture = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}mm" height="${SIDE}mm" viewBox="0 0 60 60">${body}</svg>`;

/** Lines one below the other, each with a handle so short at its start that the pen turns there on the spot. */
function lines(count: number, hooked: boolean): string {
  const rows = Array.from({ length: count }, (_, i) => {
    const y = 5 + (50 * i) / count;
    const first = hooked ? `5.0001 ${y - 0.0001}` : `15 ${y + 4}`;
    return `<path d="M5 ${y}C${first} 24 ${y + 12} 55 ${y}"/>`;
  });
  return picture(`<g fill="none" stroke="#444" stroke-width="${30 / count}">${rows.join('')}</g>`);
}

/** Shapes in rows on a field. */
function flag(count: number): string {
  const side = Math.ceil(Math.sqrt(count));
  const shapes = Array.from({ length: count }, (_, i) => {
    const [x, y] = [2 + (56 * (i % side)) / side, 2 + (56 * Math.floor(i / side)) / side];
    return `<circle cx="${x + 25 / side}" cy="${y + 25 / side}" r="${30 / side}" fill="#444"/>`;
  });
  return picture(`<rect width="60" height="60" fill="#ccc"/>${shapes.join('')}`);
}

/** A mesh that is too fine as a whole, and a later layer that hides a part of it. */
function hiddenMesh(count: number): string {
  const lines = Array.from({ length: count }, (_, i) => {
    const at = 2 + (56 * i) / count;
    return `<path d="M2 ${at}Q30 ${at + 3} 58 ${at}M${at} 2Q${at + 3} 30 ${at} 58"/>`;
  });
  return picture(
    `<g fill="none" stroke="#444" stroke-width=".05">${lines.join('')}</g><g fill="#ccc"><circle cx="30" cy="30" r="9"/></g>`,
  );
}

row('lines', [4, 16], (count) => lines(count, false));
row('lines with a hook', [4, 16], (count) => lines(count, true));
row('shapes on a field', [32, 128], flag);
row('lines of a mesh under later paint', [10, 40], hiddenMesh);
