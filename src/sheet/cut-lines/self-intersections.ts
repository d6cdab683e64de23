/** Outlines that cross themselves, where that changes which area a layer fills. Sheet mm. */

import { defined } from '../../base/defined';
import type { Shape } from '../../drawing/types';
import type { Curve } from '../../geometry/base/curve-types';
import { memoizeByIdentity } from '../../geometry/base/derived-facts';
import type { Box, FillRule, Polygon, Region, Ring } from '../../geometry/base/polygon-types';
import { boxesTouch, boxOfRing, growBox, joinBoxes, reverseRing, ringsOf, signedArea } from '../../geometry/base/ring';
import { DRAWN_ALIKE, PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { areaOf, difference, perimeterOf, regionFromRings } from '../../geometry/boolean/index';
import { ringsWithin } from '../../geometry/boolean/tiles';
import { type SelfCrossing, selfCrossingBy } from '../../geometry/polygon/self-intersection';
import { ringOfCurves } from '../layer/shape-region';
import type { Sheet } from '../types';
import { type CutLine, cutLinesOf } from './index';

export interface SelfIntersection {
  readonly line: CutLine;
  /** mm² that would be filled, or left out, if the outline went round all that it encloses once. */
  readonly area: number;
  /** Whether that area is left out of what is filled. */
  readonly leftOut: boolean;
  readonly crossing: SelfCrossing;
}

/** mm²: what a cut of 0.1 mm shows. */
const MIN_AREA = 0.01;

/** mm, area by half of the perimeter: thinner changes come from rounding. */
const MIN_WIDTH = DRAWN_ALIKE;

/** mm: what is cut off so far from a place must not show in it. */
const MARGIN = PLAINLY_BESIDE;

/** Outlines in one layer that are looked at closely, at most: each costs a union of its layer's or shape's area. */
const MAX_OUTLINES = 64;

export function selfIntersectionsOf({ layer, fills }: Sheet): SelfIntersection[] {
  const outlines = layer.reading === 'outlines';
  const lines = cutLinesOf(layer).filter(({ closed }) => closed || !outlines);
  const byShape = new Map(layer.shapes.map((shape) => [shape, [] as CutLine[]]));
  for (const line of lines) byShape.get(line.shape)?.push(line);
  const unclear = [...byShape].flatMap(([shape, own], i) => (isPlain(shape, own, fills[i]) ? [] : own));
  const tangled = unclear.filter(({ curves }) => isTangled(curves)).slice(0, MAX_OUTLINES);
  // Hairlines are read together, by nesting; each filled shape by its own rule.
  return tangled.flatMap((line) =>
    outlines ? compare(line, lines, 'evenodd') : compare(line, byShape.get(line.shape) ?? [], line.shape.fillRule),
  );
}

/**
 * Whether what a shape fills shows at a glance that its outlines go round everything once: the common case. Either each
 * of them bounds it, or their areas add up to it.
 */
function isPlain({ fillRule }: Shape, lines: readonly CutLine[], filled: Region | undefined): boolean {
  if (!filled) return false;
  const areas = lines.map(({ curves }) => areaWithin(curves));
  const bounds = areasOfRings(filled);
  if (sameSizes(areas, bounds)) return true;
  if (fillRule === 'evenodd' && lines.length > 1) return false;
  return Math.abs(sum(bounds) - Math.abs(sum(areas))) < MIN_AREA;
}

/** mm², with the sign of the course. Outlines and fills are met again after each edit. */
const areaWithin = memoizeByIdentity('area within a chain', (curves: readonly Curve[]) =>
  signedArea(ringOfCurves(curves)),
);
const areasOfRings = memoizeByIdentity('areas of the rings of a region', (region: Region) =>
  region.flatMap(ringsOf).map(signedArea),
);

function sameSizes(a: readonly number[], b: readonly number[]): boolean {
  const sizes = (areas: readonly number[]) => areas.map(Math.abs).sort((one, other) => one - other);
  const others = sizes(b);
  return a.length === b.length && sizes(a).every((size, i) => Math.abs(size - defined(others[i])) < MIN_AREA);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** All that an outline goes round. */
const enclosedBy = memoizeByIdentity('enclosed by a chain', (curves: readonly Curve[]) =>
  regionFromRings([ringOfCurves(curves)], 'nonzero'),
);

/** Whether the outline goes round some of what it encloses twice, or the other way. */
const isTangled = memoizeByIdentity('whether a chain is tangled', (curves: readonly Curve[]): boolean => {
  return (
    ringOfCurves(curves).length >= 8 && Math.abs(areaOf(enclosedBy(curves)) - Math.abs(areaWithin(curves))) > MIN_AREA
  );
});

/** @param fellows that are read together with the line, and it among them */
function compare(line: CutLine, fellows: readonly CutLine[], rule: FillRule): SelfIntersection[] {
  const ring = ringOfCurves(line.curves);
  const round = enclosedBy(line.curves).flatMap(ringsOf);
  const outline = signedArea(ring) < 0 ? round.map(reverseRing) : round;
  const around = boxOfTangles(ring, outline);
  if (!around) return [];
  const others = fellows
    .filter((other) => other !== line)
    .map(({ curves }) => ringOfCurves(curves))
    .filter((other) => boxesTouch(boxOfRing(other), around));
  const within = (rings: readonly Ring[]): Region => regionFromRings(ringsWithin(rings, around), rule);
  const filled = within([ring, ...others]);
  const untangled = within([...outline, ...others]);
  const changes = [true, false].flatMap((leftOut) =>
    (leftOut ? difference(untangled, filled) : difference(filled, untangled))
      .filter(isWideEnough)
      .map((polygon) => ({ polygon, leftOut, area: areaOf(polygon) })),
  );
  const [largest] = changes.sort((a, b) => b.area - a.area);
  const crossing = largest && selfCrossingBy(ring, largest.polygon.outer);
  if (!crossing) return [];
  return [{ line, leftOut: largest.leftOut, area: changes.reduce((sum, { area }) => sum + area, 0), crossing }];
}

/** Round all places that the ring goes round in another way than its outline does: nothing else can change. */
function boxOfTangles(ring: Ring, outline: readonly Ring[]): Box | undefined {
  const tangles = regionFromRings([ring, ...outline.map(reverseRing)], 'nonzero');
  return tangles.length > 0 ? growBox(joinBoxes(tangles.map(({ outer }) => boxOfRing(outer))), MARGIN) : undefined;
}

function isWideEnough(polygon: Polygon): boolean {
  const area = areaOf(polygon);
  return area > MIN_AREA && 2 * area > MIN_WIDTH * perimeterOf(polygon);
}
