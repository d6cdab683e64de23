import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { cutSheet } from '../../../src/cut/cut-sheet';
import { labelFor, labelText } from '../../../src/cut/marking/label';
import { drawable, strokesOfText, widthOfText } from '../../../src/cut/marking/letters';
import { check } from '../../../src/engine/index';
import { polygonOfBox } from '../../../src/geometry/base/ring';
import { intersection, regionContains } from '../../../src/geometry/boolean/index';

const sheetOf = (content: string) =>
  check(`<svg xmlns="http://www.w3.org/2000/svg" width="148mm" height="105mm" viewBox="0 0 148 105">${content}</svg>`)
    .sheets[0]!;

describe('letters', () => {
  it('are lines within their cell, all different', () => {
    const all = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789#-.,:/()&+?↑'];
    const drawings = all.map((letter) => JSON.stringify(strokesOfText(letter, { x: 0, y: 0 }, 7)));
    expect(new Set(drawings).size).toBe(all.length);
    for (const letter of all) {
      for (const { x, y } of strokesOfText(letter, { x: 0, y: 0 }, 7).flat()) {
        expect(x >= 0 && x <= 4 && y >= 0 && y <= 7, letter).toBe(true);
      }
    }
  });

  it('stand where they are put, in the size asked for', () => {
    const points = strokesOfText('HI', { x: 10, y: 20 }, 3.5).flat();
    expect(Math.max(...points.map(({ x }) => x)) - 10).toBeCloseTo(widthOfText('HI', 3.5) - 0.5, 9);
    expect([Math.min(...points.map(({ y }) => y)), Math.max(...points.map(({ y }) => y))]).toEqual([20, 23.5]);
  });

  it.each([
    ['Röhricht & Ufer', 'ROHRICHT & UFER'],
    ['straße_7', 'STRASSE?7'],
    ['鷺', '?'],
    ['constructor', 'CONSTRUCTOR'],
  ])('"%s" is written as "%s"', (text, written) => expect(drawable(text)).toBe(written));
});

describe('a label', () => {
  it('says which way is up, which sheet it is, its name and its paint', () => {
    const sheet = sheetOf('<g><title>Reeds</title><rect x="20" y="20" width="30" height="30" fill="#3b4a54"/></g>');
    expect(labelText(sheet, { number: 2, count: 5 })).toBe(
      '↑ 2 OF 5 STENCIL #3B4A54'.replace('STENCIL', drawable(sheet.layer.name)),
    );
    const cut = cutSheet(sheet, { number: 2, count: 5 }, { labels: true });
    expect(cut.pen.length).toBeGreaterThan(20);
    expect(cut.contours).toEqual(cutSheet(sheet, { number: 2, count: 5 }).contours);
  });

  it('lies on the frame piece, clear of openings by the width of a bridge, and smaller where there is less room', () => {
    const wide = sheetOf('<rect x="20" y="10" width="100" height="80"/>');
    const tight = sheetOf('<rect x="4" y="4" width="140" height="97"/>');
    const boxes = [wide, tight].map((sheet) => {
      const { box, strokes } = labelFor(sheet, '↑ 2 OF 5 REEDS', DEFAULT_CONFIG)!;
      const around = [
        polygonOfBox({ minX: box.minX - 0.79, minY: box.minY - 0.79, maxX: box.maxX + 0.79, maxY: box.maxY + 0.79 }),
      ];
      expect(intersection(around, sheet.openings)).toEqual([]);
      for (const point of strokes.flat()) expect(regionContains(sheet.material, point)).toBe(true);
      return box;
    });
    expect(boxes[1]!.maxY - boxes[1]!.minY).toBeLessThan(boxes[0]!.maxY - boxes[0]!.minY);
  });

  it('is never on a piece that falls out, and left out where there is no room', () => {
    const ring = '<path fill-rule="evenodd" d="M1 1H147V104H1Z M10 10H138V95H10Z"/>';
    const cut = cutSheet(sheetOf(ring), { number: 1, count: 1 }, { labels: true });
    expect(cut.pen).toEqual([]);
    expect(cut.notes).toEqual(['no room for a label; a margin would give it']);
  });
});
