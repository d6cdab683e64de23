/** Where markers stand along a path, and which way it runs there (SVG 2, "Rendering markers"). */
import { checkpoint } from '../../base/checkpoint';
import type { Point } from '../../geometry/base/curve-types';
import { tangentAt } from '../../geometry/curve/index';
import type { Subpath } from '../types';

export interface Vertex {
  readonly at: Point;
  /** Radians: half way between the directions of arriving and leaving. */
  readonly direction: number;
}

/** The vertices in order; a closed subpath's last is its first again. */
export function markerVertices(subpaths: readonly Subpath[]): readonly Vertex[] {
  return subpaths.flatMap(verticesOf);
}

function verticesOf({ curves, closed }: Subpath): readonly Vertex[] {
  const [first, last] = [curves[0], curves.at(-1)];
  if (!first || !last) return [];
  const leavingFirst = tangentAt(first, 0);
  const arrivingLast = tangentAt(last, 1);
  const vertices = [{ at: first.start, direction: bisector(closed ? arrivingLast : undefined, leavingFirst) }];
  for (let index = 0; index < curves.length; index += 1) {
    checkpoint(4);
    const [curve, next] = [curves[index], curves[index + 1]];
    if (!curve) continue;
    const leaving = next ? tangentAt(next, 0) : closed ? leavingFirst : undefined;
    vertices.push({ at: curve.end, direction: bisector(tangentAt(curve, 1), leaving) });
  }
  return vertices;
}

function bisector(arriving: Point | undefined, leaving: Point | undefined): number {
  const [a, b] = [arriving ?? leaving, leaving ?? arriving];
  if (!a || !b) return 0;
  const [from, to] = [Math.atan2(a.y, a.x), Math.atan2(b.y, b.x)];
  const turn = Math.atan2(Math.sin(to - from), Math.cos(to - from));
  return from + turn / 2;
}
