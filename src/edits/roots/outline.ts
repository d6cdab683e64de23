/** The outline of a strip that is drawn by itself, with its fillets, reaching into the material at both banks. Sheet mm. */
import type { Curve, Point } from '../../geometry/base/curve-types';
import type { Polygon } from '../../geometry/base/polygon-types';
import { FLATTENING, PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { add, cross, distance, dot, normalise, scale, subtract } from '../../geometry/base/vector';
import { flattenSubpath } from '../../geometry/curve/flatten';
import { cornerAt, polygonOf, type Strip } from '../strip/strip';
import { arcAbout } from './arc';
import type { RootFillet } from './fillet';

/** What a strip keeps free of paint, with its fillets. */
export function regionOfStrip(strip: Strip): Polygon {
  return strip.fillets ? { outer: flattenSubpath(outlineOf(strip), FLATTENING), holes: [] } : polygonOf(strip);
}

/** Its curves one after the other; the last ends where the first starts. */
export function outlineOf(strip: Strip): Curve[] {
  const start = cornerAt(strip, 0);
  const sides = [0, 2].flatMap((side) => sideOf(strip, side));
  const curves: Curve[] = [];
  let pen = start;
  for (const part of [...sides, start]) {
    if ('kind' in part) curves.push(part);
    else curves.push({ kind: 'line', start: pen, end: part });
    pen = 'kind' in part ? part.end : part;
  }
  return curves.filter((curve) => distance(curve.start, curve.end) > 0);
}

/** From one corner of a strip to the next: places that lines lead to, and arcs. */
function sideOf(strip: Strip, side: number): (Point | Curve)[] {
  const [from, to] = [cornerAt(strip, side), cornerAt(strip, side + 1)];
  const along = normalise(subtract(to, from)) ?? { x: 1, y: 0 };
  const own = (strip.fillets ?? []).filter(({ corner }) => isOnLine(from, along, corner));
  const half = distance(from, to) / 2;
  const atStart = own.find(({ corner }) => dot(subtract(corner, from), along) < half);
  const atEnd = own.find((fillet) => fillet !== atStart);
  const [first, last] = [rootOf(atStart, from), rootOf(atEnd, to)];
  return [
    from,
    ...(first
      ? [first.within, first.onBank, arcAbout(first.centre, first.radius, first.onBank, first.onSide, false)]
      : []),
    ...(last ? [last.onSide, arcAbout(last.centre, last.radius, last.onSide, last.onBank, false), last.within] : []),
    to,
  ];
}

/** Far below the distance of a strip's sides. */
function isOnLine(from: Point, along: Point, place: Point): boolean {
  return Math.abs(cross(along, subtract(place, from))) < PLAINLY_BESIDE / 10;
}

/**
 * A fillet, and the place within the material that its outline leads to.
 * @param end of the strip's side, within the material
 * @returns undefined where the bank bends away from the straight line there
 */
function rootOf(fillet: RootFillet | undefined, end: Point): (RootFillet & { readonly within: Point }) | undefined {
  if (!fillet) return undefined;
  const { corner, bank, onBank } = fillet;
  const out = subtract(end, corner);
  const reach = Math.min(1, PLAINLY_BESIDE / Math.hypot(out.x, out.y));
  const within = add(onBank, scale(out, reach));
  const straight = subtract(within, end);
  const towards = Math.sign(cross(straight, subtract(corner, end)));
  const isCovered = bank.every((point) => towards * cross(straight, subtract(point, end)) > 0);
  return isCovered ? { ...fillet, within } : undefined;
}
