/** Numbers as programs are given them. */
import type { Measure } from '../checks/finding';
import type { Point } from '../geometry/base/curve-types';

/** To a tenth of a micrometre (or of its square): what lies below is noise of the arithmetic. */
export function tidy(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}

export function tidyPoint(point: Point | undefined): Point | undefined {
  return point && { x: tidy(point.x), y: tidy(point.y) };
}

export function tidyMeasure(measure: Measure | undefined): Measure | undefined {
  return measure && { value: tidy(measure.value), limit: tidy(measure.limit), unit: measure.unit };
}
