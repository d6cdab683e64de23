import { describe, expect, it } from 'vitest';
import { cutSheet } from '../../../src/cut/cut-sheet';
import { berthsFor, equalOnBed, mirrored, sheetsOnBeds } from '../../../src/cut/layout/beds';
import { tilesAlong } from '../../../src/cut/layout/joints';
import { cutTiles, tilesOf } from '../../../src/cut/layout/tiles';
import { check } from '../../../src/engine/index';
import { areaOf, clipToBox, union } from '../../../src/geometry/boolean/index';
import { signedAreaOf } from '../../../src/geometry/curve/measure';

const sheetOf = (content: string, width = 420, height = 120) =>
  check(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${content}</svg>`,
  ).sheets[0]!;

describe('joints', () => {
  it('make as few tiles as reach across, with the overlap asked for', () => {
    for (const [length, longest, overlap, count] of [
      [100, 100, 10, 1],
      [101, 100, 10, 2],
      [190, 100, 10, 2],
      [191, 100, 10, 3],
      [1000, 190, 10, 6],
    ] as const) {
      const tiles = tilesAlong(length, longest, overlap, [])!;
      expect(tiles).toHaveLength(count);
      expect([tiles[0]!.from, tiles.at(-1)!.to]).toEqual([0, length]);
      tiles.forEach(({ from, to }, i) => {
        expect(to - from).toBeLessThanOrEqual(longest + 1e-9);
        if (i > 0) expect(tiles[i - 1]!.to - from).toBeCloseTo(overlap, 9);
      });
    }
  });

  it('are even where nothing is in the way, and elsewhere keep clear of it', () => {
    expect(tilesAlong(250, 200, 10, [])).toEqual([
      { from: 0, to: 130 },
      { from: 120, to: 250 },
    ]);
    const [first] = tilesAlong(250, 200, 10, [{ from: 100, to: 150, weight: 1 }])!;
    expect(first!.to <= 100 || first!.to - 10 >= 150).toBe(true);
    // Where it must be crossed, it is.
    expect(tilesAlong(390, 200, 10, [{ from: 0, to: 390, weight: 1 }])).toHaveLength(2);
    expect(tilesAlong(100, 10, 10, [])).toBeUndefined();
  });
});

describe('tiles', () => {
  // A row of openings; the web between the third and the fourth is a bridge, right in the middle.
  const content =
    '<rect x="20" y="30" width="60" height="60"/><rect x="100" y="30" width="60" height="60"/>' +
    '<rect x="170" y="30" width="39.4" height="60"/><rect x="210.6" y="30" width="60" height="60"/>' +
    '<rect x="300" y="30" width="60" height="60"/>';
  const sheet = sheetOf(content);
  const size = { width: 250, height: 200, overlap: 10 };

  it('cover the sheet and no more, and part no bridge', () => {
    const tiles = tilesOf(sheet, size)!;
    expect(tiles.map(({ row, column }) => [row, column])).toEqual([
      [1, 1],
      [1, 2],
    ]);
    expect(areaOf(union(tiles.map(({ box }) => clipToBox(sheet.material, box))))).toBeCloseTo(
      areaOf(sheet.material),
      6,
    );
    const [from, to] = [tiles[1]!.box.minX, tiles[0]!.box.maxX];
    expect(to - from).toBeCloseTo(10, 9);
    expect(to <= 209.4 || from >= 210.6).toBe(true);
  });

  it('leave what is marked to stay whole in one piece, where there is another place for the joint', () => {
    const eyes = (mark: string) =>
      sheetOf(
        `<g ${mark}><circle cx="110" cy="60" r="10"/><circle cx="142" cy="60" r="10"/></g>` +
          '<rect x="5" y="5" width="93" height="10"/><rect x="154" y="5" width="100" height="10"/>',
        260,
      );
    const joint = (mark: string) => {
      const [left, right] = tilesOf(eyes(mark), { width: 180, height: 200, overlap: 10 })!;
      return [right!.box.minX, left!.box.maxX] as const;
    };
    // Between the two circles there is no line at all, and right there they would be parted.
    const [between, to] = joint('');
    expect([between >= 120, to <= 132]).toEqual([true, true]);
    const [from, end] = joint('data-tombolo-whole=""');
    expect(end <= 100 || from >= 152).toBe(true);
    // Both a use and what it draws can carry it.
    const used = sheetOf(
      '<defs><circle id="c" r="20"/></defs><use href="#c" x="130" y="60" data-tombolo-whole="yes"/>',
      260,
    );
    const [left, right] = tilesOf(used, { width: 160, height: 200, overlap: 10 })!;
    expect(left!.box.maxX <= 110 || right!.box.minX >= 150).toBe(true);
  });

  it('are cut each by itself, with ticks where the neighbour’s edge lies', () => {
    const cuts = cutTiles(sheet, { number: 1, count: 1 }, size, {});
    expect(cuts.map(({ name }) => name.slice(-4))).toEqual([' 1-1', ' 1-2']);
    for (const cut of cuts) {
      expect(cut.width).toBeLessThanOrEqual(250);
      expect(cut.pen.length).toBeGreaterThanOrEqual(2);
    }
    const area = cuts.reduce(
      (sum, { contours }) =>
        sum + contours.flatMap(({ curves }) => curves).reduce((s, curve) => s + signedAreaOf(curve), 0),
      0,
    );
    const overlap = tilesOf(sheet, size)!;
    const doubled = areaOf(clipToBox(sheet.material, { ...overlap[0]!.box, minX: overlap[1]!.box.minX }));
    expect(area).toBeCloseTo(areaOf(sheet.material) + doubled, 3);
  });

  it('a sheet that fits is one', () => {
    expect(cutTiles(sheet, { number: 1, count: 1 }, { width: 500, height: 500, overlap: 10 }, {})).toEqual([
      cutSheet(sheet, { number: 1, count: 1 }),
    ]);
  });
});

describe('beds', () => {
  // Two a row, or turned: floor((side + gap) / (own + gap)) each way.
  it.each([
    [105, 148, 300, 200, 3, 2, 2],
    [148, 105, 600, 400, 3, 9, 10],
    [100, 100, 300, 200, 0, 6, 6],
    [400, 100, 300, 200, 3, 0, 0],
  ])(
    'sheets of %d × %d mm on %d × %d mm, %d mm apart: %d upright, %d turned',
    (width, height, w, h, gap, upright, turned) => {
      expect(equalOnBed({ width, height }, { width: w, height: h, gap })).toEqual({ upright, turned });
    },
  );

  const overlapping = (
    berths: readonly { x: number; y: number; turned: boolean; bed: number; sheet: number }[],
    sizes: readonly { width: number; height: number }[],
    gap: number,
  ) =>
    berths.flatMap((a, i) =>
      berths.slice(i + 1).filter((b) => {
        const [sa, sb] = [a, b].map(
          ({ sheet, turned }) =>
            (turned ? [sizes[sheet]!.height, sizes[sheet]!.width] : [sizes[sheet]!.width, sizes[sheet]!.height]) as [
              number,
              number,
            ],
        );
        return (
          a.bed === b.bed &&
          a.x < b.x + sb![0] + gap - 1e-9 &&
          b.x < a.x + sa![0] + gap - 1e-9 &&
          a.y < b.y + sb![1] + gap - 1e-9 &&
          b.y < a.y + sa![1] + gap - 1e-9
        );
      }),
    );

  it.each([
    ['equal', Array.from({ length: 7 }, () => ({ width: 105, height: 148 }))],
    ['others', [105, 80, 60, 140, 90, 30].map((width) => ({ width, height: 200 - width }))],
  ])('%s ones lie on the beds, apart, each once', (_, sizes) => {
    const bed = { width: 300, height: 200, gap: 3 };
    const berths = berthsFor(sizes, bed)!;
    expect(berths.map(({ sheet }) => sheet)).toEqual(sizes.map((_size, i) => i));
    expect(overlapping(berths, sizes, 3)).toEqual([]);
    for (const { x, y, turned, sheet } of berths) {
      const { width, height } = sizes[sheet]!;
      expect(x + (turned ? height : width)).toBeLessThanOrEqual(300 + 1e-9);
      expect(y + (turned ? width : height)).toBeLessThanOrEqual(200 + 1e-9);
    }
  });

  it('what is too large fits on none', () => {
    expect(berthsFor([{ width: 301, height: 201 }], { width: 300, height: 200, gap: 3 })).toBeUndefined();
  });

  it('a turned sheet is the same sheet', () => {
    const cut = cutSheet(sheetOf('<circle cx="20" cy="15" r="8"/>', 60, 40), { number: 1, count: 1 }, { labels: true });
    const bed = { width: 41, height: 61, gap: 0 };
    const [laid] = sheetsOnBeds([cut], berthsFor([cut], bed)!, bed);
    const centre = laid!.contours[0]!.curves[0]!;
    expect(centre.kind === 'arc' && [centre.centre.x, centre.centre.y].map((v) => Math.round(v * 1e6) / 1e6)).toEqual([
      25, 20,
    ]);
    expect(laid!.contours.map(({ length }) => length)).toEqual(cut.contours.map(({ length }) => length));
    const all = laid!.contours.flatMap(({ curves }) => curves.map(({ start }) => start));
    expect(Math.min(...all.flatMap(({ x, y }) => [x, y]))).toBeGreaterThanOrEqual(-1e-9);
  });
});

describe('mirrored', () => {
  const cut = cutSheet(sheetOf('<path d="M5 5H20L5 15Z"/>', 100, 60), { number: 1, count: 1 }, { labels: true });

  it('twice is the sheet itself', () => {
    const twice = mirrored(mirrored(cut));
    for (const [i, { curves }] of twice.contours.entries()) {
      curves.forEach(({ start }, k) => {
        expect(start.x).toBeCloseTo(cut.contours[i]!.curves[k]!.start.x, 9);
        expect(start.y).toBe(cut.contours[i]!.curves[k]!.start.y);
      });
    }
  });

  it('turns the cuts over, but not the letters', () => {
    const once = mirrored(cut);
    const area = ({ contours }: typeof cut) => contours[0]!.curves.reduce((sum, curve) => sum + signedAreaOf(curve), 0);
    expect(area(once)).toBeCloseTo(-area(cut), 9);
    const steps = ({ pen }: typeof cut) =>
      pen.map((line) => line.map(({ x, y }) => [x - line[0]!.x, y - line[0]!.y].map((v) => v.toFixed(6))));
    expect(steps(once)).toEqual(steps(cut));
  });
});
