/** Path data as rings, read by svgpath, with points by the formulas of the curves: finer than the engine flattens. */
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
  const read = svgpath(data).abs().unshort() as unknown as { segments: Command[] };
  for (const [command, ...n] of read.segments) {
    const points = Array.from({ length: n.length / 2 }, (_, i): Point => [n[2 * i] ?? 0, n[2 * i + 1] ?? 0]);
    if (command === 'M') {
      ring = [];
      rings.push(ring);
      add(points);
    } else if (command === 'H') add([[n[0] ?? 0, at[1]]]);
    else if (command === 'V') add([[at[0], n[0] ?? 0]]);
    else if (command === 'Z') at = ring[0] ?? at;
    else if (command === 'A') add(arcPoints(at, n, chords));
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

/**
 * Points of an elliptical arc, without its start, by the conversion from endpoints to centre (SVG 2, B.2.4). What svgpath
 * makes of arcs is off by 0.03 % of the radius, and otherwise for each part of a circle.
 */
function arcPoints([x1, y1]: Point, n: readonly number[], count: number): Point[] {
  const [rx0 = 0, ry0 = 0, degrees = 0, large = 0, sweep = 0, x2 = 0, y2 = 0] = n;
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const [dx, dy] = [(x1 - x2) / 2, (y1 - y2) / 2];
  const [x, y] = [cos * dx + sin * dy, cos * dy - sin * dx];
  const short = Math.max(1, Math.hypot(x / rx0, y / ry0));
  const [rx, ry] = [rx0 * short, ry0 * short];
  const along = (x / rx) ** 2 + (y / ry) ** 2;
  const off = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, 1 / along - 1));
  const [cx, cy] = [(off * rx * y) / ry, (-off * ry * x) / rx];
  const angleOf = (px: number, py: number) => Math.atan2((py - cy) / ry, (px - cx) / rx);
  const [from, to] = [angleOf(x, y), angleOf(-x, -y)];
  const turn = sweep ? (to - from + 4 * Math.PI) % (2 * Math.PI) : -((from - to + 4 * Math.PI) % (2 * Math.PI));
  return Array.from({ length: count }, (_, i): Point => {
    if (i === count - 1) return [x2, y2];
    const angle = from + (turn * (i + 1)) / count;
    const [px, py] = [cx + rx * Math.cos(angle), cy + ry * Math.sin(angle)];
    return [cos * px - sin * py + (x1 + x2) / 2, sin * px + cos * py + (y1 + y2) / 2];
  });
}
