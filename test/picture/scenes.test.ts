import { describe, expect, it, test } from 'vitest';
import { measureLines } from '../../src/picture/lettering';
import { printScene } from '../../src/picture/print-scene';
import type { PictureStack, Scene } from '../../src/picture/scene';
import { pieceLetter, sheetScene } from '../../src/picture/sheet-scene';
import { allSheetsScene } from '../../src/picture/sheets-scene';

const island = { outline: 'M2 2L4 2L4 4Z', area: 4, label: { x: 3, y: 3 } };
const layer = (name: string) => ({ name, paint: '#336699', openings: 'M1 1L9 1L9 9Z', islands: [island] });

/** Sheets of 100 by 50 mm. */
const stack = (count: number): PictureStack => ({
  sheet: { minX: 0, minY: 0, maxX: 100, maxY: 50 },
  layers: Array.from({ length: count }, (_, index) => layer(`layer ${index + 1}`)),
});

const places = ({ sceneLayers: plates }: Scene) => plates.map(({ place: { e, f } }) => ({ x: e, y: f }));
const columns = (look: Scene) => new Set(places(look).map(({ x }) => x)).size;

describe('all sheets', () => {
  it('lie in as many columns as the window has room for', () => {
    // Of six sheets twice as wide as high: one row in a very wide window, one column in a high one.
    expect(columns(allSheetsScene(stack(6), { aspect: 20 }))).toBe(6);
    expect(columns(allSheetsScene(stack(6), { aspect: 0.3 }))).toBe(1);
    expect(columns(allSheetsScene(stack(6), { aspect: 1.3 }))).toBe(2);
    expect(columns(allSheetsScene(stack(1), { aspect: 20 }))).toBe(1);
    expect(allSheetsScene(stack(0)).sceneLayers).toEqual([]);
  });

  it('keep clear of each other, and all of them are within the box', () => {
    const look = allSheetsScene(stack(5), { aspect: 1.5 });
    const corners = places(look);
    for (const [index, a] of corners.entries()) {
      for (const b of corners.slice(index + 1)) {
        expect(Math.abs(a.x - b.x) >= 100 || Math.abs(a.y - b.y) >= 50).toBe(true);
      }
      expect(a.x + 100).toBeLessThanOrEqual(look.box.maxX);
      expect(a.y + 50).toBeLessThanOrEqual(look.box.maxY);
    }
  });

  it('a step apart: the first lies undermost, in register at no step', () => {
    const look = allSheetsScene(stack(3), { apart: 0.25 });
    const [first, second, third] = places(look);
    expect(first).toEqual({ x: 0, y: 0 });
    expect(third).toEqual({ x: 2 * second!.x, y: 2 * second!.y });
    expect(look.sceneLayers.map(({ layer: index }) => index)).toEqual([0, 1, 2]);
    expect(new Set(places(allSheetsScene(stack(3), { apart: 0 })).map(({ x, y }) => `${x} ${y}`)).size).toBe(1);
  });

  it('those that are switched off leave no room', () => {
    const look = allSheetsScene(stack(3), { aspect: 20, isShown: (index) => index !== 1 });
    expect(look.sceneLayers.map(({ layer: index }) => index)).toEqual([0, 2]);
    expect(look.box.maxX).toBe(allSheetsScene(stack(2), { aspect: 20 }).box.maxX);
  });
});

describe('one sheet', () => {
  it('has its islands out of their places by the share of their size, lettered after the frame', () => {
    const labelled = { ...stack(1), layers: [{ ...layer('sun'), label: { x: 50, y: 40 } }] };
    const [plate] = sheetScene(labelled, 0).sceneLayers;
    const fallen = plate?.parts.find(({ role }) => role === 'fallen');
    expect(fallen?.fall).toEqual({ x: expect.closeTo(0.12, 9), y: expect.closeTo(0.28, 9) });
    expect(plate?.parts.find(({ role }) => role === 'gone')?.outline).toBe(island.outline);
    expect(plate?.annotations).toEqual([
      { kind: 'letter', at: { x: 50, y: 40 }, text: 'a' },
      { kind: 'letter', at: { x: expect.closeTo(3.12, 9), y: expect.closeTo(3.28, 9) }, text: 'b' },
    ]);
  });

  it('goes on after z', () => expect([0, 25, 26, 27, 52].map(pieceLetter)).toEqual(['a', 'z', 'aa', 'ab', 'ba']));

  it('a piece with more than a third of the sheet is hatched along its edge only, in every picture', () => {
    const large = { ...island, area: 0.4 * 100 * 80 };
    const one = { ...stack(1), layers: [{ ...layer('sun'), islands: [island, large] }] };
    const scenes = [sheetScene(one, 0), allSheetsScene(one), printScene(one, { marksIslands: true })];
    for (const { kind, sceneLayers } of scenes) {
      const parts = sceneLayers.flatMap((each) => each.parts).filter(({ hatch }) => hatch !== undefined);
      expect(
        parts.map(({ rim }) => rim !== undefined),
        kind,
      ).toEqual([false, true]);
    }
  });

  it('cut lines are drawn in every picture', () => {
    const one = { ...stack(1), layers: [{ ...layer('sun'), cutLines: 'M0 0L5 5' }] };
    for (const scene of [sheetScene(one, 0), allSheetsScene(one), printScene(one)]) {
      const [line] = scene.sceneLayers.flatMap(({ parts }) => parts.filter(({ role }) => role === 'cut-line'));
      expect(line?.outline, scene.kind).toBe('M0 0L5 5');
    }
  });

  it('neighbouring islands have hatches of different slant', () => {
    const three = { ...stack(1), layers: [{ ...layer('sun'), islands: [island, island, island] }] };
    const slants = sheetScene(three, 0).sceneLayers[0]?.parts.flatMap(({ hatch }) => hatch ?? []);
    expect(new Set(slants).size).toBe(3);
  });

  it('a layer that is not there gives an empty picture', () => expect(sheetScene(stack(1), 4).sceneLayers).toEqual([]));
});

test('the print leaves out what is switched off, and lays bare ground over all paint', () => {
  const look = printScene(stack(3), { isShown: (index) => index !== 1, bare: 'M0 0L1 0L1 1Z' });
  expect(look.sceneLayers.map(({ layer: index, parts }) => [index, ...parts.map(({ role }) => role)])).toEqual([
    [undefined, 'ground'],
    [0, 'paint'],
    [2, 'paint'],
    [undefined, 'bare'],
  ]);
});

describe('the measure of a narrow place', () => {
  it('stands at its right end, whichever way round it is given', () => {
    const there = measureLines({ x: 0, y: 0 }, { x: 1, y: 0 }, 2);
    expect(measureLines({ x: 1, y: 0 }, { x: 0, y: 0 }, 2)).toEqual(there);
    expect(there.label).toEqual({ x: expect.closeTo(1 + 1.95 * 2, 9), y: 0 });
  });

  it('arrows touch both ends from outside', () => {
    const { lines } = measureLines({ x: 0, y: 0 }, { x: 1, y: 0 }, 2);
    const tips = [...lines.matchAll(/M([-\d.]+) [-\d.]+L([-\d.]+) 0L/g)].map(([, from, tip]) => [
      Number(from),
      Number(tip),
    ]);
    expect(tips).toEqual([
      [-1, 0],
      [2, 1],
    ]);
  });

  it('two points in one place give no odd numbers', () => {
    expect(measureLines({ x: 3, y: 3 }, { x: 3, y: 3 }, 2).lines).not.toMatch(/NaN|Infinity/);
  });
});
