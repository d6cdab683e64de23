/** Whether two convex strips have no point in common. */
import { crossFrom } from '../../geometry/base/vector';
import { cornerAt, type Strip } from './strip';

/** By separating axes: two convex quadrilaterals are apart when one has a side that the other lies wholly beyond. */
export function areStripsApart(a: Strip, b: Strip): boolean {
  return areFarApart(a, b) || hasSideBefore(a, b) || hasSideBefore(b, a);
}

/** Whether circles round both do not meet: cheap, and true for most. */
function areFarApart(a: Strip, b: Strip): boolean {
  const [p, q, r, s] = [a.corners[0], a.corners[2], b.corners[0], b.corners[2]];
  const between = Math.hypot((p.x + q.x - r.x - s.x) / 2, (p.y + q.y - r.y - s.y) / 2);
  return between > (Math.hypot(p.x - q.x, p.y - q.y) + Math.hypot(r.x - s.x, r.y - s.y)) / 2;
}

function hasSideBefore(a: Strip, b: Strip): boolean {
  return a.corners.some((corner, index) => {
    const next = cornerAt(a, index + 1);
    return b.corners.every((other) => crossFrom(corner, next, other) < 0);
  });
}
