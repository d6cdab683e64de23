import { describe, expect, it } from 'vitest';
import { boxes, colours, drawMm } from '../draw';

const ARROW = (attributes: string): string =>
  `<marker id="m" markerUnits="userSpaceOnUse" markerWidth="10" markerHeight="10" ${attributes}>` +
  `<rect width="4" height="2"/></marker>`;
const LINE = '<path d="M20 50H60V80" fill="none" marker-start="url(#m)" marker-mid="url(#m)" marker-end="url(#m)"/>';

describe('markers', () => {
  it('at every vertex, with the corner as the reference point', () => {
    expect(boxes(drawMm(ARROW('') + LINE))).toEqual([
      [20, 50, 4, 2],
      [60, 50, 4, 2],
      [60, 80, 4, 2],
    ]);
  });

  it('turned with the line: half way at a corner, backwards at the start if asked', () => {
    const drawing = drawMm(ARROW('orient="auto-start-reverse"') + LINE);
    const turns = drawing.shapes.map(({ toMm }) => Math.round((Math.atan2(toMm.b, toMm.a) * 180) / Math.PI));
    expect(turns).toEqual([180, 45, 90]);
  });

  it('a closed line begins and ends half way between its first and last direction', () => {
    const drawing = drawMm(
      `${ARROW('orient="auto"')}<path d="M20 20H60V60H20z" fill="none" marker-start="url(#m)" marker-end="url(#m)"/>`,
    );
    expect(drawing.shapes.map(({ toMm }) => Math.round((Math.atan2(toMm.b, toMm.a) * 180) / Math.PI))).toEqual([
      -45, -45,
    ]);
  });

  it('scaled by the stroke width, placed by words', () => {
    const drawing = drawMm(
      '<marker id="m" refX="center" refY="bottom" viewBox="0 0 6 6"><rect width="6" height="6"/></marker>' +
        '<path d="M50 50h0h1" fill="none" stroke-width="2" marker-start="url(#m)"/>',
    );
    expect(boxes(drawing)).toEqual([[47, 44, 6, 6]]);
  });

  it('clipped by their viewport unless overflow is visible', () => {
    const clipped = (overflow: string): unknown =>
      drawMm(ARROW(overflow) + LINE).shapes[0]?.clips.map(({ box }) => box);
    expect(clipped('')).toEqual([{ minX: 20, minY: 50, maxX: 30, maxY: 60 }]);
    expect(clipped('overflow="visible"')).toEqual([]);
  });

  it('styled where the marker stands, with the paint of the line if it asks for it', () => {
    const context =
      '<g fill="lime"><marker id="m"><rect width="1" height="1"/>' +
      '<rect width="1" height="1" fill="context-stroke"/></marker></g>';
    expect(colours(drawMm(`${context}<path d="M0 50h9" fill="blue" stroke="red" marker-end="url(#m)"/>`))).toEqual([
      '#0000ff',
      '#ff0000',
      '#00ff00',
      '#ff0000',
    ]);
  });

  it('what is drawn through a marker knows the line', () => {
    const [shape] = drawMm(ARROW('') + LINE).shapes;
    expect(shape?.instances.map(({ localName }) => localName)).toEqual(['path']);
    expect(shape?.topLevel.localName).toBe('path');
  });
});
