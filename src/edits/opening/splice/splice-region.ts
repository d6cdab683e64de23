/** Extends a layer's openings over a region: the outline beside it goes round the region, in place of its own course there. */
import { defined } from '../../../base/defined';
import type { Shape } from '../../../drawing/types';
import type { Curve, Matrix, Point } from '../../../geometry/base/curve-types';
import { invert, maxScale } from '../../../geometry/base/matrix';
import type { Polygon, Region } from '../../../geometry/base/polygon-types';
import { boxesTouch } from '../../../geometry/base/ring';
import { DRAWN_ALIKE, PLAINLY_BESIDE } from '../../../geometry/base/tolerances';
import { distance } from '../../../geometry/base/vector';
import { boxOfPolygon, regionContains } from '../../../geometry/boolean/index';
import { fitChain } from '../../../geometry/curve/fit';
import { boundsOf, lengthOf, pointAt, transformCurve } from '../../../geometry/curve/index';
import { shapeRegion } from '../../../sheet/layer/shape-region';
import type { Sheet } from '../../../sheet/types';
import { elementGeometry } from '../../element/element-geometry';
import type { EditResult } from '../../element/result';
import type { StepPath } from '../../path/path-model';
import { pathSource } from '../../path/path-source';
import type { PathSource } from '../../path/path-writer';
import { decimalsFor } from '../../path/precision';
import { rewriteCommands } from '../../path/rewrite-commands';
import { type OuterChain, type OutlinePlace, outerChains } from './boundary-crossings';
import { type Splice, splicePath } from './splice-path';

/** mm: how near the new course comes to the region's own: under later colours nobody sees where it runs. */
export const COURSE = 0.6 * PLAINLY_BESIDE;

/** mm: a new course that would begin so near to a node begins in that node. */
const AT_NODE = 3 * PLAINLY_BESIDE;

/** mm: a chain that is shorter is none. */
const SHORTEST = 2 * DRAWN_ALIKE;

/** So many places of a stretch are asked whether they lie in the region, and so large a share must. */
const PROBES = 16;
const MOST = 0.6;

/** A shape that can be written anew, with its outline in mm. */
interface Outline {
  readonly shape: Shape;
  readonly source: PathSource;
  readonly paths: readonly (readonly Curve[])[];
  editsFor(edits: ReturnType<typeof rewriteCommands>): EditResult;
}

/**
 * @param region mm, which runs into the openings where it touches them
 * @param atNodes whether a new course may begin and end in a node of the outline that is near
 */
export function spliceRegion(sheet: Sheet, region: Region, atNodes: boolean): EditResult {
  const splices = new Map<Outline, PlacedSplice[]>();
  const outlines = sheet.layer.shapes.flatMap((shape) => outlineOf(sheet, shape, region));
  for (const polygon of region) {
    const ways = outlines.map((outline) => ({ outline, found: splicesFor(outline, polygon, atNodes) }));
    const best = ways.reduce<(typeof ways)[number] | undefined>(
      (most, way) => (replaced(way) > (most ? replaced(most) : 0) ? way : most),
      undefined,
    );
    if (!best) return { refusal: 'None of the outlines beside it can be moved.' };
    splices.set(best.outline, [...(splices.get(best.outline) ?? []), ...best.found]);
  }
  const results = [...splices].map(([outline, own]) => spliced(outline, own));
  const refused = results.find((result) => 'refusal' in result);
  return refused ?? { edits: results.flatMap((result) => ('edits' in result ? result.edits : [])) };
}

function outlineOf({ drawing }: Sheet, shape: Shape, region: Region): Outline[] {
  const toUser = invert(shape.toMm);
  const drawn = drawing.shapes.filter(({ element, part }) => element === shape.element && part === shape.part);
  if (!toUser || shape.part !== 'fill' || shape.clips.length > 0 || drawn.length > 1) return [];
  const isNear = ({ curves }: Shape['subpaths'][number]): boolean =>
    curves.some((curve) => region.some((polygon) => boxesTouch(boundsOf(curve), boxOfPolygon(polygon))));
  if (!shape.subpaths.some(isNear)) return [];
  const decimals = Math.max(0, decimalsFor(maxScale(shape.toMm)) - 1);
  const geometry = elementGeometry(drawing.document, shape, shape.subpaths, decimals + 2);
  if (typeof geometry === 'string') return [];
  const source = pathSource(geometry.data, { decimals, numbers: geometry.numbers }, true);
  const paths = source.paths.map(({ steps }) => steps.map(({ curve }) => transformCurve(curve, shape.toMm)));
  return [{ shape, source, paths, editsFor: (edits) => ({ edits: geometry.editsFor(edits) }) }];
}

interface PlacedSplice {
  readonly subpath: number;
  readonly from: number;
  readonly to: number;
  /** mm, in the course of the subpath. */
  readonly points: readonly Point[];
  /** mm of the subpath that it replaces. */
  readonly length: number;
}

function replaced({ found }: { readonly found: readonly PlacedSplice[] }): number {
  return found.reduce((sum, { length }) => sum + length, 0);
}

