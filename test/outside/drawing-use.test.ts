/**
 * Source: SVG 2, "Document Structure" (https://www.w3.org/TR/SVG2/struct.html#UseElement) with its examples Use01.svg
 * to Use04.svg, each beside the file of what it generates.
 */
import { describe, expect, it } from 'vitest';
import { boxes, colours, draw, drawMm, findings } from '../drawing/draw';

const ROOT =
  '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" ' +
  'height="30mm" viewBox="0 0 100 30">';

describe('the examples of the specification', () => {
  it('Use01: a rectangle at 20,10', () => {
    expect(
      boxes(
        draw(`${ROOT}<defs><rect id="MyRect" width="60" height="10"/></defs><use x="20" y="10" href="#MyRect"/></svg>`),
      ),
    ).toEqual([[20, 10, 60, 10]]);
  });

  it('Use02: a symbol of 20 × 20 drawn at 10 × 10', () => {
    const squares = ['1" y="1', '11" y="1', '1" y="11', '11" y="11']
      .map((at) => `<rect x="${at}" width="8" height="8"/>`)
      .join('');
    expect(
      boxes(
        draw(
          `${ROOT}<defs><symbol id="MySymbol" viewBox="0 0 20 20">${squares}</symbol></defs>` +
            '<use x="45" y="10" width="10" height="10" href="#MySymbol"/></svg>',
        ),
      ),
    ).toEqual([
      [45.5, 10.5, 4, 4],
      [50.5, 10.5, 4, 4],
      [45.5, 15.5, 4, 4],
      [50.5, 15.5, 4, 4],
    ]);
  });

  it('Use03: a transform of the use, and then its x and y', () => {
    const rect = '<rect id="MyRect" width="60" height="10"/>';
    const used = draw(
      `${ROOT}<defs>${rect}</defs><use href="#MyRect" transform="translate(20,2.5) rotate(10)" x="3" y="2"/></svg>`,
    );
    const generated = draw(`${ROOT}<g transform="translate(20,2.5) rotate(10) translate(3,2)">${rect}</g></svg>`);
    expect(boxes(used)).toEqual(boxes(generated));
  });

  it('Use04: selectors match where the element stands, inheritance comes from the use', () => {
    const drawing = drawMm(
      '<style>#TestUse{fill:blue} .direct circle{fill:red} #outer > circle{stroke:none}</style>' +
        '<defs class="direct"><g id="Test"><circle r="5"/></g><circle id="plain" r="4"/></defs>' +
        '<use id="TestUse" href="#Test"/><use fill="lime" href="#plain"/>',
    );
    expect(colours(drawing)).toEqual(['#ff0000', '#ff0000']);
    const inherited = drawMm(
      '<defs><circle id="c" r="5"/></defs><g fill="blue"><use href="#c"/></g><use href="#c" fill="lime"/>',
    );
    expect(colours(inherited)).toEqual(['#0000ff', '#00ff00']);
  });
});

describe('use', () => {
  it('href beats xlink:href', () => {
    expect(
      boxes(
        drawMm(
          '<defs><rect id="a" width="1" height="1"/><rect id="b" width="2" height="2"/></defs>' +
            '<use xlink:href="#a" href="#b"/><use xlink:href="#a"/>',
        ),
      ),
    ).toEqual([
      [0, 0, 2, 2],
      [0, 0, 1, 1],
    ]);
  });

  it('width and height of a use beat those of an svg or symbol, and nothing else', () => {
    const box = 'viewBox="0 0 1 1"><rect width="1" height="1"/>';
    expect(
      boxes(
        drawMm(
          `<defs><svg id="s" width="5" height="5" ${box}</svg><symbol id="y" width="4" height="4" ${box}</symbol>` +
            '<rect id="r" width="3" height="3"/></defs><use href="#s" width="8" height="8"/><use href="#s"/>' +
            '<use href="#y"/>' +
            '<use href="#y" width="9" height="9"/><use href="#r" width="7" height="7"/>',
        ),
      ),
    ).toEqual([
      [0, 0, 8, 8],
      [0, 0, 5, 5],
      [0, 0, 4, 4],
      [0, 0, 9, 9],
      [0, 0, 3, 3],
    ]);
  });

  it('a symbol without size fills the viewport; it is not drawn by itself', () => {
    expect(
      boxes(drawMm('<symbol id="y" viewBox="0 0 1 1"><rect width="1" height="1"/></symbol><use href="#y"/>')),
    ).toEqual([[0, 0, 100, 100]]);
  });

  it('a circular reference is an error: the use is not drawn', () => {
    const drawing = drawMm(
      '<g id="a"><rect width="1" height="1"/><use href="#a"/></g><g id="b"><use href="#c"/></g>' +
        '<g id="c"><use href="#b"/><rect width="2" height="2"/></g>',
    );
    expect(drawing.shapes.length).toBeGreaterThanOrEqual(2);
    expect(findings(drawing)).toContain('unsupported: #a');
    expect(findings(drawing).filter((text) => text.startsWith('unsupported')).length).toBeGreaterThanOrEqual(2);
  });

  it('what cannot be found or lies outside the file is reported', () => {
    expect(findings(drawMm('<use href="#none"/><use href="other.svg#a"/>'))).toEqual([
      'unsupported: #none',
      'unsupported: other.svg#a',
    ]);
  });

  it('visible within a hidden use still shows', () => {
    expect(
      drawMm(
        '<defs><g id="a"><rect width="1" height="1" visibility="visible"/><rect width="2" height="2"/></g></defs>' +
          '<use href="#a" visibility="hidden"/>',
      ).shapes.length,
    ).toBe(1);
  });

  it('shapes know the uses and the child of the root that they come from', () => {
    const drawing = drawMm(
      '<defs><g id="a"><rect id="r" width="1" height="1"/></g></defs><g id="top"><use id="u" href="#a"/></g>',
    );
    const [shape] = drawing.shapes;
    const id = (element: { attributes: readonly { name: string; value: string }[] } | undefined): string | undefined =>
      element?.attributes.find(({ name }) => name === 'id')?.value;
    expect(id(shape?.element)).toBe('r');
    expect(shape?.instances.map(id)).toEqual(['u']);
    expect(id(shape?.topLevel)).toBe('top');
  });
});

describe('nested viewports', () => {
  it('what lies outside a nested svg or a symbol is clipped, unless overflow is visible', () => {
    const nested = (overflow: string): ReturnType<typeof drawMm> =>
      drawMm(`<svg x="10" y="20" width="30" height="40" ${overflow}>` + '<rect width="100" height="100"/></svg>');
    expect(nested('').shapes[0]?.clips.map(({ box }) => box)).toEqual([{ minX: 10, minY: 20, maxX: 40, maxY: 60 }]);
    expect(nested('overflow="visible"').shapes[0]?.clips).toEqual([]);
  });

  it('a turned viewport clips by its outline', () => {
    const drawing = drawMm(
      '<g transform="rotate(30)"><svg width="10" height="10"><rect width="20" height="20"/></svg></g>',
    );
    expect(drawing.shapes[0]?.clips[0]?.box).toBeUndefined();
    expect(drawing.shapes[0]?.clips[0]?.parts[0]?.subpaths[0]?.curves.length).toBe(4);
  });
});
