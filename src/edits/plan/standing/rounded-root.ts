/** Rounded roots of standing bridges: where a straight side goes over into its bank by an arc. Sheet mm. */
import type { Point } from '../../../geometry/base/curve-types';
import { add, cross, distance, dot, normalise, scale, subtract, vectorLength } from '../../../geometry/base/vector';
import type { SegmentIndex } from '../../../geometry/spatial/segment-index';
import { directionOf, endOf, nextOnSide, startOf } from './side-edges';

export interface RoundedRoot {
  /** Where the side would meet the bank if there were a corner. */
  readonly corner: Point;
  /** mm: how far beside the side's line the arc reaches. */
  readonly flare: number;
}

/**
 * An arc has at most so many widths of the bridge as its radius: half a width as it is made, and a third more where the ends
 * of a flattened arc are taken for its curvature.
 */
const WIDEST_ARC = 0.75;
/** rad: the least and the most that the edge turns from side to bank, and from one straight piece of the arc to the next. */
const TURN = { least: (15 * Math.PI) / 180, most: (165 * Math.PI) / 180, piece: (30 * Math.PI) / 180 };
/** rad: a side turns by less. */
const STRAIGHT = (0.5 * Math.PI) / 180;
const MAX_PIECES = 200;

/**
 * The rounded root that a side ends in; undefined where it ends in a corner.
 * @param edge one of the side's
 * @param away of length 1, square to the side, from the bridge into the opening
 * @param step the way along the edges
 * @param width mm: of the bridge
 */
export function roundedRoot(
  edges: SegmentIndex,
  edge: number,
  away: Point,
  step: Uint32Array,
  width: number,
): RoundedRoot | undefined {
  const forward = step === edges.next ? 1 : -1;
  const onward = (at: number): Point | undefined => normalise(scale(directionOf(edges, at), forward));
  const along = onward(edge);
  if (!along) return undefined;
  const sense = Math.sign(cross(along, away));
  const turnTo = (before: Point, after: Point): number => sense * Math.atan2(cross(before, after), dot(before, after));
  let [at, before, turned, entered] = [edge, along, 0, 0];
  for (let count = 0; count < MAX_PIECES; count += 1) {
    const next = nextOnSide(edges, at, step);
    const direction = onward(next);
    if (!direction) return undefined;
    const turn = turnTo(before, direction);
    if (turned === 0 && Math.abs(turn) < STRAIGHT) {
      [at, before] = [next, direction];
      continue;
    }
    if (turn > TURN.piece) return undefined;
    const after = onward(nextOnSide(edges, next, step));
    const leaves = after ? Math.max(0, turnTo(direction, after)) : 0;
    const curved = turn > 0 && vectorLength(directionOf(edges, next)) <= (WIDEST_ARC * width * (turn + leaves)) / 2;
    entered = turn;
    if (!curved) break;
    turned += turn;
    [at, before] = [next, direction];
  }
  const total = turned + Math.max(0, entered);
  if (turned === 0 || total < TURN.least || total > TURN.most) return undefined;
  return rootAt(edges, { arcEnd: at, bank: nextOnSide(edges, at, step), forward }, along, away, edge);
}

interface ArcEnd {
  readonly arcEnd: number;
  readonly bank: number;
  readonly forward: number;
}

function rootAt(
  edges: SegmentIndex,
  { arcEnd, bank, forward }: ArcEnd,
  along: Point,
  away: Point,
  edge: number,
): RoundedRoot | undefined {
  const towards = normalise(scale(directionOf(edges, bank), forward));
  const farEnd = forward > 0 ? endOf : startOf;
  const [onBank, onSide] = [farEnd(edges, arcEnd), farEnd(edges, edge)];
  const sine = towards ? cross(along, towards) : 0;
  if (!towards || Math.abs(sine) < 1e-3) return undefined;
  const reach = cross(subtract(onBank, onSide), towards) / sine;
  const corner = add(onSide, scale(along, reach));
  const flare = dot(subtract(onBank, onSide), away);
  return flare > 0 && reach > 0 && distance(corner, onBank) < 4 * flare ? { corner, flare } : undefined;
}
