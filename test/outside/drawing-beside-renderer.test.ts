/** Small files in which several rules meet, each as we read it beside what @resvg/resvg-js paints of it. */
import { describe, expect, it } from 'vitest';
import { draw, inMillimetres } from '../drawing/draw';
import { compare, renderDrawing, renderText } from './paint';

const WIDTH = 800;

/** Reads and renders; gives the share of the painted area that differs, and the pixels that have no like one. */
function differ(content: string): { share: number; wrong: number; painted: number } {
  const text = inMillimetres(content);
  const { painted, ours, wrong } = compare(renderText(text, WIDTH), renderDrawing(draw(text), WIDTH));
  return { share: Math.abs(painted - ours) / Math.max(1, painted), wrong, painted };
}

function expectSame(content: string): void {
  const { share, wrong, painted } = differ(content);
  expect(painted).toBeGreaterThan(100);
  expect(share).toBeLessThan(0.005);
  expect(wrong).toBeLessThanOrEqual(12);
}

const STAR = '<path id="star" d="M50 10L73 81 13 37H87L27 81z"/>';

describe('clip paths', () => {
  it.each([
    [
      'a circle',
      '<clipPath id="c"><circle cx="50" cy="50" r="30"/></clipPath><rect width="60" height="60" clip-path="url(#c)"/>',
    ],
    [
      'units of the box',
      '<clipPath id="c" clipPathUnits="objectBoundingBox"><circle cx=".5" cy=".5" r=".5"/></clipPath>' +
        '<rect x="10" y="20" width="60" height="30" clip-path="url(#c)"/>',
    ],
    [
      "units of a group's box",
      '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect x=".25" y=".25" width=".5" height=".5"/></clipPath>' +
        '<g clip-path="url(#c)"><rect x="10" y="10" width="30" height="30"/>' +
        '<g transform="translate(30 20) scale(1.1 .9)"><circle cx="20" cy="20" r="20"/></g></g>',
    ],
    [
      'evenodd',
      `<clipPath id="c"><g/>${STAR.replace('id="star"', 'clip-rule="evenodd"')}</clipPath>` +
        `<rect width="100" height="100" clip-path="url(#c)"/>`,
    ],
    [
      'clip-rule inherited, fill-rule of no account',
      `<clipPath id="c" clip-rule="evenodd">${STAR.replace('id="star"', 'fill-rule="nonzero"')}</clipPath>` +
        '<rect width="100" height="100" clip-path="url(#c)"/>',
    ],
    [
      'the union of its children',
      '<clipPath id="c"><circle cx="40" cy="50" r="25"/><circle cx="65" cy="50" r="25"/></clipPath>' +
        '<rect width="100" height="70" clip-path="url(#c)"/>',
    ],
    [
      'clipped itself',
      '<clipPath id="a"><rect width="50" height="100"/></clipPath><clipPath id="c" clip-path="url(#a)">' +
        '<circle cx="50" cy="50" r="40"/></clipPath>' +
        '<rect width="100" height="100" clip-path="url(#c)"/>',
    ],
    [
      'one child clipped',
      '<clipPath id="a"><rect width="50" height="100"/></clipPath><clipPath id="c">' +
        '<circle clip-path="url(#a)" cx="50" cy="50" r="40"/></clipPath>' +
        '<rect width="100" height="100" clip-path="url(#c)"/>',
    ],
    [
      'one of two children clipped',
      '<clipPath id="a"><rect width="50" height="100"/></clipPath><clipPath id="c">' +
        '<circle clip-path="url(#a)" cx="50" cy="50" r="40"/>' +
        '<rect x="60" y="60" width="30" height="30"/></clipPath><rect width="100" height="100" clip-path="url(#c)"/>',
    ],
    [
      'use in it',
      `<defs>${STAR}</defs><clipPath id="c"><use href="#star" transform="rotate(20 50 50)" x="3"/></clipPath>` +
        `<rect width="100" height="100" clip-path="url(#c)"/>`,
    ],
    [
      'transforms of all',
      `<clipPath id="c" transform="rotate(15)">` +
        `<rect x="20" y="10" width="50" height="50" transform="skewX(10)"/></clipPath>` +
        '<g transform="translate(5 5) scale(1.2)">' +
        '<rect width="60" height="60" transform="rotate(5)" clip-path="url(#c)"/></g>',
    ],
    [
      'on a group with clips inside',
      '<clipPath id="a"><circle cx="50" cy="50" r="40"/></clipPath><clipPath id="b">' +
        '<rect x="30" width="70" height="100"/></clipPath>' +
        '<g clip-path="url(#a)"><rect width="80" height="80" clip-path="url(#b)"/>' +
        '<rect y="80" width="60" height="20"/></g>',
    ],
    [
      'hidden and undisplayed children do not count',
      '<clipPath id="c"><rect width="90" height="90" display="none"/>' +
        '<rect width="90" height="90" visibility="hidden"/>' +
        '<rect width="40" height="40"/></clipPath><rect width="100" height="100" clip-path="url(#c)"/>',
    ],
    [
      'strokes in it do not count',
      '<clipPath id="c"><rect x="10" y="10" width="40" height="40" fill="none" stroke="red" stroke-width="20"/>' +
        '</clipPath>' +
        '<rect width="100" height="100" clip-path="url(#c)"/>',
    ],
    [
      'on a stroke',
      '<clipPath id="c"><circle cx="50" cy="50" r="30"/></clipPath>' +
        '<path d="M0 20L100 70" stroke="red" stroke-width="20" clip-path="url(#c)"/>',
    ],
    ['a reference to nothing', '<rect width="50" height="50" clip-path="url(#none)"/>'],
  ])('%s', (_name, content) => expectSame(content));

  it('an empty clip path leaves nothing', () => {
    const { share, wrong, painted } = differ('<clipPath id="c"/><rect width="50" height="50" clip-path="url(#c)"/>');
    expect([share, wrong, painted]).toEqual([0, 0, 0]);
  });
});

