/** Elliptical arcs as path data gives them (two ends, radii, rotation, flags), turned into centre form. */
import type { Arc, Line, Point } from '../../geometry/base/curve-types';

export interface EndpointArc {
  readonly start: Point;
  readonly end: Point;
  readonly radiusX: number;
  readonly radiusY: number;
  /** Degrees, from the x axis to the ellipse's first axis. */
  readonly rotation: number;
  readonly large: boolean;
  readonly sweep: boolean;
}

/**
 * SVG 2, implementation notes "Conversion from endpoint to center parameterization" and "Correction of out-of-range
 * radii": signs are dropped, radii that cannot reach are enlarged, a zero radius gives a line, equal ends give nothing.
 */
export function arcFromEndpoints(arc: EndpointArc): Arc | Line | undefined {
  const { start, end, large, sweep } = arc;
  if (start.x === end.x && start.y === end.y) return undefined;
  const radiusX = Math.abs(arc.radiusX);
  const radiusY = Math.abs(arc.radiusY);
  if (radiusX === 0 || radiusY === 0) return { kind: 'line', start, end };
  const cosine = Math.cos((arc.rotation * Math.PI) / 180);
  const sine = Math.sin((arc.rotation * Math.PI) / 180);
  const halfX = (start.x - end.x) / 2;
  const halfY = (start.y - end.y) / 2;
  // The half chord on the unit circle that the ellipse is the image of.
  const unitX = (cosine * halfX + sine * halfY) / radiusX;
  const unitY = (cosine * halfY - sine * halfX) / radiusY;
  const reach = unitX * unitX + unitY * unitY;
  const growth = reach > 1 ? Math.sqrt(reach) : 1;
  const distance = reach > 1 ? 0 : Math.sqrt(1 / reach - 1) * (large === sweep ? -1 : 1);
  const centreX = distance * unitY;
  const centreY = -distance * unitX;
  const from = Math.atan2(unitY / growth - centreY, unitX / growth - centreX);
  const to = Math.atan2(-unitY / growth - centreY, -unitX / growth - centreX);
  const axisU = { x: growth * radiusX * cosine, y: growth * radiusX * sine };
  const axisV = { x: -growth * radiusY * sine, y: growth * radiusY * cosine };
  const centre = {
    x: (start.x + end.x) / 2 + axisU.x * centreX + axisV.x * centreY,
    y: (start.y + end.y) / 2 + axisU.y * centreX + axisV.y * centreY,
  };
  return { kind: 'arc', start, end, centre, axisU, axisV, from, sweep: sweepBetween(from, to, sweep) };
}

function sweepBetween(from: number, to: number, positive: boolean): number {
  const turn = to - from;
  if (positive) return turn > 0 ? turn : turn + 2 * Math.PI;
  return turn < 0 ? turn : turn - 2 * Math.PI;
}
