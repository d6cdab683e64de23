import { describe, expect, it } from 'vitest';
import type { Clip } from '../../../src/drawing/types';
import { boxOf, drawMm, findings } from '../draw';

const RECT = '<rect width="90" height="90" clip-path="url(#c)"/>';

function clipsOf(content: string): readonly Clip[] {
  return drawMm(content).shapes[0]?.clips ?? [];
}

describe('what a reference gives', () => {
  it('an upright rectangle is a box, whichever way it is written', () => {
    const box = { minX: 10, minY: 20, maxX: 40, maxY: 60 };
    for (const shape of [
      '<rect x="10" y="20" width="30" height="40"/>',
      '<path d="M10 20H40V60H10z"/>',
      '<path d="M40 60V20H10V60z"/>',
      '<rect x="20" y="-40" width="40" height="30" transform="rotate(90)"/>',
      '<polygon points="10,20 40,20 40,60 10,60"/>',
    ]) {
      expect(clipsOf(`<clipPath id="c">${shape}</clipPath>${RECT}`).map((clip) => clip.box)).toEqual([box]);
    }
  });

  it.each([
    '<path d="M10 20H40V60z"/>',
    '<rect width="9" height="9" rx="2"/>',
    '<path d="M0 0H9V9H0zM20 20H30V30H20z"/>',
    '<rect width="9" height="9" transform="rotate(1)"/>',
    '<path d="M0 0H9V9H3z"/>',
    '<path d="M0 0H9H4V9z"/>',
    '<rect width="9" height="9"/><rect width="9" height="9"/>',
  ])('%s is none', (shape) => {
    expect(clipsOf(`<clipPath id="c">${shape}</clipPath>${RECT}`).map((clip) => clip.box)).toEqual([undefined]);
  });

  it('boxes within boxes are one clip, other clips add up', () => {
    const ids =
      '<clipPath id="a"><rect width="50" height="50"/></clipPath><clipPath id="b">' +
      '<rect x="20" width="50" height="40"/></clipPath>' +
      '<clipPath id="c"><circle r="60"/></clipPath>';
    const clips = clipsOf(`${ids}<g clip-path="url(#a)"><g clip-path="url(#b)">${RECT}</g></g>`);
    expect(clips.map(({ box }) => box)).toEqual([{ minX: 20, minY: 0, maxX: 50, maxY: 40 }, undefined]);
    expect(boxOf(clips[0]!.parts[0]!.subpaths)).toEqual([20, 0, 30, 40]);
  });

  it('a clip path clipped itself is two clips; parts clipped one by one are worked out', () => {
    const half = '<clipPath id="h"><path d="M0 0H50V100z"/></clipPath>';
    expect(clipsOf(`${half}<clipPath id="c" clip-path="url(#h)"><circle r="60"/></clipPath>${RECT}`).length).toBe(2);
    expect(clipsOf(`${half}<clipPath id="c"><circle r="60" clip-path="url(#h)"/></clipPath>${RECT}`).length).toBe(2);
    const parts = clipsOf(
      `${half}<clipPath id="c"><circle r="60" clip-path="url(#h)"/><rect width="5" height="5"/></clipPath>${RECT}`,
    );
    expect(parts.length).toBe(1);
    expect(parts[0]?.parts.map(({ subpaths }) => subpaths[0]?.curves.some(({ kind }) => kind === 'arc'))).toEqual([
      false,
      false,
    ]);
  });

  it('shapes that share a clip path share the clip', () => {
    const { shapes } = drawMm(`<clipPath id="c"><circle r="60"/></clipPath>${RECT}${RECT}`);
    expect(shapes[0]?.clips[0]).toBe(shapes[1]?.clips[0]);
  });

  it('nothing to clip by leaves nothing; no area for units of the box neither', () => {
    expect(drawMm(`<clipPath id="c"><g><rect width="9" height="9"/></g></clipPath>${RECT}`).shapes).toEqual([]);
    expect(
      drawMm(
        '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect width="1" height="1"/></clipPath>' +
          '<path d="M0 0H9" stroke="red" clip-path="url(#c)"/>',
      ).shapes,
    ).toEqual([]);
  });

  it('what cannot be followed is said', () => {
    expect(findings(drawMm('<rect width="9" height="9" clip-path="url(#none)"/>'))).toEqual([
      'unsupported: clip-path="url(#none)"',
    ]);
    expect(findings(drawMm(`<clipPath id="c"><text>heron</text></clipPath>${RECT}`))).toEqual(['not-cuttable: <text>']);
  });
});

describe('a clip path that is sized by text', () => {
  const BY_BOX = '<clipPath id="c" clipPathUnits="objectBoundingBox"><rect width=".5" height="1"/></clipPath>';
  it.each([
    ['itself', '<text y="50" clip-path="url(#c)">Marsh</text>', 0],
    ['in its group', '<g clip-path="url(#c)"><rect width="9" height="9"/><text y="50">Marsh</text></g>', 1],
    [
      'hidden in its group',
      '<g clip-path="url(#c)"><rect width="9" height="9"/><text visibility="hidden">M</text></g>',
      1,
    ],
  ])('%s, does not clip, and that is said', (_, content, shapes) => {
    const drawn = drawMm(BY_BOX + content);
    expect(drawn.shapes.map(({ clips }) => clips)).toEqual(Array.from({ length: shapes }, () => []));
    expect(findings(drawn)).toContain('unsupported: clip-path="url(#c)"');
  });

  it('by shapes alone does', () => {
    const drawn = drawMm(`${BY_BOX}<g clip-path="url(#c)"><rect width="9" height="9"/></g><text>Marsh</text>`);
    expect(drawn.shapes[0]?.clips).toHaveLength(1);
  });
});