describe('strokes', () => {
  const line = (d: string, more = ''): string => `<path d="${d}" fill="none" stroke="black" stroke-width="8" ${more}/>`;
  it.each([
    ['a bend tighter than the pen', line('M20 80C20 20 24 20 24 80')],
    ['a loop', line('M20 80C100 0 0 0 80 80')],
    ['nearly a cusp', line('M20 80C80 20 20 20.5 80 80')],
    ['control points on the ends', line('M20 80C20 80 80 20 80 80')],
    ['both', line('M20 20C20 20 80 80 80 80')],
    ['a quadratic that turns back', line('M20 50Q90 50 40 50.2', 'stroke-linejoin="round"')],
    ['S with round joins', line('M10 50S30 10 50 50 70 90 90 50', 'stroke-linejoin="round" stroke-linecap="round"')],
    ['sharp corners', line('M10 80L50 20 60 80 65 20 67 80', 'stroke-miterlimit="20"')],
    ['bevels', line('M10 80L50 20 60 80 65 20', 'stroke-linejoin="bevel"')],
    ['there and back', line('M10 50H80H20', 'stroke-linejoin="round"')],
    ['closed', line('M20 20H80V80H20z')],
    ['left open', line('M20 20H80V80H20V20')],
    ['a closed curve', line('M50 20C90 20 90 80 50 80 10 80 10 20 50 20z')],
    ['an arc', line('M20 50A40 20 30 1 1 60 60')],
    ['a flat ellipse', '<ellipse cx="50" cy="50" rx="40" ry="4" fill="none" stroke="red" stroke-width="14"/>'],
    [
      'a rounded rectangle',
      '<rect x="20" y="20" width="60" height="50" rx="12" fill="none" stroke="red" stroke-width="8"/>',
    ],
    ['uneven scale', `<g transform="scale(1 .3) translate(0 60)">${line('M10 50S30 10 50 50 70 90 90 50')}</g>`],
    [
      'mirrored and sheared',
      `<g transform="matrix(-1 .4 .2 .6 90 0)">${line('M20 20H80V80H20z', 'stroke-linejoin="round"')}</g>`,
    ],
    ['dashes on a curve', line('M10 50C30 -30 70 130 90 50', 'stroke-dasharray="7 3 1 3" stroke-dashoffset="4"')],
    ['round dots', line('M10 50C30 -30 70 130 90 50', 'stroke-dasharray="0 12" stroke-linecap="round"')],
    ['dashes round a corner', line('M20 20H80V80H20z', 'stroke-dasharray="35 15" stroke-dashoffset="12"')],
    [
      'dashes on a circle',
      '<circle cx="50" cy="50" r="35" fill="none" stroke="red" stroke-width="6" stroke-dasharray="11 5"/>',
    ],
    [
      'dashes round a cusp',
      line('M20 80C90 0 10 0 80 80', 'stroke-dasharray="30 9" style="stroke-width:16" stroke-linecap="round"'),
    ],
    [
      'dashes over joins',
      line('M20 20L50 80 80 20z', 'stroke-dasharray="40 6" style="stroke-width:9" stroke-linejoin="round"'),
    ],
    [
      'dashes along an ellipse',
      '<ellipse cx="50" cy="50" rx="40" ry="30" fill="none" stroke="red" stroke-width="7" stroke-dasharray="9 4"/>',
    ],
    [
      'dashes of uneven scale',
      '<g transform="scale(1 .3) translate(0 60)">' +
        `${line('M10 50S30 10 50 50 70 90 90 50', 'stroke-dasharray="9 4"')}</g>`,
    ],
    ['square dots', line('M20 20h0M50 50L50 50M20 80z', 'stroke-linecap="square"')],
    ['fill and stroke', `<g fill="lime" stroke="red" stroke-width="3">${STAR}</g>`],
    ['width in percent', '<path d="M10 10L90 40" stroke="red" stroke-width="5%"/>'],
  ])('%s', (_name, content) => expectSame(content));
});

