/**
 * Discs that lie inside the region and touch its boundary, in closed form. A place on the boundary is an element of the
 * outline with a parameter: mm from the edge's start, or radians from the cone's start.
 */

import { defined } from '../../base/defined';
import { ROUNDING_DEPTH } from '../base/tolerances';
import type { Outline } from './boundary-arrays';

/** In mm: how deep something must reach into a disc to count, so that rounding errors do not. */
export const DEPTH = ROUNDING_DEPTH;

/** In mm: what is nearer than this to a place touches it. */
const CONTACT = 4 * DEPTH;

/** A place on the boundary with its inward normal. */
export interface BoundaryPoint {
  x: number;
  y: number;
  normalX: number;
  normalY: number;
}

export interface BlockedInterval {
  from: number;
  to: number;
}

export function isEdge(element: number): boolean {
  return (element & 1) === 1;
}

/** In mm for edges, in radians for cones. */
export function sizeOf(outline: Outline, element: number): number {
  return isEdge(element) ? defined(outline.length[element >> 1]) : defined(outline.cone[element >> 1]);
}

export function boundaryPointAt(
  outline: Outline,
  element: number,
  parameter: number,
  place: BoundaryPoint,
): BoundaryPoint {
  const vertex = element >> 1;
  if (isEdge(element)) {
    const alongX = defined(outline.alongX[vertex]);
    const alongY = defined(outline.alongY[vertex]);
    place.x = defined(outline.x[vertex]) + parameter * alongX;
    place.y = defined(outline.y[vertex]) + parameter * alongY;
    place.normalX = -alongY;
    place.normalY = alongX;
    return place;
  }
  const before = defined(outline.previous[vertex]);
  const alongX = defined(outline.alongX[before]);
  const alongY = defined(outline.alongY[before]);
  const cos = Math.cos(parameter);
  const sin = Math.sin(parameter);
  place.x = defined(outline.x[vertex]);
  place.y = defined(outline.y[vertex]);
  place.normalX = sin * alongX - cos * alongY;
  place.normalY = sin * alongY + cos * alongX;
  return place;
}

/**
 * Whether `obstacle` cannot reach into any disc that touches the element, because it is the element or meets it at a
 * reflex or flat vertex. Said here rather than left to rounding errors.
 */
export function isHarmless({ next, previous, cone }: Outline, element: number, obstacle: number): boolean {
  const own = element >> 1;
  if (obstacle === own) return true;
  if (!isEdge(element)) return obstacle === previous[own];
  if (obstacle === previous[own]) return defined(cone[own]) > 0 && obstacle !== next[own];
  return obstacle === next[own] && defined(cone[obstacle]) > 0;
}

/** mm²: the squared distance of a point from the edge. */
export function squareToEdge(outline: Outline, edge: number, px: number, py: number): number {
  const dx = px - defined(outline.x[edge]);
  const dy = py - defined(outline.y[edge]);
  const alongX = defined(outline.alongX[edge]);
  const alongY = defined(outline.alongY[edge]);
  const along = dx * alongX + dy * alongY;
  const beyond = along < 0 ? along : Math.max(0, along - defined(outline.length[edge]));
  const aside = dx * alongY - dy * alongX;
  return aside * aside + beyond * beyond;
}

/**
 * Which stretch of the edge carries discs of the radius that the obstacle reaches into. The discs' centres run on a
 * line parallel to the edge, and those within the radius of the obstacle make a capsule round it: a line meets such a
 * convex figure in one stretch. False when there is none.
 */
