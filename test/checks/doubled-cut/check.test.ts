import { describe, expect, it } from 'vitest';
import { findingsOf, sheetOf } from '../stencils';

const doubled = (body: string, attributes = '') => findingsOf('doubled-cut', sheetOf(body, attributes));

const lines = (body: string) => `<g fill="none" stroke="#f00" stroke-width="0.1">${body}</g>`;

describe('doubled-cut', () => {
  it('finds the border of two neighbouring openings as what it is', () => {
    const [left, right] = [
      '<rect x="10" y="10" width="20" height="30"/>',
      '<rect x="30" y="15" width="20" height="20"/>',
    ];
    const found = doubled(left + right);
    expect(found).toMatchObject([{ text: right, severity: 'warning', measure: '20.00 mm', related: [left] }]);
    expect(found[0]?.message).toMatch(/^Two openings share a border of 20\.00 mm: .* no material between/);
    expect(found[0]?.detail).toContain('no material stands between them');
  });

  it('finds a shape that is drawn twice, in any writing', () => {
    const circle = '<circle cx="50" cy="50" r="20"/>';
    const asPath = '<path d="M50 30C38.954 30 30 38.954 30 50S38.954 70 50 70 70 61.046 70 50 61.046 30 50 30"/>';
    for (const other of [circle, asPath, '<path d="M30 50a20 20 0 0 0 40 0a20 20 0 0 0 -40 0z"/>']) {
      const [found, ...more] = doubled(circle + other);
      expect(more).toEqual([]);
      expect(Number.parseFloat(found?.measure ?? '')).toBeCloseTo(40 * Math.PI, 0);
      expect(found?.message).toMatch(/^Line on top of another for 125\.\d\d mm: it will be cut twice/);
    }
  });

  it('underlines the commands that run along the other line', () => {
    const found = doubled('<path d="M10 10H40V40H10Z"/><path d="M40 20 L60 20 L60 30 L40 30 Z"/>');
    expect(found).toMatchObject([{ text: 'Z', related: ['V40'] }]);
  });

  it('knows the line that nobody has written, which closes what is filled', () => {
    const bar = '<rect x="10" y="20" width="30" height="10"/>';
    expect(doubled(`${bar}<path d="M10 10H40V60H10"/>`)).toMatchObject([
      { measure: '10.00 mm' },
      { measure: '10.00 mm' },
    ]);
    expect(doubled(`${bar}<path d="M70 20H60V30H70"/>`)).toEqual([]);
    expect(doubled('<path d="M10 20V50"/>')).toEqual([]);
  });

  it('tells stretches under 2 mm as a hint, and several of a layer as one', () => {
    const pair = (y: number) =>
      `<rect x="10" y="${y}" width="20" height="1.5"/><rect x="30" y="${y}" width="20" height="1.5"/>`;
    const [one, ...rest] = doubled(pair(10));
    expect(rest).toEqual([]);
    expect(one).toMatchObject({ severity: 'hint', measure: '1.50 mm' });
    expect(one?.message).toMatch(/^Two openings share a border of 1\.50 mm/);
    const [all, ...more] = doubled(pair(10) + pair(20) + pair(30));
    expect(more).toEqual([]);
    expect(all).toMatchObject({ severity: 'hint', measure: '4.50 mm' });
    expect(all?.message).toMatch(/^3 short lines of up to 1\.50 mm cut twice, 4\.50 mm in all/);
    expect(all?.related).toHaveLength(3);
  });

  it('leaves out what lies outside the frame of the sheet', () => {
    const pair = (x: number) =>
      `<rect x="${x}" y="10" width="5" height="9"/><rect x="${x + 5}" y="10" width="5" height="9"/>`;
    expect(doubled(pair(120))).toEqual([]);
    expect(doubled(pair(92))).toHaveLength(1);
  });

  it('finds a slit, and an outline within the edge of another', () => {
    const [slit] = doubled('<path fill-rule="evenodd" d="M10 50V10H90V90H10V50H40V60H60V40H40V50Z"/>');
    expect(slit?.message).toMatch(/^Outline runs back along itself for 30\.00 mm/);
    const [edge] = doubled('<rect x="10" y="10" width="60" height="60"/><rect x="10" y="20" width="20" height="20"/>');
    expect(edge?.message).toMatch(/^Two lines on top of each other for 20\.00 mm/);
  });

  it('tells what cancels out, and what would part material', () => {
    const twice = 'M10 10H40V40H10Z';
    const [none] = doubled(`<path fill-rule="evenodd" d="${twice}${twice}"/>`);
    expect(none?.message).toMatch(/^Two lines cancel each other out for 120\.00 mm/);
    const silhouette =
      '<path fill-rule="evenodd" d="M0 0H50V100H0Z M10 20H40V40H10Z"/><rect x="50" width="50" height="100"/>';
    const [parted] = doubled(silhouette, 'data-tombolo-reading="sheet"');
    expect(parted?.message).toMatch(/^Two pieces of material share a border of 100\.00 mm: a cut where none should be/);
  });

  it('looks at the hairlines where only those are drawn', () => {
    const found = doubled(lines('<rect x="10" y="10" width="20" height="20"/><path d="M30 40V5"/>'));
    expect(found).toMatchObject([{ text: 'V5', measure: '20.00 mm' }]);
  });

  it('gives two findings for three copies', () => {
    expect(doubled('<rect id="r" x="9" y="9" width="9" height="9"/><use href="#r"/><use href="#r"/>')).toHaveLength(2);
  });

  it('lets be what is not cut twice', () => {
    expect(doubled('<rect x="10" y="10" width="20" height="20"/><rect x="30" y="30" width="20" height="20"/>')).toEqual(
      [],
    );
    expect(
      doubled('<rect x="10" y="10" width="20" height="20"/><rect x="30.1" y="10" width="20" height="20"/>'),
    ).toEqual([]);
    expect(doubled('<rect x="10" y="10" width="20" height="20"/><rect x="20" y="5" width="5" height="40"/>')).toEqual(
      [],
    );
    // Fill and stroke of one element are cut along the stroke's rim; two layers are two sheets.
    expect(doubled('<rect x="10" y="10" width="20" height="20" stroke="#000" stroke-width="2"/>')).toEqual([]);
    const layer = '<g><rect x="10" y="10" width="20" height="20"/></g>';
    expect(doubled(layer + layer)).toEqual([]);
  });
});