function splicesFor({ shape, paths }: Outline, polygon: Polygon, atNodes: boolean): PlacedSplice[] {
  return outerChains(polygon.outer, paths, shapeRegion(shape))
    .filter(({ points }) => lengthAlong(points) > SHORTEST)
    .flatMap((chain) => spliceFor(chain, paths, polygon, atNodes) ?? []);
}

function lengthAlong(points: readonly Point[]): number {
  return points.slice(1).reduce((sum, point, i) => sum + distance(point, defined(points[i])), 0);
}

/** In the direction in which the subpath runs within the region. */
function spliceFor(
  { from, to, points }: OuterChain,
  paths: readonly (readonly Curve[])[],
  polygon: Polygon,
  atNodes: boolean,
): PlacedSplice | undefined {
  if (from.subpath !== to.subpath) return undefined;
  const curves = defined(paths[from.subpath]);
  const [there, back] = [insideBetween(curves, from, to, polygon), insideBetween(curves, to, from, polygon)];
  if (Math.max(there, back) < MOST) return undefined;
  const isForward = there > back;
  const [first, last] = isForward ? [from, to] : [to, from];
  const course = isForward ? [...points] : points.toReversed();
  const [start, end] = atNodes ? [nodeBefore(curves, first), nodeAfter(curves, last)] : [];
  if (start) course[0] = pointAt(defined(curves[start.curve]), start.t);
  if (end) course[course.length - 1] = pointAt(defined(curves[end.curve]), end.t);
  const [begin, finish] = [placeOf(start ?? first) % curves.length, placeOf(end ?? last)];
  return {
    subpath: from.subpath,
    from: begin,
    to: finish,
    points: course,
    length: lengthBetween(curves, begin, finish),
  };
}

function placeOf({ curve, t }: OutlinePlace): number {
  return curve + t;
}

/** Which share of the subpath from one place to another lies in the polygon. */
function insideBetween(curves: readonly Curve[], from: OutlinePlace, to: OutlinePlace, polygon: Polygon): number {
  const [start, end] = [placeOf(from), placeOf(to)];
  const way = end > start ? end - start : end + curves.length - start;
  const within = Array.from({ length: PROBES }, (_, i) => {
    const place = (start + ((i + 0.5) / PROBES) * way) % curves.length;
    return regionContains([polygon], pointAt(defined(curves[Math.floor(place)]), place - Math.floor(place)));
  });
  return within.filter(Boolean).length / PROBES;
}

function nodeBefore(curves: readonly Curve[], { curve, t }: OutlinePlace): OutlinePlace | undefined {
  const own = defined(curves[curve]);
  return distance(own.start, pointAt(own, t)) < AT_NODE ? { subpath: 0, curve, t: 0 } : undefined;
}

function nodeAfter(curves: readonly Curve[], { curve, t }: OutlinePlace): OutlinePlace | undefined {
  const own = defined(curves[curve]);
  return distance(own.end, pointAt(own, t)) < AT_NODE ? { subpath: 0, curve, t: 1 } : undefined;
}

function lengthBetween(curves: readonly Curve[], from: number, to: number): number {
  const end = to > from ? to : to + curves.length;
  return curves.concat(curves).reduce((sum, curve, i) => {
    const share = Math.min(end, i + 1) - Math.max(from, i);
    return share > 0 ? sum + share * lengthOf(curve) : sum;
  }, 0);
}

function spliced({ shape, source, editsFor }: Outline, splices: readonly PlacedSplice[]): EditResult {
  const toUser = invert(shape.toMm);
  const starts = new Map<number, Point>();
  const curves = new Map<number, Curve[]>();
  for (const [subpath, path] of source.paths.entries()) {
    const own = splices.filter((splice) => splice.subpath === subpath);
    if (own.length === 0) continue;
    const redrawn =
      toUser &&
      splicePath(
        path,
        own.map((splice) => inUser(splice, path, toUser)),
      );
    if (!redrawn) return { refusal: 'The outline is too crooked there to be moved aside.' };
    if (redrawn.start && path.move === undefined) return { refusal: 'The outline begins where another one ends.' };
    if (redrawn.start && path.move !== undefined) starts.set(path.move, redrawn.start);
    for (const [command, course] of redrawn.curves) curves.set(command, course);
  }
  return editsFor(rewriteCommands(source, { starts, curves }));
}

/** The new course ends in the very points of the old one. */
function inUser({ from, to, points }: PlacedSplice, { steps }: StepPath, toUser: Matrix): Splice {
  const course = fitChain(points, COURSE).map((curve) => transformCurve(curve, toUser));
  const on = (place: number): Point => {
    const step = Math.floor(place) % steps.length;
    return pointAt(defined(steps[step]).curve, place - Math.floor(place));
  };
  const [head, tail] = [defined(course[0]), defined(course.at(-1))];
  if (head === tail) return { from, to, course: [{ ...head, start: on(from), end: on(to) }] };
  return { from, to, course: [{ ...head, start: on(from) }, ...course.slice(1, -1), { ...tail, end: on(to) }] };
}
