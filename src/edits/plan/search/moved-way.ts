/** Bridges moved to where a mirror or a motion of the layer takes them. Sheet mm. */
import type { Point } from '../../../geometry/base/curve-types';
import { distance, interpolate, normalise, subtract } from '../../../geometry/base/vector';
import { firstHits } from '../../../geometry/spatial/raycast';
import type { ScoredCandidate } from '../score';
import { scoreImage } from '../ways/rooted';
import type { Assignment } from './layout';

/** mm: how far the ends of a bridge that was moved may lie from the edges that they meet there. */
export const MOVED = 0.6;

/**
 * The same bridge elsewhere, from edge to edge as they are there.
 * @param number of the island that it leaves there
 * @param within mm that its ends may be off
 */
export function movedWay(
  { options, around }: Pick<Assignment, 'options' | 'around'>,
  way: ScoredCandidate,
  number: number,
  move: (place: Point) => Point,
  within = MOVED,
): ScoredCandidate | undefined {
  const [from, to] = [move(way.from), move(way.to)];
  const direction = normalise(subtract(to, from));
  if (!direction) return undefined;
  const { back, ahead } = firstHits(around.pieces, interpolate(from, to, 0.5), direction, way.length + within);
  if (!back || !ahead || back.polygon !== number) return undefined;
  // What is rooted ends within the pieces, its image ends at their edges for now.
  const off = way.rooted ? way.length : within;
  if (distance(back.point, from) > off || distance(ahead.point, to) > off) return undefined;
  const length = back.distance + ahead.distance;
  const image = { from: back.point, to: ahead.point, length, target: ahead.polygon };
  return scoreImage(image, way, number, options.width, around);
}
