/** Round register holes that are cut into a sheet beside what the artist drew. Sheet mm. */
import type { Arc, Point } from '../geometry/base/curve-types';
import type { Box } from '../geometry/base/polygon-types';
import { FLATTENING } from '../geometry/base/tolerances';
import { difference, regionFromRings, union } from '../geometry/boolean/index';
import { flattenSubpath } from '../geometry/curve/flatten';
import type { Sheet } from '../sheet/types';

export interface RoundHole {
  readonly centre: Point;
  /** mm */
  readonly radius: number;
}

export function boxOfHole({ centre: { x, y }, radius }: RoundHole): Box {
  return { minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius };
}

/** Four quarters of a turn. */
export function circleOf({ centre, radius }: RoundHole): Arc[] {
  const at = (quarter: number): Point => ({
    x: centre.x + radius * [1, 0, -1, 0][quarter % 4]!,
    y: centre.y + radius * [0, 1, 0, -1][quarter % 4]!,
  });
  return [0, 1, 2, 3].map((quarter) => ({
    kind: 'arc',
    start: at(quarter),
    end: at(quarter + 1),
    centre,
    axisU: { x: radius, y: 0 },
    axisV: { x: 0, y: radius },
    from: (quarter * Math.PI) / 2,
    sweep: Math.PI / 2,
  }));
}

/** The sheet with the holes among its openings. */
export function withHoles(sheet: Sheet, holes: readonly RoundHole[]): Sheet {
  if (holes.length === 0) return sheet;
  const rings = holes.map((hole) => flattenSubpath(circleOf(hole), FLATTENING));
  const discs = regionFromRings(rings, 'nonzero');
  return {
    ...sheet,
    openings: union([sheet.openings, discs]),
    material: difference(sheet.material, discs),
  };
}