describe('markers', () => {
  const marker = (attributes: string): string => `<marker id="m" ${attributes}><path d="M0 0L10 5 0 10z"/></marker>`;
  const marked = (more = ''): string =>
    `<path d="M10 80L40 30 60 60 90 20" fill="none" stroke="black" stroke-width="2" ` +
    `marker-start="url(#m)" marker-mid="url(#m)" marker-end="url(#m)" ${more}/>`;
  it.each([
    ['auto', marker('viewBox="0 0 10 10" refX="5" refY="5" orient="auto"') + marked()],
    ['an angle', marker('viewBox="0 0 10 10" refX="5" refY="5" orient="30"') + marked()],
    ['user space', marker('markerUnits="userSpaceOnUse" markerWidth="10" markerHeight="8"') + marked()],
    ['overflow', marker('overflow="visible" markerWidth="2" markerHeight="2" viewBox="0 0 4 4"') + marked()],
    [
      'an uneven box',
      marker('viewBox="0 0 10 5" markerWidth="6" markerHeight="6" preserveAspectRatio="xMinYMax meet" orient="auto"') +
        marked(),
    ],
    [
      'curves',
      marker('viewBox="0 0 10 10" refX="5" refY="5" orient="auto"') +
        '<path d="M10 50C30 -30 70 130 90 50A10 10 0 0 1 80 90" fill="none" stroke="red" ' +
        'marker-start="url(#m)" marker-mid="url(#m)" marker-end="url(#m)"/>',
    ],
    [
      'line and polyline',
      marker('viewBox="0 0 10 10" refX="5" refY="5" orient="auto" markerWidth="6" markerHeight="6"') +
        '<g stroke="black" fill="none" marker-end="url(#m)"><line x1="10" y1="10" x2="40" y2="20"/>' +
        '<polyline points="10,50 50,60 60,90"/></g>',
    ],
    [
      'on a rectangle',
      marker('viewBox="0 0 10 10" refX="5" refY="5"') +
        '<g stroke="red" stroke-width="2" marker-mid="url(#m)">' +
        '<rect x="10" y="10" width="30" height="20"/></g>',
    ],
  ])('%s', (_name, content) => expectSame(content));
});

describe('viewports, units, styles', () => {
  it.each([
    [
      'nested viewports',
      '<svg x="10" y="10" width="50%" height="30" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMid slice">' +
        '<circle cx="5" cy="5" r="6"/>' +
        '<svg x="2" width="20%" height="2"><rect width="100%" height="100%" fill="red"/></svg></svg>',
    ],
    [
      'percentages of the nearest viewport',
      '<svg width="40" height="80" viewBox="0 0 20 40"><rect x="10%" y="10%" width="50%" height="25%" rx="10%"/></svg>',
    ],
    [
      'font units',
      '<g font-size="10"><rect width="2em" height="1em" style="font-size:2em"/>' +
        '<rect y="50" width="4em" height="1em" style="font-size:150%"/></g>',
    ],
    [
      'symbol with slice',
      '<symbol id="s" viewBox="0 0 10 10" preserveAspectRatio="xMidYMin slice">' +
        '<circle cx="5" cy="5" r="5"/></symbol><use href="#s" x="10" y="10" ' +
        'width="60" height="30"/>',
    ],
    [
      'a tree of uses',
      `<defs><g id="a">${STAR}</g><g id="b"><use href="#a" transform="scale(.3)"/>` +
        `<use href="#a" transform="translate(40) scale(.4)"/></g></defs>` +
        '<use href="#b"/><use href="#b" transform="rotate(90 50 50)" fill="red"/>',
    ],
    [
      'inheritance through use',
      '<defs><g id="a" fill="red"><rect width="20" height="20"/>' +
        '<rect x="30" width="20" height="20" fill="inherit" stroke="currentColor"/></g></defs>' +
        '<g color="lime" stroke-width="6"><use href="#a" x="5" y="5" stroke="blue"/></g>',
    ],
    [
      'colours in many forms',
      [
        '#f00',
        '#ff0000',
        'rgb(255,0,0)',
        'rgb(100%, 0%, 0%)',
        'hsl(0,100%,50%)',
        'RED',
        'rgba(255,0,0,1)',
        'rgb(300,-5,0)',
      ]
        .map((fill, at) => `<rect x="${10 * at}" width="8" height="50" fill="${fill}"/>`)
        .join(''),
    ],
  ])('%s', (_name, content) => expectSame(content));
});
