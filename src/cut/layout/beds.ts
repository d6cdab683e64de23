/** Several sheets on one bed. Millimetres. */
import { MaxRectsPacker } from 'maxrects-packer/dist/maxrects-packer.mjs';
import { defined } from '../../base/defined';
import type { Matrix, Point } from '../../geometry/base/curve-types';
import { apply } from '../../geometry/base/matrix';
import { transformCurve } from '../../geometry/curve/index';
import type { CutSheet } from '../types';

export interface Bed {
  readonly width: number;
  readonly height: number;
  /** Between two sheets, and to the edge of the bed none. */
  readonly gap: number;
}

/** Where a sheet lies: its upper left corner, and whether it is turned by a quarter. */
export interface Berth {
  readonly sheet: number;
  readonly bed: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/** How many equal sheets lie in rows and columns: along one side floor((side + gap) / (own + gap)). */
export function equalOnBed(
  { width, height }: { width: number; height: number },
  bed: Bed,
): { upright: number; turned: number } {
  const along = (side: number, own: number) => Math.max(0, Math.floor((side + bed.gap + 1e-9) / (own + bed.gap)));
  return {
    upright: along(bed.width, width) * along(bed.height, height),
    turned: along(bed.width, height) * along(bed.height, width),
  };
}

/**
 * A place for each sheet, in their order where they are equal.
 * @returns undefined where one of them does not fit at all
 */
export function berthsFor(
  sheets: readonly { readonly width: number; readonly height: number }[],
  bed: Bed,
): Berth[] | undefined {
  const fits = (sheet: { width: number; height: number }) => Math.max(...Object.values(equalOnBed(sheet, bed))) > 0;
  const [first] = sheets;
  if (!first || !sheets.every(fits)) return undefined;
  const equal = sheets.every(({ width, height }) => width === first.width && height === first.height);
  return equal ? inRows(sheets.length, first, bed) : packed(sheets, bed);
}

function inRows(count: number, { width, height }: { width: number; height: number }, bed: Bed): Berth[] {
  const { upright, turned } = equalOnBed({ width, height }, bed);
  const isTurned = turned > upright;
  const [own, other] = isTurned ? [height, width] : [width, height];
  const columns = Math.floor((bed.width + bed.gap + 1e-9) / (own + bed.gap));
  const onOne = Math.max(upright, turned);
  return Array.from({ length: count }, (_, sheet) => {
    const place = sheet % onOne;
    return {
      sheet,
      bed: Math.floor(sheet / onOne),
      x: (place % columns) * (own + bed.gap),
      y: Math.floor(place / columns) * (other + bed.gap),
      turned: isTurned,
    };
  });
}

function packed(sheets: readonly { readonly width: number; readonly height: number }[], bed: Bed): Berth[] {
  const { gap } = bed;
  const packer = new MaxRectsPacker(bed.width + gap, bed.height + gap, 0, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: true,
  });
  packer.addArray(sheets.map(({ width, height }, data) => ({ width: width + gap, height: height + gap, data })));
  const berths = packer.bins.flatMap(({ rects }, number) =>
    rects.map(({ x, y, rot, data }) => ({ sheet: data, bed: number, x, y, turned: rot === true })),
  );
  return berths.sort((a, b) => a.sheet - b.sheet);
}

/** What is cut on each bed, sheet after sheet. */
export function sheetsOnBeds(sheets: readonly CutSheet[], berths: readonly Berth[], bed: Bed): CutSheet[] {
  const count = 1 + berths.reduce((most, berth) => Math.max(most, berth.bed), 0);
  return Array.from({ length: count }, (_, number) => {
    const own = berths
      .filter((berth) => berth.bed === number)
      .map((berth) => laid(defined(sheets[berth.sheet]), berth));
    const names = berths.filter((berth) => berth.bed === number).map((berth) => defined(sheets[berth.sheet]).name);
    return {
      number: number + 1,
      count,
      name: `bed ${names.join(' ')}`,
      paint: names.length === 1 ? defined(own[0]).paint : 'several paints',
      width: bed.width,
      height: bed.height,
      origin: { x: 0, y: 0 },
      contours: own.flatMap(({ contours }) => contours),
      pen: own.flatMap(({ pen }) => pen),
      travel: own.reduce((sum, { travel }) => sum + travel, 0),
      notes: own.flatMap(({ notes }) => notes),
    };
  });
}

function laid(sheet: CutSheet, { x, y, turned }: Berth): CutSheet {
  // A quarter turn clockwise on the screen takes the lower left corner to the upper left.
  const matrix: Matrix = turned
    ? { a: 0, b: 1, c: -1, d: 0, e: x + sheet.height, f: y }
    : { a: 1, b: 0, c: 0, d: 1, e: x, f: y };
  return transformed(sheet, matrix);
}

function transformed(sheet: CutSheet, matrix: Matrix): CutSheet {
  return {
    ...sheet,
    contours: sheet.contours.map((contour) => ({
      ...contour,
      curves: contour.curves.map((curve) => transformCurve(curve, matrix)),
    })),
    pen: sheet.pen.map((line) => line.map((point) => apply(matrix, point))),
  };
}

/** The sheet seen from behind, for glass that is painted there; its label is moved, and still reads from this side. */
export function mirrored(sheet: CutSheet): CutSheet {
  const matrix: Matrix = { a: -1, b: 0, c: 0, d: 1, e: sheet.width, f: 0 };
  const xs = sheet.pen.flat().map(({ x }) => x);
  const shift = xs.length > 0 ? sheet.width - Math.min(...xs) - Math.max(...xs) : 0;
  const moved = (point: Point): Point => ({ x: point.x + shift, y: point.y });
  return { ...transformed(sheet, matrix), pen: sheet.pen.map((line) => line.map(moved)) };
}
