/** Ends of bridges on parts that run out to a point. Sheet mm. */
import type { Point } from '../../geometry/base/curve-types';
import { SAME_FINDING } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import type { ThinPlace } from '../../sheet/thin-places';

/** Of a tip's reach: so near to where it is thick enough, a bridge that ends there does not hang by the thin part. */
const BASE = 0.9;

/** Whether either end of a bridge is on a tip. */
export function hangsByTip(
  { from, to }: { readonly from: Point; readonly to: Point },
  width: number,
  thin: readonly ThinPlace[],
): boolean {
  return isOnTip(from, width, thin) || isOnTip(to, width, thin);
}

/**
 * Whether a bridge that ends here would hang by material that is narrower than the least bridge: the tip's own, between the
 * bridge's side and where the tip is thick enough.
 * @param width mm: the bridge's
 */
function isOnTip(end: Point, width: number, thin: readonly ThinPlace[]): boolean {
  return thin.some((part) => {
    if (!part.end || part.kind !== 'tip') return false;
    const { minX, minY, maxX, maxY } = part.extent;
    const [right, down] = [end.x - minX, end.y - minY];
    if (right < -SAME_FINDING || down < -SAME_FINDING) return false;
    if (end.x > maxX + SAME_FINDING || end.y > maxY + SAME_FINDING) return false;
    return distance(end, part.end) + width / 2 < BASE * part.reach;
  });
}
