/** Which of many points lie near to a place. */
import type Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import type { Point } from '../base/curve-types';
import { indexBoxes } from './clusters';

/** Points in a plane, in whichever unit; made once, asked often. */
export class PointIndex {
  private readonly index: Flatbush | undefined;

  constructor(points: readonly Point[]) {
    checkpoint(points.length);
    const boxes = points.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y }));
    this.index = points.length > 0 ? indexBoxes(boxes) : undefined;
  }

  /** The numbers of the points within a square of twice the reach round a place, the lowest first. */
  near({ x, y }: Point, reach: number): number[] {
    const found = this.index?.search(x - reach, y - reach, x + reach, y + reach) ?? [];
    checkpoint(found.length);
    return found.sort((a, b) => a - b);
  }
}