export function blockedOnEdge(
  o: Outline,
  edge: number,
  obstacle: number,
  radius: number,
  blocked: BlockedInterval,
): boolean {
  const tx = defined(o.alongX[edge]);
  const ty = defined(o.alongY[edge]);
  const reach = radius - DEPTH;
  const x = defined(o.x[obstacle]) - defined(o.x[edge]);
  const y = defined(o.y[obstacle]) - defined(o.y[edge]);
  // The obstacle's start and direction, seen from the edge's start along the edge and from the line of centres inwards.
  const startAcross = x * -ty + y * tx - radius;
  const across = defined(o.alongX[obstacle]) * -ty + defined(o.alongY[obstacle]) * tx;
  const length = defined(o.length[obstacle]);
  const endAcross = startAcross + length * across;
  if ((startAcross >= reach && endAcross >= reach) || (startAcross <= -reach && endAcross <= -reach)) return false;
  const along = defined(o.alongX[obstacle]) * tx + defined(o.alongY[obstacle]) * ty;
  const startAlong = x * tx + y * ty;
  blocked.from = Infinity;
  blocked.to = -Infinity;
  widenByDisc(blocked, startAlong, startAcross, reach);
  widenByDisc(blocked, startAlong + length * along, endAcross, reach);
  if (Math.abs(across) > 1e-12) {
    widenBySide(blocked, startAlong, startAcross, along, across, length, reach);
    widenBySide(blocked, startAlong, startAcross, along, across, length, -reach);
  }
  return blocked.to > 0 && blocked.from < defined(o.length[edge]) && blocked.from < blocked.to;
}

function widenByDisc(blocked: BlockedInterval, along: number, across: number, reach: number): void {
  const square = reach * reach - across * across;
  if (square <= 0) return;
  const half = Math.sqrt(square);
  if (along - half < blocked.from) blocked.from = along - half;
  if (along + half > blocked.to) blocked.to = along + half;
}

/** Where the line of centres crosses the capsule's straight side at the signed distance `side` from the obstacle. */
function widenBySide(
  blocked: BlockedInterval,
  startAlong: number,
  startAcross: number,
  along: number,
  across: number,
  length: number,
  side: number,
): void {
  const offset = -(along * startAcross + side) / across;
  const foot = along * offset - across * startAcross;
  if (foot < 0 || foot > length) return;
  if (startAlong + offset < blocked.from) blocked.from = startAlong + offset;
  if (startAlong + offset > blocked.to) blocked.to = startAlong + offset;
}

/**
 * The same for the cone at a vertex: which turn of the normal, in radians from the cone's start, carries discs that the
 * obstacle reaches into. The centres run on a circle round the vertex. A single obstacle point at the distance d blocks
 * the directions within acos(d / 2r) of its own, so a straight obstacle blocks one arc: the hull of those of its ends
 * and of the directions in which the disc touches its line. The arc may go round by multiples of 2π.
 */
export function blockedInCone(
  o: Outline,
  vertex: number,
  obstacle: number,
  radius: number,
  blocked: BlockedInterval,
): boolean {
  const before = defined(o.previous[vertex]);
  const tx = defined(o.alongX[before]);
  const ty = defined(o.alongY[before]);
  const x = defined(o.x[obstacle]) - defined(o.x[vertex]);
  const y = defined(o.y[obstacle]) - defined(o.y[vertex]);
  const dx = defined(o.alongX[obstacle]);
  const dy = defined(o.alongY[obstacle]);
  // Seen from the vertex, along the normal at the cone's start and along the edge before it: angles from the first
  // axis.
  const a1 = y * tx - x * ty;
  const a2 = x * tx + y * ty;
  const d1 = dy * tx - dx * ty;
  const d2 = dx * tx + dy * ty;
  const length = defined(o.length[obstacle]);
  const reach = radius - DEPTH;
  const side = a2 * d1 - a1 * d2;
  const height = Math.abs(side);
  if (height >= radius + reach) return false;
  const foot = -(a1 * d1 + a2 * d2);
  if (height < CONTACT && foot > -CONTACT && foot < length + CONTACT) {
    return blockedByContact(blocked, Math.atan2(d2, d1), foot > CONTACT, foot < length - CONTACT, radius);
  }
  // From here on angles count from the direction in which the obstacle's line is nearest.
  const upright = side >= 0 ? 1 : -1;
  blocked.from = Infinity;
  blocked.to = -Infinity;
  widenByPoint(blocked, height, upright * foot, radius);
  widenByPoint(blocked, height, upright * (foot - length), radius);
  const half = Math.acos(Math.max(-1, (height - reach) / radius));
  const step = upright * radius * Math.sin(half);
  if (foot + step >= 0 && foot + step <= length && -half < blocked.from) blocked.from = -half;
  if (foot - step >= 0 && foot - step <= length && half > blocked.to) blocked.to = half;
  const middle = Math.atan2(upright * d1, -upright * d2);
  blocked.from += middle;
  blocked.to += middle;
  return blocked.from < blocked.to;
}

