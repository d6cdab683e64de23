/**
 * What clip art asks most for: shapes each in a layer of its own, tracings finer than what counts as drawn alike, shades
 * made of shapes over each other, and graph paper, whose openings are as many as its lines squared.
 */
import { row } from './beside-renderer';
import { seededRandom } from './seeded';

const picture = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="180mm" height="180mm" viewBox="0 0 180 180">${body}</svg>`;

/** One leaf for each layer, in rows, each over the edge of the one before. */
function layers(count: number): string {
  const side = Math.ceil(Math.sqrt(count));
  const step = 170 / side;
  const leaves = Array.from({ length: count }, (_, i) => {
    const [x, y] = [5 + step * (i % side), 5 + step * Math.floor(i / side)];
    const colour = `#${(0x100000 + 97 * i).toString(16)}`;
    return `<g id="leaf${i}"><path fill="${colour}" d="M${x} ${y}q${step} 0 ${1.1 * step} ${step}q${-step} 0 ${-1.1 * step} ${-step}z"/></g>`;
  });
  return picture(leaves.join(''));
}

/** Dots of the size of a hundredth of a millimetre, many to a place. */
function dust(count: number): string {
  const random = seededRandom(7);
  const dots = Array.from({ length: count }, () => {
    const [x, y] = [20 + 0.15 * random() * Math.sqrt(count), 20 + 0.15 * random() * Math.sqrt(count)];
    return `M${x} ${y}c.01 0 .02 .01 .02 .02c0 .01 -.01 .02 -.02 .02c-.01 0 -.02 -.01 -.02 -.02c0 -.01 .01 -.02 .02 -.02z`;
  });
  return picture(`<path d="${dots.join('')}"/>`);
}

/** A round shaded by discs over each other, none of which holds the next. */
function shades(count: number): string {
  const discs = Array.from({ length: count }, (_, i) => {
    const [x, y] = [90 + 8 * Math.cos(i), 90 + 8 * Math.sin(i)];
    return `<circle cx="${x}" cy="${y}" r="${60 - (20 * i) / count}" fill="#${(0x404040 + 0x010101 * (i % 128)).toString(16)}"/>`;
  });
  return picture(discs.join(''));
}

/** Lines across each other, `count` each way. */
function graphPaper(count: number): string {
  const lines = Array.from({ length: count }, (_, i) => {
    const at = 5 + (170 * i) / count;
    return `<path d="M${at} 3V177M3 ${at}H177"/>`;
  });
  return picture(`<g fill="none" stroke="#444" stroke-width="${60 / count}">${lines.join('')}</g>`);
}

row('layers', [50, 400], layers);
row('specks of dust', [250, 2000], dust);
row('shades over each other', [50, 200], shades);
row('lines of graph paper each way', [20, 80], graphPaper);
