/** Puts the numbers of the findings beside their places so that they hide neither the places nor each other. */
import type { Point } from '../../geometry/base/curve-types';

/** Pixels from a place to the middle of its label, and between the middles of two labels. */
const REACH = 24;
const ROOM = 21;

const directions = [-45, -135, 45, 135, -90, 90, 0, 180].map((degrees) => {
  const angle = (degrees * Math.PI) / 180;
  return { x: Math.cos(angle), y: Math.sin(angle) };
});

/**
 * @param places in window pixels; undefined ones get no label
 * @returns the middle of each label, in the same order. The first free place around the point is taken, nearest
 * first; where everything is taken, the first direction.
 */
export function placeLabels(places: readonly (Point | undefined)[]): (Point | undefined)[] {
  const taken = new Map<string, Point[]>();
  const free = (spot: Point) => !neighbours(taken, spot).some((other) => distance(other, spot) < ROOM);
  const take = (spot: Point) => {
    const key = cellKey(cell(spot.x), cell(spot.y));
    taken.set(key, [...(taken.get(key) ?? []), spot]);
  };
  for (const place of places) if (place) take(place);
  return places.map((place) => {
    if (!place) return undefined;
    const spots = [REACH, REACH * 1.8, REACH * 2.6].flatMap((reach) =>
      directions.map(({ x, y }) => ({ x: place.x + x * reach, y: place.y + y * reach })),
    );
    const spot = spots.find(free) ?? { x: place.x + REACH, y: place.y - REACH };
    take(spot);
    return spot;
  });
}

const cell = (value: number): number => Math.floor(value / ROOM);
const cellKey = (column: number, row: number): string => `${column},${row}`;
const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

function neighbours(taken: ReadonlyMap<string, readonly Point[]>, { x, y }: Point): Point[] {
  const found: Point[] = [];
  for (let column = cell(x) - 1; column <= cell(x) + 1; column += 1) {
    for (let row = cell(y) - 1; row <= cell(y) + 1; row += 1) found.push(...(taken.get(cellKey(column, row)) ?? []));
  }
  return found;
}
