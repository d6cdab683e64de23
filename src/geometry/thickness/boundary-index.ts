/** An outline with its edges in a spatial index. */

import { defined } from '../../base/defined';
import type { Region } from '../base/polygon-types';
import { EdgeIndex } from '../spatial/edge-index';
import { buildOutline, type Outline } from './boundary-arrays';
import { type BoundaryPoint, boundaryPointAt, isHarmless, type Touch, touchEdge } from './tangent-disc';

export interface Boundary {
  readonly outline: Outline;
  readonly edges: EdgeIndex;
}

/** Undefined when the region has no area. */
export function buildBoundary(region: Region): Boundary | undefined {
  const outline = buildOutline(region);
  if (outline.count === 0) return undefined;
  return { outline, edges: new EdgeIndex(outline.x, outline.y, outline.ringStart) };
}

/** Calls back with the edges in the box until one answers true. */
export function visitBox(
  { edges }: Boundary,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  visit: (edge: number) => boolean,
): void {
  edges.search(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1), visit);
}

/** Finds what the largest empty disc at a boundary place touches: the *first blocker*. */
export class TouchFinder {
  readonly place: BoundaryPoint = { x: 0, y: 0, normalX: 0, normalY: 0 };
  /** The last result. */
  readonly touch: Touch = { radius: Infinity, edge: -1, at: 0 };
  private element = 0;
  private readonly visit = (obstacle: number): boolean => {
    this.consider(obstacle);
    return this.touch.radius === 0;
  };

  private readonly boundary: Boundary;

  constructor(boundary: Boundary) {
    this.boundary = boundary;
  }

  /**
   * The radius in mm, Infinity if it is not below `limit`. Neighbours of the last blocker are looked at first, as the
   * next place asked about commonly has the same: they make the search narrow.
   */
  find(element: number, parameter: number, limit: number): number {
    const { place, touch, boundary } = this;
    const hint = touch.edge;
    const { polygon, next, previous } = boundary.outline;
    boundaryPointAt(boundary.outline, element, parameter, place);
    this.element = element;
    touch.radius = limit;
    touch.edge = -1;
    if (hint >= 0 && polygon[hint] === polygon[element >> 1]) {
      this.consider(hint);
      this.consider(defined(next[hint]));
      this.consider(defined(previous[hint]));
    }
    const radius = touch.radius;
    const [x, y] = [place.x + radius * place.normalX, place.y + radius * place.normalY];
    visitBox(boundary, x - radius, y - radius, x + radius, y + radius, this.visit);
    if (touch.edge >= 0) return touch.radius;
    touch.edge = hint;
    return Infinity;
  }

  private consider(obstacle: number): void {
    const { outline } = this.boundary;
    if (outline.polygon[obstacle] !== outline.polygon[this.element >> 1]) return;
    if (isHarmless(outline, this.element, obstacle)) return;
    touchEdge(outline, this.place, obstacle, this.touch);
  }
}
