import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bridge, planBridges } from '../../../../src/edits/plan/index';
import type { Point } from '../../../../src/geometry/base/curve-types';
import { distance } from '../../../../src/geometry/base/vector';
import type { Sheet } from '../../../../src/sheet/types';
import { sheetsOf } from '../../bridging';
import { svg } from '../../drawings';

const MIDDLE = { x: 30, y: 30 };
/** mm: the eye does not see that a bridge stands farther from its mirror image. */
const MIRRORED = 0.2;

function sheetOf(data: string, turn = 0): Sheet {
  const path = `<path fill-rule="evenodd" transform="rotate(${turn} 30 30)" d="${data}"/>`;
  return sheetsOf(svg(path))[0] as Sheet;
}

function planned(sheet: Sheet): readonly Bridge[] {
  const islands = sheet.pieces.filter(({ island }) => island);
  return planBridges(sheet, islands, { width: 0.8, alone: true }).bridges;
}

/** @param turn degrees from upright */
function mirrorAt(turn: number): (point: Point) => Point {
  const double = (2 * (turn + 90) * Math.PI) / 180;
  return ({ x, y }) => {
    const [u, v] = [x - MIDDLE.x, y - MIDDLE.y];
    return {
      x: MIDDLE.x + u * Math.cos(double) + v * Math.sin(double),
      y: MIDDLE.y + u * Math.sin(double) - v * Math.cos(double),
    };
  };
}

function isMirrored(bridges: readonly Bridge[], mirror: (point: Point) => Point): boolean {
  return bridges.every(({ from, to }) =>
    bridges.some((other) => distance(other.from, mirror(from)) < MIRRORED && distance(other.to, mirror(to)) < MIRRORED),
  );
}

const disc = (rx: number, ry: number) => `M${30 - rx} 30a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0z`;
const box = (x: number, y: number) => `M${30 - x} ${30 - y}H${30 + x}V${30 + y}H${30 - x}z`;
const HEART =
  'M30 52C6 34 6 8 19 8C25 8 30 13 30 18C30 13 35 8 41 8C54 8 54 34 30 52z' +
  'M30 48C50 32 50 11 41 11C36 11 32 17 30 23C28 17 24 11 19 11C10 11 10 32 30 48z';

describe('the bridges of an island that is mirrored', () => {
  it.each([
    ['a square frame', box(26, 26) + box(25, 25), 0, true],
    ['a rectangular frame', box(28, 18) + box(26, 16), 0, true],
    ['a frame turned by 30°', box(19, 19) + box(17, 17), 30, true],
    ['a long frame turned by 30°', box(22, 10) + box(20, 8), 30, true],
    ['a ring', disc(26, 26) + disc(24, 24), 0, true],
    ['an oval', disc(26, 16) + disc(23, 13), 0, true],
    ['a heart', HEART, 0, false],
    ['a heart turned by 30°', HEART, 30, false],
  ])('of %s are mirrored as it is', (_, data, turn, both) => {
    const bridges = planned(sheetOf(data, turn));
    expect(bridges.length).toBeGreaterThan(1);
    expect(isMirrored(bridges, mirrorAt(turn))).toBe(true);
    if (both) expect(isMirrored(bridges, mirrorAt(turn + 90))).toBe(true);
  });

  it('of a large frame stand in the middles of its four sides', () => {
    const text =
      '<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm" viewBox="0 0 90 90">' +
      '<path fill-rule="evenodd" d="M4 4 H86 V86 H4 Z M5.4 5.4 V84.6 H84.6 V5.4 Z"/></svg>';
    const places = planned(sheetsOf(text)[0] as Sheet).map(({ to: { x, y } }) => `${x.toFixed(1)} ${y.toFixed(1)}`);
    expect(places.sort()).toEqual(['4.0 45.0', '45.0 4.0', '45.0 86.0', '86.0 45.0']);
  });

  /** The map marker of maki (CC0-1.0), drawn by hand: its gap is of one width, so that the cheapest ways lie side by side. */
  const MARKER =
    'M5.486 11l-.365-.446c-.7-.858-3.544-4.739-3.544-6.638A3.726 3.726 0 0 1 5.132.026q.167-.008.333 0a3.726 3.726 0 0 1 ' +
    '3.888 3.557q.007.166 0 .331c0 1.6-1.806 4.268-3.38 6.415zM5.465.916a2.817 2.817 0 0 0-3 3c0 1.268 1.883 4.161 2.987 ' +
    '5.62c.935-1.282 3.011-4.217 3.011-5.62a2.817 2.817 0 0 0-3-3z';

  it('of a shape that is mirrored but for a hair are mirrored all round it', () => {
    const path = `<path fill-rule="evenodd" transform="translate(6 6) scale(9.0909)" d="${MARKER}"/>`;
    const text = `<svg xmlns="http://www.w3.org/2000/svg" width="112mm" height="112mm" viewBox="0 0 112 112">${path}</svg>`;
    const ends = planned(sheetsOf(text)[0] as Sheet).map(({ to }) => to);
    const image = ({ x, y }: Point) => ({ x: 2 * (6 + 9.0909 * 5.465) - x, y });
    expect(ends.length).toBeGreaterThan(2);
    for (const end of ends) expect(ends.some((other) => distance(other, image(end)) < 1)).toBe(true);
    expect(Math.max(...ends.map(({ y }) => y)) - Math.min(...ends.map(({ y }) => y))).toBeGreaterThan(40);
  });

  it('of a shape that is mirrored about no axis are the best spread ones', () => {
    const bridges = planned(sheetOf('M5 5H55V55H5zM8 8V52H30V40H52V8z'));
    expect(bridges.length).toBeGreaterThan(1);
  });
});

/** The right half of an island and of the gap round it, as radii at even angles from the top to the bottom. */
const halves = fc.record({
  radii: fc.array(fc.double({ min: 9, max: 17, noNaN: true }), { minLength: 4, maxLength: 9 }),
  gap: fc.double({ min: 1.5, max: 4, noNaN: true }),
  turn: fc.constantFrom(0, 90, 30, 57),
});

function outlineOf(radii: readonly number[], more: number): string {
  const all = [...radii, ...radii.slice(1, -1).reverse()];
  const points = all.map((radius, i) => {
    const angle = (2 * Math.PI * i) / all.length - Math.PI / 2;
    return `${30 + (radius + more) * Math.cos(angle)} ${30 + (radius + more) * Math.sin(angle)}`;
  });
  return `M${points.join('L')}z`;
}

describe('random islands that are mirrored', () => {
  it('have mirrored bridges, unless those would cost far more', () => {
    let [mirrored, all] = [0, 0];
    fc.assert(
      fc.property(halves, ({ radii, gap, turn }) => {
        const bridges = planned(sheetOf(outlineOf(radii, gap) + outlineOf(radii, 0), turn));
        all += 1;
        if (isMirrored(bridges, mirrorAt(turn))) mirrored += 1;
        expect(bridges.length).toBeGreaterThan(0);
      }),
      { numRuns: 100 },
    );
    expect(all).toBe(100);
    expect(mirrored).toBeGreaterThanOrEqual(95);
  });
});
