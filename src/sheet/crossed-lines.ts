/** Outlines that cross themselves, where that changes which area a layer fills. Sheet mm. */
import type { Shape } from '../drawing/drawing';
import { flattenSubpath } from '../geometry/flatten';
import { areaOf, difference, perimeterOf, regionFromRings } from '../geometry/polygons';
import type { Polygon, Region, Ring } from '../geometry/region';
import { boxesTouch, boxOfRing, reverseRing, ringsOf, signedArea } from '../geometry/rings';
import { selfCrossingBy, type SelfCrossing } from '../geometry/self-crossing';
import { cutLinesOf, type CutLine } from './cut-lines';
import { FLATNESS } from './shape-region';
import type { Sheet } from './sheet';

export interface CrossedLine {
  readonly line: CutLine;
  /** mm² that would be filled, or left out, if the outline went round all that it encloses once. */
  readonly area: number;
  /** Whether that area is left out of what is filled. */
  readonly leftOut: boolean;
  readonly crossing: SelfCrossing;
}

/** mm²: what a cut of 0.1 mm shows. */
const SMALLEST_AREA = 0.01;

/** mm, area by half of the perimeter: thinner changes come from rounding. */
const SMALLEST_WIDTH = 0.01;

/** Outlines in one layer that are looked at closely, at most: each costs a union of its layer's or shape's area. */
const MOST = 64;

export function crossedLinesOf({ layer, kept }: Sheet): CrossedLine[] {
  const outlines = layer.reading === 'outlines';
  const lines = cutLinesOf(layer).filter(({ closed }) => closed || !outlines);
  const rings = new Map(lines.map((line) => [line, flattenSubpath(line.curves, FLATNESS)]));
  const ringOf = (line: CutLine) => rings.get(line) as Ring;
  const shapes = new Map(layer.shapes.map((shape) => [shape, [] as CutLine[]]));
  for (const line of lines) shapes.get(line.shape)?.push(line);
  const plain = new Set(layer.shapes.filter((shape, i) =>
    isPlain(shape, (shapes.get(shape) ?? []).map(ringOf), kept.fills[i])));
  const tangled = lines.filter((line) => !plain.has(line.shape) && isTangled(ringOf(line))).slice(0, MOST);
  return tangled.flatMap((line) => {
    // Hairlines are read together, by nesting; each filled shape by its own rule.
    const fellows = outlines ? lines : shapes.get(line.shape) ?? [];
    const box = boxOfRing(ringOf(line));
    const others = fellows.filter((other) => other !== line).map(ringOf)
      .filter((ring) => boxesTouch(boxOfRing(ring), box));
    return compare(line, ringOf(line), others, outlines ? 'evenodd' : line.shape.fillRule);
  });
}

/**
 * Whether what a shape fills shows at a glance that its outlines go round everything once: the common case. Either each
 * of them bounds it, or their areas add up to it.
 */
function isPlain({ fillRule }: Shape, rings: readonly Ring[], filled: Region | undefined): boolean {
  if (!filled) return false;
  const areas = rings.map((ring) => signedArea(ring));
  const bounds = filled.flatMap(ringsOf).map((ring) => signedArea(ring));
  if (sameSizes(areas, bounds)) return true;
  if (fillRule === 'evenodd' && rings.length > 1) return false;
  return Math.abs(sum(bounds) - Math.abs(sum(areas))) < SMALLEST_AREA;
}

function sameSizes(a: readonly number[], b: readonly number[]): boolean {
  const sizes = (areas: readonly number[]) => areas.map(Math.abs).sort((one, other) => one - other);
  const others = sizes(b);
  return a.length === b.length && sizes(a).every((size, i) => Math.abs(size - (others[i] ?? 0)) < SMALLEST_AREA);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Whether the outline goes round some of what it encloses twice, or the other way. */
function isTangled(ring: Ring): boolean {
  if (ring.length < 8) return false;
  const enclosed = areaOf(regionFromRings([ring], 'nonzero'));
  return Math.abs(enclosed - Math.abs(signedArea(ring))) > SMALLEST_AREA;
}

function compare(line: CutLine, ring: Ring, others: readonly Ring[], rule: 'nonzero' | 'evenodd'): CrossedLine[] {
  const filled = regionFromRings([ring, ...others], rule);
  const untangled = regionFromRings([...once(ring), ...others], rule);
  const changes = [true, false].flatMap((leftOut) =>
    (leftOut ? difference(untangled, filled) : difference(filled, untangled)).filter(shows)
      .map((polygon) => ({ polygon, leftOut, area: areaOf(polygon) })));
  const [largest] = changes.sort((a, b) => b.area - a.area);
  const crossing = largest && selfCrossingBy(ring, largest.polygon.outer);
  if (!crossing) return [];
  return [{ line, leftOut: largest.leftOut, area: changes.reduce((sum, { area }) => sum + area, 0), crossing }];
}

/** The outline of all that a ring encloses, in the ring's own course. */
function once(ring: Ring): Ring[] {
  const round = regionFromRings([ring], 'nonzero').flatMap(ringsOf);
  return signedArea(ring) < 0 ? round.map(reverseRing) : round;
}

function shows(polygon: Polygon): boolean {
  const area = areaOf(polygon);
  return area > SMALLEST_AREA && 2 * area > SMALLEST_WIDTH * perimeterOf(polygon);
}
