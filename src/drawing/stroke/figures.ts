/** Collects the closed figures of a stroke, maps them to sheet mm and makes them turn the positive way. */
import type { Arc, Curve, Line, Point } from '../../geometry/curve';
import { transformCurve } from '../../geometry/curves';
import { apply, IDENTITY } from '../../geometry/matrix';
import { reverseCurve } from '../../geometry/transform-curve';
import type { Span } from '../../text';
import type { Subpath } from '../drawing';
import type { Pen } from './pen';

export class FigureSink {
  readonly subpaths: Subpath[] = [];
  private readonly pen: Pen;

  constructor(pen: Pen) {
    this.pen = pen;
  }

  /** Corners in pen units, turning right (y down) all the way. */
  polygon(corners: readonly Point[], span: Span): void {
    const { toMm, mirrored } = this.pen;
    const points = toMm === IDENTITY ? corners : corners.map((corner) => apply(toMm, corner));
    const ordered = mirrored ? [...points].reverse() : points;
    const curves: Curve[] = [];
    let start = ordered[ordered.length - 1];
    for (const end of ordered) {
      if (start && (start.x !== end.x || start.y !== end.y)) curves.push({ kind: 'line', start, end });
      start = end;
    }
    this.add(curves, span);
  }

  /** The sector that the line from `centre` to `from` sweeps on its way to `to`; `angle` in radians, of either sign. */
  wedge(centre: Point, from: Point, to: Point, radius: number, angle: number, span: Span): void {
    const arc = arcAbout(centre, from, to, radius, angle);
    const curves: Curve[] = [line(centre, from), arc, line(to, centre)];
    this.addTurned(curves, angle < 0, span);
  }

  disc(centre: Point, radius: number, span: Span): void {
    const [right, left] = [{ x: centre.x + radius, y: centre.y }, { x: centre.x - radius, y: centre.y }];
    const halves = [
      arcAbout(centre, right, left, radius, Math.PI), arcAbout(centre, left, right, radius, Math.PI),
    ];
    this.addTurned(halves, false, span);
  }

  /** Between two arcs about one centre; `outer` and `inner` are their ends, `radii` theirs in that order. */
  ringSector(
    centre: Point, outer: readonly [Point, Point], inner: readonly [Point, Point], radii: readonly [number, number],
    sweep: number, span: Span,
  ): void {
    const curves: Curve[] = [
      arcAbout(centre, outer[0], outer[1], radii[0], sweep),
      line(outer[1], inner[1]),
      arcAbout(centre, inner[1], inner[0], radii[1], -sweep),
      line(inner[0], outer[0]),
    ];
    this.addTurned(curves, sweep < 0, span);
  }

  /** Between two sides that run the same way, `left` on the left of it; each piece of them faces its like. */
  strip(left: readonly Curve[], right: readonly Curve[], span: Span): void {
    const [leftStart, rightStart] = [left[0]?.start, right[0]?.start];
    const [leftEnd, rightEnd] = [left.at(-1)?.end, right.at(-1)?.end];
    if (!leftStart || !rightStart || !leftEnd || !rightEnd) return;
    const back = [...right].reverse().map(reverseCurve);
    this.addTurned([...left, line(leftEnd, rightEnd), ...back, line(rightStart, leftStart)], false, span);
  }

  private addTurned(curves: readonly Curve[], negative: boolean, span: Span): void {
    const { toMm, mirrored } = this.pen;
    const mapped = toMm === IDENTITY ? curves : curves.map((curve) => transformCurve(curve, toMm));
    this.add(negative === mirrored ? mapped : mapped.map(reverseCurve).reverse(), span);
  }

  private add(curves: readonly Curve[], span: Span): void {
    if (curves.length < 2) return;
    this.subpaths.push({ curves, spans: curves.map(() => span), closed: true });
  }
}

function line(start: Point, end: Point): Line {
  return { kind: 'line', start, end };
}

function arcAbout(centre: Point, start: Point, end: Point, radius: number, sweep: number): Arc {
  return {
    kind: 'arc', start, end, centre, axisU: { x: radius, y: 0 }, axisV: { x: 0, y: radius },
    from: Math.atan2(start.y - centre.y, start.x - centre.x), sweep,
  };
}
