/** Path data as rings, by svgpath and the formulas of Bézier curves: far finer than the engine flattens. */
import svgpath from 'svgpath';
import type { Point, Rings } from './clipper';

type Command = [string, ...number[]];

/**
 * @param scale mm for each user unit
 * @param chords for each curve: n of a quarter circle lie within 0.31 / n² of its radius
 */
export function ringsOfPath(data: string, scale: number, chords: number): Rings {
  const rings: Point[][] = [];
  let ring: Point[] = [];
  let at: Point = [0, 0];
  const add = (points: readonly Point[]): void => {
    ring.push(...points);
    at = points.at(-1) ?? at;
  };
  const read = svgpath(data).abs().unshort().unarc() as unknown as { segments: Command[] };
  for (const [command, ...n] of read.segments) {
    const points = Array.from({ length: n.length / 2 }, (_, i): Point => [n[2 * i] ?? 0, n[2 * i + 1] ?? 0]);
    if (command === 'M') {
      ring = [];
      rings.push(ring);
      add(points);
    } else if (command === 'H') add([[n[0] ?? 0, at[1]]]);
    else if (command === 'V') add([[at[0], n[0] ?? 0]]);
    else if (command === 'Z') at = ring[0] ?? at;
    else if (command === 'L') add(points);
    else add(chordsOf([at, ...points], chords));
  }
  return rings.map((each) => each.map(([x, y]): Point => [scale * x, scale * y]));
}

/** By de Casteljau, without the start. */
function chordsOf(controls: readonly Point[], count: number): Point[] {
  return Array.from({ length: count }, (_, i) => {
    const t = (i + 1) / count;
    let points = controls;
    while (points.length > 1) {
      points = points.slice(1).map(([x, y], k): Point => {
        const [fromX, fromY] = points[k] ?? [0, 0];
        return [fromX + t * (x - fromX), fromY + t * (y - fromY)];
      });
    }
    return points[0] ?? [0, 0];
  });
}
