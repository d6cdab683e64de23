/** The largest disc in a polygon that is thin throughout. */

import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import { OVERLAY_GRID } from '../base/tolerances';
import { BlockedIntervals } from './blocked-intervals';
import { type Boundary, TouchFinder } from './boundary-index';
import { boundaryPointAt, sizeOf } from './tangent-disc';

/** In mm: discs whose radius is larger by less are not looked for. */
const PRECISION = OVERLAY_GRID / 400;

/** How many places have their discs measured beforehand, so that the search starts with a good one. */
const SAMPLES = 16;

/** How often a better disc is sought on one element: each time halves what it may still be wrong by. */
const IMPROVEMENTS = 60;

/**
 * The ends of a diameter of the largest inscribed disc, never above it and less than 1 µm below. Every element is asked
 * for a place that would carry a disc a little larger than the best yet; a place found gives a new best. Elements come
 * in scattered order, so that this happens seldom. The polygon's vertices are those from `start` up to `end`; `limit`
 * (mm) is more than the radius.
 */
export function largestDisc(boundary: Boundary, start: number, end: number, limit: number): [Point, Point] {
  const search = new DiscSearch(boundary, limit);
  const elements = 2 * (end - start);
  const step = scatteringStep(elements);
  const inScatteredOrder = (count: number, visit: (element: number) => void): void => {
    for (let turn = 0, at = 0; turn < count; turn += 1, at = (at + step) % elements) visit(2 * start + at);
  };
  inScatteredOrder(Math.min(SAMPLES, elements), (element) => search.measure(element));
  inScatteredOrder(elements, (element) => search.improve(element));
  return search.diameter();
}

/** A step near the golden section of the count that shares no divisor with it. */
function scatteringStep(count: number): number {
  const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
  let step = Math.max(1, Math.round(0.618 * count));
  while (divisor(count, step) > 1) step += 1;
  return step;
}

class DiscSearch {
  private radius = 0;
  private element = -1;
  private parameter = 0;
  private readonly finder: TouchFinder;
  private readonly blocking: BlockedIntervals;

  private readonly boundary: Boundary;
  private readonly limit: number;

  constructor(boundary: Boundary, limit: number) {
    this.boundary = boundary;
    this.limit = limit;

    this.finder = new TouchFinder(boundary);
    this.blocking = new BlockedIntervals(boundary);
  }

  measure(element: number, parameter = sizeOf(this.boundary.outline, element) / 2): boolean {
    if (sizeOf(this.boundary.outline, element) === 0) return false;
    const radius = Math.min(this.limit, this.finder.find(element, parameter, this.limit));
    if (this.element >= 0 && radius <= this.radius) return false;
    this.radius = radius;
    this.element = element;
    this.parameter = parameter;
    return true;
  }

  improve(element: number): void {
    const size = sizeOf(this.boundary.outline, element);
    if (size === 0) return;
    for (let turn = 0; turn < IMPROVEMENTS; turn += 1) {
      const gap = this.widestGap(element, size);
      if (gap === undefined || !this.measure(element, gap)) return;
    }
  }

  /** The middle of the widest stretch of the element that carries discs larger than the best. */
  private widestGap(element: number, size: number): number | undefined {
    this.blocking.find(element, this.radius + PRECISION);
    const { count, from, to } = this.blocking;
    let [middle, width] = [0, 0];
    for (let at = 0; at <= count; at += 1) {
      const [low, high] = [at === 0 ? 0 : defined(to[at - 1]), at === count ? size : defined(from[at])];
      if (high - low <= width) continue;
      width = high - low;
      middle = (low + high) / 2;
    }
    return width > 0 ? middle : undefined;
  }

  diameter(): [Point, Point] {
    const place = boundaryPointAt(this.boundary.outline, this.element, this.parameter, {
      x: 0,
      y: 0,
      normalX: 0,
      normalY: 0,
    });
    const across = 2 * this.radius;
    return [
      { x: place.x, y: place.y },
      { x: place.x + across * place.normalX, y: place.y + across * place.normalY },
    ];
  }
}
