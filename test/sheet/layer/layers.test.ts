/** Exports of drawing programs are taken apart as their author meant, and print what they show. */
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it, it as test } from 'vitest';
import { check } from '../../../src/engine/index';
import { stackScene } from '../../../src/picture/picture';
import { sceneSvg } from '../../../src/picture/scene-svg';

const D = 'xmlns:d="http://example.org/drawing" d:kind="artwork"';
const root = (inside: string, attributes = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${D} id="svg5" width="90mm" height="60mm" viewBox="0 0 90 60"${attributes}>\n${inside}\n</svg>\n`;

const WATER = '<path d="M5 40h80v12h-80z"/>';
const HERON = '<path d="M20 10h12v36h-12zM40 12a6 6 0 1 1 0 12z"/>';
const SUN = '<circle cx="66" cy="20" r="11"/>';
const PHOTO = '<image width="90" height="60" href="data:image/png;base64,iVBORw0KGgo="/>';

/** In the ways in which drawing programs write the same picture. */
const EXPORTS: Readonly<Record<string, string>> = {
  'layers within an outer group, named by labels of their own namespace, a photo hidden': root(
    `<defs/><g id="g12" d:label="Artwork" transform="translate(2 1)">
      <g id="g1" d:label="Photo" style="display:none">${PHOTO}</g>
      <g id="g2" d:label="Sun" style="fill:#f0b13c">${SUN}</g>
      <g id="g3" d:label="Water" style="fill:#8fb7b3" transform="scale(1 .98)">${WATER}</g>
      <g id="g4" d:label="Heron" style="fill:#2f4654">${HERON}</g>
    </g>`,
  ),
  'two groups round the layers, which only ids name, under a clip path': root(
    `<defs><clipPath id="c"><rect width="90" height="50"/></clipPath></defs>
    <g clip-path="url(#c)"><g transform="matrix(.9 0 0 .9 3 3)">
      <g id="Sun" fill="#f0b13c">${SUN}</g><g id="Water"><g fill="#8fb7b3">${WATER}</g></g>
      <g id="Heron"><g transform="translate(1)" style="fill:#2f4654">${HERON}</g></g>
    </g></g>`,
  ),
  'layers at the top, a sketch that is made invisible': root(
    `<g d:label="Sun" fill="#f0b13c">${SUN}</g><g d:label="Sketch" visibility="hidden">${HERON}</g>
    <g d:label="Water" fill="#8fb7b3">${WATER}</g><g d:label="Heron" fill="#2f4654">${HERON}</g>`,
  ),
};

const BY_PAINT: Readonly<Record<string, string>> = {
  'shapes one after the other': root(
    `<g fill="#f0b13c">${SUN}</g><g fill="#8fb7b3">${WATER}</g><g fill="#2f4654">${HERON}</g>`,
    ' data-tombolo-layers="by-paint"',
  ),
  'colours that come back where nothing lies between': root(
    `<path fill="#f0b13c" d="M55 8h22v24h-22z"/><path fill="#8fb7b3" d="M5 40h80v12h-80z"/>
    <path fill="#2f4654" d="M20 10h12v36h-12z"/><path fill="#8fb7b3" d="M60 14h10v8h-10z"/><path fill="#2f4654" d="M80 4h6v50h-6z"/>`,
    ' data-tombolo-layers="by-paint"',
  ),
  'thin outlines round what they enclose': root(
    `<path fill="#8fb7b3" stroke="#2f4654" stroke-width=".25" d="M20 20h40v30h-40z"/>
    <circle fill="#f0b13c" stroke="#2f4654" stroke-width=".25" cx="74" cy="14" r="9"/>`,
    ' data-tombolo-layers="by-paint"',
  ),
  'a first colour that comes back on top of the second': root(
    `<path fill="#2f4654" d="M5 5h12v12h-12z"/><path fill="#8fb7b3" d="M20 20h40v30h-40z"/>
    <path fill="#2f4654" d="M30 26h12v30h-12z"/>`,
    ' data-tombolo-layers="by-paint"',
  ),
};

const WIDTH = 720;

function pixels(svg: string): Buffer {
  return Buffer.from(new Resvg(svg, { fitTo: { mode: 'width', value: WIDTH }, background: '#ffffff' }).render().pixels);
}

/** Pixels whose colour differs by more than smoothed edges do, with none beside them that agrees. */
function differing(a: Buffer, b: Buffer): number {
  const rows = a.length / 4 / WIDTH;
  const differs = (at: number): boolean => [0, 1, 2].some((i) => Math.abs((a[at + i] ?? 0) - (b[at + i] ?? 0)) > 48);
  let count = 0;
  for (let y = 1; y < rows - 1; y += 1) {
    for (let x = 1; x < WIDTH - 1; x += 1) {
      const around = [-1, 0, 1].flatMap((dy) => [-1, 0, 1].map((dx) => 4 * ((y + dy) * WIDTH + x + dx)));
      if (around.every(differs)) count += 1;
    }
  }
  return count;
}

async function printsAsDrawn(text: string): Promise<number> {
  const report = check(text);
  const print = sceneSvg(stackScene(report, { ground: '#ffffff' }));
  expect(print).toMatch(/viewBox="0 0 90 60"/);
  await new Promise((resolve) => setImmediate(resolve));
  return differing(pixels(text), pixels(print));
}

describe('exports', () => {
  it.each(Object.entries(EXPORTS))('%s', async (_, text) => {
    const { sheets, complete } = check(text);
    expect(sheets.map(({ layer }) => [layer.name, layer.paint])).toEqual([
      ['Sun', '#f0b13c'],
      ['Water', '#8fb7b3'],
      ['Heron', '#2f4654'],
    ]);
    expect(complete.filter(({ check: id }) => id === 'mixed-colours' || id === 'not-cuttable')).toEqual([]);
    const hidden = complete.filter(({ message }) => message.startsWith('Hidden'));
    const named = hidden.map(({ message, severity }) => `${severity}: ${message}`);
    expect(named).toEqual(
      /Photo|Sketch/.test(text) ? [expect.stringMatching(/^info: Hidden, so not cut: "(Photo|Sketch)"\.$/)] : [],
    );
    expect(await printsAsDrawn(text)).toBe(0);
  });
});

describe('colours taken as layers', () => {
  it.each(Object.entries(BY_PAINT))('%s', async (_, text) => {
    const { sheets, complete } = check(text);
    const paints = sheets.map(({ layer }) => layer.paint);
    expect(new Set(paints).size).toBe(paints.length);
    expect(complete.filter(({ check: id }) => id === 'mixed-colours')).toEqual([]);
    expect(await printsAsDrawn(text)).toBe(0);
  });
});

test('where no order prints what is drawn, the difference is told', async () => {
  const text = root(
    '<path fill="#2f4654" d="M5 5h40v40h-40z"/><path fill="#8fb7b3" d="M20 20h40v30h-40z"/><path fill="#2f4654" d="M30 26h12v12h-12z"/>',
    ' data-tombolo-layers="by-paint"',
  );
  expect(check(text).complete.map(({ check: id }) => id)).toContain('mixed-colours');
  expect(await printsAsDrawn(text)).toBeGreaterThan(1000);
});

describe('thin lines, where each paint is a layer', () => {
  const layers = (text: string) =>
    check(root(text, ' data-tombolo-layers="by-paint"')).sheets.map(({ layer }) => [layer.paint, layer.reading]);
  const line = (colour: string, width: number) =>
    `<path fill="none" stroke="${colour}" stroke-width="${width}" d="M10 10h20v20h-20z"/>`;
  it('are painted beside what is painted', () => {
    expect(layers(`${WATER}${line('#a33', 0.2)}`)).toEqual([
      ['#000000', 'openings'],
      ['#aa3333', 'openings'],
    ]);
  });
  it('show where to cut where there is nothing else', () => {
    expect(layers(`${line('#36a', 0.1)}${line('#a33', 0.2)}`)).toEqual([
      ['#3366aa', 'outlines'],
      ['#aa3333', 'outlines'],
    ]);
  });
  it('make no layer without a width', () => {
    expect(layers(`${WATER}${line('#a33', 0)}`)).toEqual([['#000000', 'openings']]);
  });
});

describe('what is a layer', () => {
  const names = (text: string) => check(text).sheets.map(({ layer }) => layer.name);
  const square = (x: number, fill: string) => `<path fill="${fill}" d="M${x} 10h10v10h-10z"/>`;
  it('groups of one colour without labels are parts of one layer', () => {
    expect(names(root(`<g id="Ink"><g>${square(10, '#123')}</g><g>${square(30, '#123')}</g></g>`))).toEqual(['Ink']);
  });
  it('with labels they are layers, whatever their colour', () => {
    const two = `<g><g d:label="a">${square(10, '#123')}</g><g d:label="b">${square(30, '#123')}</g></g>`;
    expect(names(root(two))).toEqual(['a', 'b']);
  });
  it('a group with shapes beside its groups is one layer', () => {
    const beside = `<g d:label="Art"><g>${square(10, '#123')}</g><g>${square(30, '#c33')}</g>${square(50, '#123')}</g>`;
    expect(names(root(beside))).toEqual(['Art']);
    expect(names(root(beside, ' data-tombolo-layers="inner-groups"'))).toHaveLength(3);
  });
  it('those without a name are numbered', () => {
    const two = `<g>${square(10, '#123')}</g><g id="b">${square(30, '#c33')}</g><g>${square(50, '#3c3')}</g>`;
    expect(names(root(two))).toEqual(['Layer 1 (unnamed)', 'b', 'Layer 3 (unnamed)']);
  });
});