function widenByPoint(blocked: BlockedInterval, ahead: number, aside: number, radius: number): void {
  const square = ahead * ahead + aside * aside;
  const reach = radius - DEPTH;
  const cosine = (square + radius * radius - reach * reach) / (2 * radius * Math.sqrt(square));
  if (cosine >= 1) return;
  const half = Math.acos(cosine);
  const direction = Math.atan2(aside, ahead);
  if (direction - half < blocked.from) blocked.from = direction - half;
  if (direction + half > blocked.to) blocked.to = direction + half;
}

/** An obstacle that passes through the vertex or ends there blocks all discs on its side. */
function blockedByContact(
  blocked: BlockedInterval,
  direction: number,
  backward: boolean,
  forward: boolean,
  radius: number,
): boolean {
  const half = Math.PI / 2 - Math.sqrt((2 * DEPTH) / radius);
  const centre = forward ? direction : direction + Math.PI;
  blocked.from = forward && backward ? -Infinity : centre - half;
  blocked.to = forward && backward ? Infinity : centre + half;
  return forward || backward;
}

/** Where a disc that grows from a place first touches an obstacle. */
export interface Touch {
  /** mm; Infinity when it never does. */
  radius: number;
  /** The obstacle, and mm from its start. */
  edge: number;
  at: number;
}

/**
 * Radius of the disc that touches the boundary at the place from within and the obstacle from outside. For an obstacle
 * point at the offset v from the place it is v² / (2 n·v), n being the normal; the discs of at most a given radius
 * being convex, the least over a straight obstacle is where the disc touches its line, or at the nearer end. Sets
 * `touch` and gives true if that is less than `touch.radius`.
 */
export function touchEdge(outline: Outline, place: BoundaryPoint, obstacle: number, touch: Touch): boolean {
  const dx = defined(outline.alongX[obstacle]);
  const dy = defined(outline.alongY[obstacle]);
  const x = defined(outline.x[obstacle]) - place.x;
  const y = defined(outline.y[obstacle]) - place.y;
  const length = defined(outline.length[obstacle]);
  const side = y * dx - x * dy;
  const upright = side >= 0 ? 1 : -1;
  const facing = 1 + upright * (place.normalY * dx - place.normalX * dy);
  const forward = place.normalX * dx + place.normalY * dy;
  if (facing > 1e-12) {
    const radius = Math.abs(side) / facing;
    if (radius >= touch.radius) return false;
    const at = radius * forward - (x * dx + y * dy);
    if (at >= 0 && at <= length) {
      touch.radius = radius;
      touch.edge = obstacle;
      touch.at = at;
      return true;
    }
  }
  const atStart = touchPoint(place, x, y, obstacle, 0, touch);
  return touchPoint(place, x + length * dx, y + length * dy, obstacle, length, touch) || atStart;
}

function touchPoint(place: BoundaryPoint, x: number, y: number, edge: number, at: number, touch: Touch): boolean {
  const ahead = place.normalX * x + place.normalY * y;
  const square = x * x + y * y;
  if (square > CONTACT * CONTACT && !(ahead > 0)) return false;
  const radius = square > CONTACT * CONTACT ? square / (2 * ahead) : 0;
  if (radius >= touch.radius) return false;
  touch.radius = radius;
  touch.edge = edge;
  touch.at = at;
  return true;
}
