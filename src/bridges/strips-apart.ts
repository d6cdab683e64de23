/** Whether two convex strips have no point in common. */
import { crossFrom } from '../geometry/point';
import { cornerAt, type Strip } from './strip';

/** By separating axes: two convex quadrilaterals are apart when one has a side that the other lies wholly beyond. */
export function stripsApart(a: Strip, b: Strip): boolean {
  return hasSideBefore(a, b) || hasSideBefore(b, a);
}

function hasSideBefore(a: Strip, b: Strip): boolean {
  return a.corners.some((corner, index) => {
    const next = cornerAt(a, index + 1);
    return b.corners.every((other) => crossFrom(corner, next, other) < 0);
  });
}
