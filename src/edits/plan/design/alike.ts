/** Islands that are equal with the gaps about them: repeats, `use`, the same letters. Sheet mm. */
import { defined } from '../../../base/defined';
import type { Matrix } from '../../../geometry/base/curve-types';
import { apply, IDENTITY } from '../../../geometry/base/matrix';
import type { SegmentIndex } from '../../../geometry/spatial/segment-index';
import { comesToLieOn, type IslandGap, mayBeEqual } from './island-gap';
import type { RingShape } from './ring-shape';
import { alikeWithin } from './tolerance';
import type { LikeIsland, Likeness } from './types';

/** A moment that is smaller says nothing of how a shape lies. */
export const LEAST_MOMENT = 0.03;

/** So many classes of about one size are kept apart before an island is compared with no more of them. */
const MAX_CLASSES = 24;

export function likenessesOf(edges: SegmentIndex, islands: readonly IslandGap[]): Likeness[] {
  const classes: { readonly first: IslandGap; readonly members: LikeIsland[] }[] = [];
  let open: typeof classes = [];
  for (const island of [...islands].sort((a, b) => a.area - b.area || a.piece - b.piece)) {
    const tolerance = toleranceFor(island);
    open = open.filter(({ first }) => island.area - first.area <= tolerance * island.shape.length);
    const near = open.filter(({ first }) => mayBeEqual(first, island, tolerance)).slice(-MAX_CLASSES);
    const found = near.find(({ first, members }) => {
      const motion = motionBetween(edges, first, island, tolerance);
      if (motion) members.push({ piece: island.piece, motion });
      return motion !== undefined;
    });
    if (found) continue;
    const single = { first: island, members: [{ piece: island.piece, motion: IDENTITY }] };
    classes.push(single);
    open.push(single);
  }
  return classes.filter(({ members }) => members.length > 1).map(({ members }) => ({ members }));
}

function toleranceFor({ shape }: IslandGap): number {
  return alikeWithin(2 * shape.radius);
}

/** The motion that lays one island with its gap on another; a shift alone where that does it. */
function motionBetween(edges: SegmentIndex, from: IslandGap, to: IslandGap, tolerance: number): Matrix | undefined {
  return turnsBetween(from.shape, to.shape)
    .map((angle) => motionAbout(from.shape, to.shape, angle))
    .find((motion) => comesToLieOn(edges, from, to, (point) => apply(motion, point), tolerance));
}

/** Angles in radians by which one shape may be turned against another. */
function turnsBetween(a: RingShape, b: RingShape): number[] {
  const order = a.moments.findIndex(({ size }, k) => size > LEAST_MOMENT && defined(b.moments[k]).size > LEAST_MOMENT);
  if (order < 0) return [0];
  const k = order + 1;
  const turn = (defined(b.moments[order]).angle - defined(a.moments[order]).angle) / k;
  return [0, ...Array.from({ length: k }, (_, i) => turn + (2 * Math.PI * i) / k)];
}

function motionAbout({ middle: from }: RingShape, { middle: to }: RingShape, angle: number): Matrix {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    a: cos,
    b: sin,
    c: -sin,
    d: cos,
    e: to.x - cos * from.x + sin * from.y,
    f: to.y - sin * from.x - cos * from.y,
  };
}
