import { describe, expect, it } from 'vitest';
import { reorderEntries, reorderLayers } from '../../../../src/engine/fixes/order/reorder-layers';
import { applyEdits, check, readConfig } from '../../../../src/engine/index';

const layer = (name: string, x: number) => `<g id="${name}"><rect x="${x}" y="2" width="5" height="5"/></g>`;

const TEXT = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="20mm" viewBox="0 0 60 20">
  <!-- the drawing -->

  ${layer('sun', 2)} <!-- end of the sun -->
  <!-- tombolo accept floating-island: falls on purpose -->
  ${layer('reeds', 12)}

  <!-- the bird -->
  ${layer('heron', 22)}
</svg>
`;

const names = (text: string) => check(text).sheets.map((sheet) => sheet.layer.name);

/** With one item at another place. */
function movedTo(from: number, to: number, count = 3): number[] {
  const others = Array.from({ length: count }, (_, index) => index).filter((index) => index !== from);
  return [...others.slice(0, to), from, ...others.slice(to)];
}

function reordered(text: string, from: number, to: number): string {
  return inOrder(text, movedTo(from, to), [from]);
}

function inOrder(text: string, order: readonly number[], moved: readonly number[]): string {
  const edits = reorderLayers(check(text), order, moved);
  if (typeof edits === 'string') throw new Error(edits);
  return applyEdits(text, edits);
}

describe('a layer gets another place', () => {
  it.each([
    [0, 1, ['reeds', 'sun', 'heron']],
    [0, 2, ['reeds', 'heron', 'sun']],
    [1, 0, ['reeds', 'sun', 'heron']],
    [2, 0, ['heron', 'sun', 'reeds']],
    [2, 1, ['sun', 'heron', 'reeds']],
  ])('from %i to %i', (from, to, order) => {
    const text = reordered(TEXT, from, to);
    expect(names(text)).toEqual(order);
    expect([...text].sort().join('')).toBe([...TEXT].sort().join(''));
  });

  it('its comments go with it, those of its neighbours stay with them', () => {
    expect(reordered(TEXT, 1, 0)).toBe(
      TEXT.replace(
        `\n\n  ${layer('sun', 2)} <!-- end of the sun -->\n` +
          `  <!-- tombolo accept floating-island: falls on purpose -->\n  ${layer('reeds', 12)}`,
        `\n\n  <!-- tombolo accept floating-island: falls on purpose -->\n  ${layer('reeds', 12)}\n` +
          `  ${layer('sun', 2)} <!-- end of the sun -->`,
      ),
    );
    expect(reordered(TEXT, 2, 1)).toContain(`<!-- the bird -->\n  ${layer('heron', 22)}\n  <!-- tombolo accept`);
  });

  it.each([
    [0, 2],
    [0, 1],
    [1, 0],
  ])('there and back again, from %i to %i, is the same text', (from, to) => {
    expect(reordered(reordered(TEXT, from, to), to, from)).toBe(TEXT);
  });

  it.each([
    { order: [2, 1, 0], moved: [2, 1] },
    { order: [2, 1, 0], moved: [1, 0] },
    { order: [1, 2, 0], moved: [1, 2] },
    { order: [2, 0, 1], moved: [0, 1] },
  ])('with others, to $order by moving $moved', ({ order, moved }) => {
    const text = inOrder(TEXT, order, moved);
    expect(names(text)).toEqual(order.map((layer) => names(TEXT)[layer]));
    expect([...text].sort().join('')).toBe([...TEXT].sort().join(''));
    expect(text).toContain(`<!-- the bird -->\n  ${layer('heron', 22)}`);
    expect(text).toContain(`${layer('sun', 2)} <!-- end of the sun -->`);
    expect(text).toContain(`<!-- tombolo accept floating-island: falls on purpose -->\n  ${layer('reeds', 12)}`);
  });

  it('with the line ends of Windows too', () => {
    const windows = TEXT.replaceAll('\n', '\r\n');
    expect(reordered(windows, 1, 0)).toBe(reordered(TEXT, 1, 0).replaceAll('\n', '\r\n'));
  });

  it('where the layers are no groups of one parent, a sentence says so', () => {
    const loose = TEXT.replace('</svg>', '<rect x="40" y="2" width="5" height="5"/></svg>');
    expect(reorderLayers(check(loose), movedTo(0, 3, 4), [0])).toMatch(/no group/);
    expect(reorderLayers(check(TEXT), movedTo(0, 3, 4), [0])).toMatch(/no such place/);
    expect(reorderLayers(check(TEXT), [0, 1, 2], [])).toMatch(/no such place/);
  });

  it('where the layers are colours of one drawing, a sentence says so', () => {
    const colours = ['#aa2200', '#ffee88'].map(
      (fill, i) => `<rect x="${9 * i}" y="2" width="5" height="5" fill="${fill}"/>`,
    );
    const group = `<g id="bird" data-tombolo-layers="by-paint">${colours.join('')}</g>`;
    const taken = TEXT.replace(layer('heron', 22), group);
    expect(names(taken)).toHaveLength(4);
    expect(reorderLayers(check(taken), movedTo(3, 2, 4), [3])).toMatch(/colours of one drawing/);
  });

  it('where a style rule counts the groups, nothing is moved', () => {
    const styled = TEXT.replace('<!-- the drawing -->', '<style>g:first-of-type rect { fill: #ff0000 }</style>');
    expect(reorderLayers(check(styled), movedTo(0, 2), [0])).toMatch(/something else/);
  });
});

describe('an entry of tombolo.json gets another place', () => {
  const config = `{ "margin": "5mm",
  "layers": [
    { "from": "sky.svg" }, // first
    { "from": "heron.svg#body",
      "paint": "#3b4a54" },
    { "from": "sun.svg" },
  ] }`;
  const order = (text: string) => readConfig(text).config.layers.map(({ from }) => from);

  it.each([
    [0, 2, ['heron.svg#body', 'sun.svg', 'sky.svg']],
    [2, 1, ['sky.svg', 'sun.svg', 'heron.svg#body']],
  ])('from %i to %i', (from, to, expected) => {
    const edits = reorderEntries(config, movedTo(from, to));
    const text = applyEdits(config, edits as Exclude<typeof edits, string>);
    expect(order(text)).toEqual(expected);
    expect([...text].sort().join('')).toBe([...config].sort().join(''));
  });

  it.each(['', '{}', '{"layers": 3}', '{"layers": [{}]}', '[', 'null'])('not in %j', (text) => {
    expect(reorderEntries(text, [1, 0])).toMatch(/no such place/);
  });
});
