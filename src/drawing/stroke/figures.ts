/** Collects the closed figures of a stroke, maps them to sheet mm and makes them turn the positive way. */
import { checkpoint } from '../../base/checkpoint';
import type { Arc, Curve, Line, Point } from '../../geometry/base/curve-types';
import { IDENTITY } from '../../geometry/base/matrix';
import { transformCurve } from '../../geometry/curve/index';
import { reverseCurve } from '../../geometry/curve/transform';
import type { Span } from '../../text/text';
import type { Subpath } from '../types';
import type { Pen } from './pen';

/** Two sides that run the same way, `left` on the left of it (y down); each curve of one faces one of the other. */
export interface QuadStrip {
  readonly left: readonly Curve[];
  readonly right: readonly Curve[];
}

export class PolygonSink {
  readonly subpaths: Subpath[] = [];
  private readonly pen: Pen;

  constructor(pen: Pen) {
    this.pen = pen;
  }

  /** Corners in pen units, turning right (y down) all the way. */
  polygon(corners: readonly Point[], span: Span): void {
    this.figure(polyline([...corners, ...corners.slice(0, 1)]), false, span);
  }

  /** Closed chain in pen units; `negative` where it turns left (y down). */
  figure(curves: readonly Curve[], negative: boolean, span: Span): void {
    checkpoint(80 + 20 * curves.length);
    const { toMm, mirrored } = this.pen;
    if (curves.length < 2) return;
    const mapped = toMm === IDENTITY ? curves : curves.map((curve) => transformCurve(curve, toMm));
    const turned = negative === mirrored ? mapped : mapped.map(reverseCurve).reverse();
    this.subpaths.push({ curves: turned, spans: turned.map(() => span), closed: true });
  }

  disc(centre: Point, radius: number, span: Span): void {
    const [right, left] = [
      { x: centre.x + radius, y: centre.y },
      { x: centre.x - radius, y: centre.y },
    ];
    const halves = [arcAround(centre, right, left, radius, Math.PI), arcAround(centre, left, right, radius, Math.PI)];
    this.figure(halves, false, span);
  }

  /** The sector that the line from `centre` to `from` sweeps on its way to `to`; `angle` in radians, of either sign. */
  sector(centre: Point, from: Point, to: Point, radius: number, angle: number, span: Span): void {
    const arc = arcAround(centre, from, to, radius, angle);
    this.figure([...polyline([centre, from]), arc, ...polyline([to, centre])], angle < 0, span);
  }

  /** Between two arcs about one centre; `outer` and `inner` are their ends, `radii` theirs in that order. */
  ringSector(
    centre: Point,
    outer: readonly [Point, Point],
    inner: readonly [Point, Point],
    radii: readonly [number, number],
    sweep: number,
    span: Span,
  ): void {
    const curves: Curve[] = [
      arcAround(centre, outer[0], outer[1], radii[0], sweep),
      ...polyline([outer[1], inner[1]]),
      arcAround(centre, inner[1], inner[0], radii[1], -sweep),
      ...polyline([inner[0], outer[0]]),
    ];
    this.figure(curves, sweep < 0, span);
  }

  quadStrip({ left, right }: QuadStrip, span: Span): void {
    const [leftStart, rightStart] = [left[0]?.start, right[0]?.start];
    const [leftEnd, rightEnd] = [left.at(-1)?.end, right.at(-1)?.end];
    if (!leftStart || !rightStart || !leftEnd || !rightEnd) return;
    const back = [...right].reverse().map(reverseCurve);
    const across = polyline([leftEnd, rightEnd]);
    this.figure([...left, ...across, ...back, ...polyline([rightStart, leftStart])], false, span);
  }
}

/** Lines from point to point; those without length are left out. */
export function polyline(points: readonly Point[]): Line[] {
  const lines: Line[] = [];
  let start = points[0];
  for (const end of points) {
    if (start && (start.x !== end.x || start.y !== end.y)) lines.push({ kind: 'line', start, end });
    start = end;
  }
  return lines;
}

/** A circular arc by centre, ends, radius and angle (radians, of either sign). */
export function arcAround(centre: Point, start: Point, end: Point, radius: number, sweep: number): Arc {
  return {
    kind: 'arc',
    start,
    end,
    centre,
    axisU: { x: radius, y: 0 },
    axisV: { x: 0, y: radius },
    from: Math.atan2(start.y - centre.y, start.x - centre.x),
    sweep,
  };
}
