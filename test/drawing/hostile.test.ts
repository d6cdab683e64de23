import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { draw, drawMm, inMillimetres } from './draw';

/** Copies within copies: ten uses of the group before, thirty times over. */
function laughs(seed: string): string {
  let text = `<defs><g id="g0">${seed}</g>`;
  for (let level = 1; level < 30; level += 1)
    text += `<g id="g${level}">${`<use href="#g${level - 1}"/>`.repeat(10)}</g>`;
  return `${text}</defs><use href="#g29"/>`;
}

describe('small texts that would grow without end', () => {
  it.each([
    ['shapes', '<rect width="1" height="1"/>'],
    ['nothing', ''],
  ])('copies of copies of %s', (_name, seed) => {
    const drawing = drawMm(laughs(seed));
    expect(drawing.shapes.length).toBeLessThanOrEqual(300_000);
    expect(drawing.problems.map(({ check }) => check)).toContain('unsupported');
  });

  it.each([
    ['without number', 'M0 0h90000', '0.03'],
    ['too fine for any tool', 'M0 0h90', '0.02'],
  ])('dashes %s', (_, line, dash) => {
    const drawing = drawMm(`<path d="${line}" stroke="red" stroke-dasharray="${dash}"/>`);
    expect(drawing.shapes.find(({ part }) => part === 'stroke')?.subpaths.length).toBe(1);
    expect(drawing.problems.map(({ check }) => check)).toEqual(['unsupported']);
  });

  it('variables that double', () => {
    const rules = Array.from({ length: 60 }, (_, index) => `--v${index + 1}:var(--v${index}) var(--v${index});`).join(
      '',
    );
    expect(
      drawMm(`<style>svg{--v0:red;${rules}} rect{fill:var(--v60)}</style><rect width="1" height="1"/>`).shapes.length,
    ).toBe(1);
  });

  it('clip paths within clip paths, and in a circle', () => {
    let text = '<clipPath id="c0"><rect width="50" height="50"/></clipPath>';
    for (let index = 1; index < 300; index += 1) {
      text += `<clipPath id="c${index}"><rect clip-path="url(#c${index - 1})" width="50" height="50"/></clipPath>`;
    }
    expect(drawMm(`${text}<rect clip-path="url(#c299)" width="9" height="9"/>`).shapes.length).toBe(1);
    const circle = drawMm(
      '<clipPath id="a" clip-path="url(#b)"><rect width="5" height="5"/></clipPath>' +
        '<clipPath id="b" clip-path="url(#a)">' +
        '<rect width="5" height="5"/></clipPath><rect clip-path="url(#a)" width="9" height="9"/>',
    );
    expect(circle.shapes).toEqual([]);
    expect(circle.problems.length).toBeGreaterThan(0);
  });

  it('a marker in itself', () => {
    const drawing = drawMm(
      '<marker id="m"><path d="M0 0h1" marker-start="url(#m)" stroke="red"/></marker>' +
        '<path d="M0 0h10" marker-start="url(#m)" stroke="red"/>',
    );
    expect(drawing.problems.map(({ check }) => check)).toContain('unsupported');
  });
});

describe('deep trees', () => {
  const DEPTH = 50_000;
  it.each([
    ['g', ''],
    ['g', 'transform="rotate(1)"'],
    ['svg', ''],
    ['a', 'fill="red"'],
  ])('%s %s', (name, attributes) => {
    const text = `<${name} ${attributes}>`.repeat(DEPTH) + '<rect width="1" height="1"/>' + `</${name}>`.repeat(DEPTH);
    expect(drawMm(text).shapes.length).toBe(1);
  });

  it('with descendant selectors', () => {
    const text =
      '<style>g g > g path, .a .b rect, a g ~ rect{fill:red}</style>' +
      '<g class="a">'.repeat(DEPTH) +
      '<rect width="1" height="1"/>' +
      '</g>'.repeat(DEPTH);
    expect(drawMm(text).shapes.length).toBe(1);
  });

  it('fifty thousand siblings with selectors by place', () => {
    const drawing = drawMm(
      '<style>rect:nth-child(2n){fill:red} rect + rect:last-of-type{fill:lime}</style>' +
        '<rect width="1" height="1"/>'.repeat(50_000),
    );
    expect(drawing.shapes.length).toBe(50_000);
    expect(drawing.problems).toEqual([]);
  });
});

describe('no text throws', () => {
  const fragments = fc.constantFrom(
    '<g',
    '>',
    '/>',
    '</g>',
    '<rect width="',
    '5"',
    ' height="5"',
    ' fill="url(#a',
    ')"',
    '<path d="M0 0',
    'a1 1 0 01',
    'z"',
    '1e999',
    '<use href="#a"',
    ' id="a"',
    ' style="fill:var(--',
    ';transform:scale(0)"',
    '<style>',
    'rect{',
    '}',
    '@media',
    '</style>',
    '<clipPath id="a">',
    ' clip-path="url(#a)"',
    ' stroke="red"',
    ' stroke-dasharray="0 1e-9"',
    ' stroke-width="1e300"',
    ' viewBox="0 0 1e-300 1"',
    '<svg',
    '&a;',
    '"',
    '<marker id="a">',
    ' marker="url(#a)"',
    ' transform="scale(1e200)"',
    '<switch>',
    '<text>',
    '\u0000',
    '😀',
  );

  it('fragments in any order', () => {
    fc.assert(
      fc.property(fc.array(fragments, { maxLength: 30 }), (parts) => {
        const drawing = draw(inMillimetres(parts.join('')));
        for (const shape of drawing.shapes) {
          for (const { curves, spans } of shape.subpaths) {
            expect(spans.length).toBe(curves.length);
            for (const { start, end } of curves) expect(Number.isFinite(start.x + start.y + end.x + end.y)).toBe(true);
          }
        }
      }),
      { numRuns: 1500 },
    );
  });
});
