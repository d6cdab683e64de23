/** Whether two shapes cover the same, to the last digit. */
import type { Clip, Shape, Subpath } from '../../drawing/types';
import { checkpoint } from '../../geometry/base/checkpoint';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { defined } from '../../geometry/base/defined';

/** Whether two shapes cover the same, whatever their paint, and whether they are filled or stroked. */
export function sameArea(a: Shape, b: Shape): boolean {
  return (
    a.fillRule === b.fillRule && sameList(a.subpaths, b.subpaths, sameSubpath) && sameList(a.clips, b.clips, sameClip)
  );
}

/** Equal for shapes that cover the same, and for few others. */
export function areaKey({ fillRule, subpaths, clips }: Shape): string {
  let [curves, sum] = [0, 0];
  for (const { curves: chain } of subpaths) {
    for (const { end } of chain) {
      curves += 1;
      sum += curves * (end.x + Math.SQRT2 * end.y);
    }
  }
  const start = subpaths[0]?.curves[0]?.start;
  return [fillRule, clips.length, subpaths.length, curves, start?.x, start?.y, sum].join(' ');
}

function sameClip(a: Clip, b: Clip): boolean {
  return (
    a.box?.minX === b.box?.minX &&
    a.box?.minY === b.box?.minY &&
    a.box?.maxX === b.box?.maxX &&
    a.box?.maxY === b.box?.maxY &&
    sameList(
      a.parts,
      b.parts,
      (one, other) => one.fillRule === other.fillRule && sameList(one.subpaths, other.subpaths, sameSubpath),
    )
  );
}

function sameSubpath(a: Subpath, b: Subpath): boolean {
  checkpoint(a.curves.length);
  return a === b || (a.closed === b.closed && sameCurves(a.curves, b.curves));
}

/** To the last digit. */
export function sameCurves(a: readonly Curve[], b: readonly Curve[]): boolean {
  return sameList(a, b, sameCurve);
}

function sameCurve(a: Curve, b: Curve): boolean {
  if (!samePlace(a.start, b.start) || !samePlace(a.end, b.end)) return false;
  switch (a.kind) {
    case 'line':
      return b.kind === 'line';
    case 'quadratic':
      return b.kind === 'quadratic' && samePlace(a.control, b.control);
    case 'cubic':
      return b.kind === 'cubic' && samePlace(a.control1, b.control1) && samePlace(a.control2, b.control2);
    case 'arc':
      return (
        b.kind === 'arc' &&
        a.from === b.from &&
        a.sweep === b.sweep &&
        samePlace(a.centre, b.centre) &&
        samePlace(a.axisU, b.axisU) &&
        samePlace(a.axisV, b.axisV)
      );
  }
}

function samePlace(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

function sameList<T>(a: readonly T[], b: readonly T[], same: (one: T, other: T) => boolean): boolean {
  return a === b || (a.length === b.length && a.every((item, i) => same(item, defined(b[i]))));
}
