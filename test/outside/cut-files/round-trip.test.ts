/**
 * Cut files, read by programs of others: svgson and svgpath, @resvg/resvg-js, dxf-parser and dxf. `test/wide` reads three
 * hundred more, and PDF by poppler and DXF by ezdxf as well.
 */
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it as test } from 'vitest';
import { cutSheet } from '../../../src/cut/cut-sheet';
import { cutFile } from '../../../src/engine/index';
import { areaOf, perimeterOf } from '../../../src/geometry/boolean/index';
import { bowsOfContours, contoursOf, expectSame, worstBow } from './judge';
import { measure, readSvg, readWithDxf, readWithDxfParser, ringsOfPolylines } from './readers';
import { demoSheets, iconSheets, letterSheets } from './sheets';

const sheets = [...demoSheets(), ...letterSheets('a8&'), ...iconSheets('@mdi/svg/svg', 400, 14)];

describe.each(sheets)('$name', ({ sheet }) => {
  const cut = cutSheet(sheet, { number: 1, count: 2 });

  test('is cut along the edges of its material, each once', () => {
    const lengths = cut.contours.reduce((sum, { length }) => sum + length, 0);
    expect(Math.abs(lengths - perimeterOf(sheet.material))).toBeLessThan(1e-4 * lengths + 0.01);
    const area = contoursOf(cut).reduce((sum, each) => sum + each.area, 0);
    expect(Math.abs(area - areaOf(sheet.material))).toBeLessThan(1e-3 * lengths);
    expect(cut.contours.at(-1)?.kind).toBe('edge');
  });

  test('comes back from SVG', () => {
    const text = cutFile(cut, 'svg');
    const { rings, size, root } = readSvg(text);
    expectSame(measure(rings), contoursOf(cut), 'svgson');
    expect(size).toEqual([Number(cut.width.toFixed(6)), Number(cut.height.toFixed(6))]);
    expect(root.attributes).toMatchObject({ width: `${size[0]}mm`, height: `${size[1]}mm` });
    expect(root.children.every(({ name }) => name === 'path' || name === 'title')).toBe(true);
    expect(text).not.toMatch(/transform|style|class|<g\b/);
    // The renderer counts in single precision.
    const box = new Resvg(
      text.replace(/stroke="#ff0000" stroke-width="[^"]*"/g, '').replaceAll('fill="none"', 'fill="#000"'),
    ).getBBox()!;
    expect(box.width).toBeCloseTo(cut.width, 3);
    expect(box.height).toBeCloseTo(cut.height, 3);
  });

  test('comes back from DXF, new and old', () => {
    const wanted = bowsOfContours(cut);
    for (const version of ['AC1015', 'AC1009'] as const) {
      const text = cutFile(cut, 'dxf', version);
      const { units, polylines } = readWithDxfParser(text);
      expect(units).toBe(version === 'AC1015' ? 4 : undefined);
      for (const found of [polylines, readWithDxf(text)]) {
        expect(found.every(({ layer, closed }) => layer === 'CUT' && closed)).toBe(true);
        expectSame(measure(ringsOfPolylines(found, cut.height)), wanted, version);
      }
    }
    expect(worstBow(cut)).toBeLessThan(0.01 + 1e-6);
  });
});
