/** Tours whose best length is known: TSPLIB's, and those made of them by gathering places into clusters. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Point } from '../../../src/geometry/base/curve-types';

export function placesOf(name: 'berlin52' | 'eil51' | 'eil101'): Point[] {
  const text = readFileSync(path.join(import.meta.dirname, 'tsplib.json'), 'utf8');
  const numbers = (JSON.parse(text) as Record<string, number[]>)[name]!;
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({ x: numbers[2 * i]!, y: numbers[2 * i + 1]! }));
}

/** TSPLIB's EUC_2D: rounded to the nearest integer. */
export const rounded = (dx: number, dy: number): number => Math.floor(Math.hypot(dx, dy) + 0.5);

/**
 * Clusters as M. Fischetti, J. J. Salazar and P. Toth make them ("A branch-and-cut algorithm for the symmetric generalized
 * traveling salesman problem", Operations Research 45, 1997; from memory): ⌈n/5⌉ centres, the first the place farthest
 * from the first one, each next farthest from all before; places go to the nearest centre.
 */
export function clustersOf(places: readonly Point[]): Point[][] {
  const between = (a: Point, b: Point) => rounded(a.x - b.x, a.y - b.y);
  const farthest = (from: readonly Point[]): Point => {
    const away = (place: Point) => Math.min(...from.map((centre) => between(centre, place)));
    return places.reduce((best, place) => (away(place) > away(best) ? place : best));
  };
  const centres = [farthest([places[0]!])];
  while (centres.length < Math.ceil(places.length / 5)) centres.push(farthest(centres));
  const clusters: Point[][] = centres.map(() => []);
  for (const place of places) {
    const nearest = centres.reduce(
      (best, centre, i) => (between(centre, place) < between(centres[best]!, place) ? i : best),
      0,
    );
    clusters[nearest]!.push(place);
  }
  return clusters;
}

/** Contours as an artist might have drawn them, in no order: each lies in a cell of its own. Seeded. */
export function drawnContours(count: number, seed: number, width = 300, height = 200): Point[][] {
  let state = seed >>> 0;
  const random = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  const columns = Math.ceil(Math.sqrt((count * width) / height));
  const side = { x: width / columns, y: height / Math.ceil(count / columns) };
  const contours = Array.from({ length: count }, (_, i) => {
    const radius = (0.15 + 0.3 * random()) * Math.min(side.x, side.y);
    const centre = {
      x: ((i % columns) + 0.5) * side.x + (random() - 0.5) * (side.x - 2 * radius) * 0.9,
      y: (Math.floor(i / columns) + 0.5) * side.y + (random() - 0.5) * (side.y - 2 * radius) * 0.9,
    };
    const corners = 8 + Math.floor(random() * 24);
    return Array.from({ length: corners }, (_, k) => {
      const [angle, reach] = [(2 * Math.PI * k) / corners, radius * (0.6 + 0.4 * random())];
      return { x: centre.x + reach * Math.cos(angle), y: centre.y + reach * Math.sin(angle) };
    });
  });
  for (let i = contours.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    [contours[i], contours[j]] = [contours[j]!, contours[i]!];
  }
  return contours;
}
