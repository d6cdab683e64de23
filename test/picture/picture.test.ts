import { Resvg } from '@resvg/resvg-js';
import { parse } from 'svgson';
import { describe, expect, it } from 'vitest';
import { check } from '../../src/engine/index';
import { pathData } from '../../src/picture/path-data';
import { layerNames, type StackPictureOptions, stackScene } from '../../src/picture/picture';
import { sceneSvg } from '../../src/picture/scene-svg';
import type { Report } from '../../src/report/report';

/** How many square millimetres of a picture have each colour, drawn by an independent renderer. */
function areasByColour(svg: string, pixelsPerMm = 10): Map<string, number> {
  const { width } = new Resvg(svg);
  const zoom = (pixelsPerMm * 25.4) / 96;
  expect(width).toBeGreaterThan(0);
  const { pixels } = new Resvg(svg, { fitTo: { mode: 'zoom', value: zoom } }).render();
  const areas = new Map<string, number>();
  for (let at = 0; at < pixels.length; at += 4) {
    const colour = `#${[0, 1, 2].map((part) => pixels[at + part]!.toString(16).padStart(2, '0')).join('')}`;
    areas.set(colour, (areas.get(colour) ?? 0) + pixelsPerMm ** -2);
  }
  return areas;
}

const STACK = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">
  <g id="sky"><rect x="5" y="5" width="50" height="30" fill="#8fd3ff"/></g>
  <g id="reeds"><path fill="#3b4a54" fill-rule="evenodd" d="M10 10H30V30H10Z M15 15V25H25V15Z"/></g>
</svg>`;

const stackPicture = (report: Report, options?: StackPictureOptions) =>
  sceneSvg(stackScene(report, options), { names: layerNames(report) });

describe('a picture of the stack', () => {
  it('paints the openings over the ground and over each other, to the closed form', () => {
    const areas = areasByColour(stackPicture(check(STACK), { ground: '#f4efe4' }));
    expect(areas.get('#f4efe4')).toBeCloseTo(2400 - 1500, 0);
    expect(areas.get('#8fd3ff')).toBeCloseTo(1500 - 300, 0);
    expect(areas.get('#3b4a54')).toBeCloseTo(300, 0);
  });

  it('one layer alone', () => {
    const areas = areasByColour(stackPicture(check(STACK), { layer: 'reeds' }));
    expect(areas.get('#f5f0e4')).toBeCloseTo(2400 - 300, 0);
    expect(areas.has('#8fd3ff')).toBe(false);
  });

  it('names cannot break out of their place, nor can paints or the ground', async () => {
    const name = '</title><script>&"\u0001\ud800';
    const report = check(STACK);
    const [sheet] = report.sheets;
    const layer = { ...sheet!.layer, name, paint: '"/><script/>' };
    const odd: Report = { ...report, stack: { ...report.stack, layers: [{ file: '', sheet: { ...sheet!, layer } }] } };
    const svg = stackPicture(odd, { ground: '"><script/>' });
    const root = await parse(svg);
    const group = root.children[1];
    expect(root.children.map((child) => child.name)).toEqual(['g', 'g']);
    expect(group?.children[0]?.children[0]?.value).toContain('&lt;/title&gt;&lt;script&gt;&amp;');
    expect(svg).not.toContain('<script');
    expect(svg).not.toMatch(/[\u0000-\u0008\ud800-\udfff]/);
    expect(() => new Resvg(svg).render()).not.toThrow();
  });

  it('paint that lets the ground through', () => {
    const areas = areasByColour(stackPicture(check(STACK), { ground: '#ffffff', opacity: 0.5, layer: 'sky' }));
    expect(areas.get('#ffffff')).toBeCloseTo(2400 - 1500, 0);
    // Half way from white to #8fd3ff.
    expect(areas.get('#c7e9ff')).toBeCloseTo(1500, 0);
  });

  it('one sheet: card with its openings left out, the island fallen out of its place', async () => {
    const svg = stackPicture(check(STACK), { look: 'sheet', layer: 'reeds' });
    expect(svg).toContain('fill="#d8c39b"');
    const { children } = (await parse(svg)).children.at(-1)!;
    expect(children.map(({ attributes }) => attributes.transform ?? '')).toContainEqual(
      expect.stringMatching(/^matrix/),
    );
    expect(children.filter(({ name }) => name === 'text').map(({ children: [text] }) => text?.value)).toEqual([
      'a',
      'b',
    ]);
    expect(() => new Resvg(svg).render()).not.toThrow();
  });

  it('all sheets side by side: as much card as the sheets have', () => {
    const svg = stackPicture(check(STACK), { look: 'sheets' });
    const card = areasByColour(svg).get('#d8c39b') ?? 0;
    // The island lies in its hole under its hatch.
    const material = 2400 - 1500 + 2400 - 300 - 100;
    expect(Math.abs(card - material) / material).toBeLessThan(0.02);
    expect(svg).toMatch(/>1 {2}sky<[\s\S]*>2 {2}reeds</);
  });

  it('a large loose piece hatched inside its edge, in a renderer that knows no style sheets', () => {
    const frame = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80"
      data-tombolo-reading="openings"><path fill-rule="evenodd" d="M5 5H95V75H5ZM8 8H92V72H8Z"/></svg>`;
    const svg = stackPicture(check(frame), { look: 'sheet' });
    expect(svg).toContain('<clipPath id="rim-0-');
    const hatched = areasByColour(svg).get('#6d28d9') ?? 0;
    // Pixels that are wholly of its colour: lines over a band round 84 × 64 mm, and the edge itself.
    expect(hatched).toBeGreaterThan(20);
    expect(hatched).toBeLessThan(2 * (84 + 64) * 2);
  });

  it('outlines: their lines, open and doubled ones too', () => {
    const lines = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"
      data-tombolo-reading="outlines" fill="none" stroke="#000" stroke-width="0.1">
      <path d="M5 5H25V25H5Z"/><path d="M5 5H25V25H5Z"/><path d="M30 5H50V25"/></svg>`;
    const svg = stackPicture(check(lines));
    expect(svg.match(/M30 5L50 5L50 25(?!L)/g)).toHaveLength(1);
    expect(svg.match(/M5 5L25 5L25 25L5 25L5 5/g)).toHaveLength(2);
  });

  it.each(['', '<svg', 'no markup at all', '<svg xmlns="http://www.w3.org/2000/svg" width="0" height="-3"/>'])(
    'what is no stencil gives a well-formed picture: %j',
    async (text) => {
      const svg = stackPicture(check(text));
      expect((await parse(svg)).name).toBe('svg');
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    },
  );
});

describe('pathData', () => {
  const square = (from: number, to: number) => Float64Array.of(from, from, to, from, to, to, from, to);

  it('rounds to the micrometre and knows no minus nought', () => {
    expect(pathData([{ outer: Float64Array.of(-0.0001, 0, 1 / 3, 0, 1 / 3, 2e-7), holes: [] }])).toBe(
      'M0 0L0.333 0L0.333 0Z',
    );
  });

  it('holes follow their outer ring', () => {
    expect(pathData([{ outer: square(0, 9), holes: [square(3, 6)] }])).toBe('M0 0L9 0L9 9L0 9ZM3 3L6 3L6 6L3 6Z');
  });

  it('what is not finite is no word in the path', () => {
    expect(pathData([{ outer: Float64Array.of(NaN, 0, Infinity, 0, 1, 1), holes: [] }])).toBe('M0 0L0 0L1 1Z');
  });
});
