/**
 * The lines along which a sheet is cut: the edges of its material, each once, whichever shapes made them. Sheet mm.
 */
import { defined } from '../base/defined';
import type { Box, Polygon, Region, Ring } from '../geometry/base/polygon-types';
import { boxContainsBox, boxOfRing, growBox, ringContains, ringOfBox } from '../geometry/base/ring';
import { DRAWN_ALIKE, WRITTEN_STEP } from '../geometry/base/tolerances';
import { offset } from '../geometry/boolean/index';
import type { Sheet } from '../sheet/types';
import { registrationMarks } from '../stack/registration-marks';
import type { Chain } from './chains';
import { fittedPath } from './fitted-path';
import { boxOfHole, circleOf, type RoundHole } from './round-holes';
import { curvesOfLayer, SourceCurves } from './trace/source-curves';
import { traceRing } from './trace/trace-ring';
import type { ContourKind } from './types';

/** A contour that has no place in the order yet. */
export interface DrawnContour {
  readonly kind: ContourKind;
  readonly chain: Chain;
  /** Its straight edges. */
  readonly ring: Ring;
  /** The contour that it lies in, by number: it is cut before that. Nothing where only the sheet's edge is round it. */
  readonly parent: number | undefined;
}

/**
 * @param edgeOf what is cut in the place of the sheet's plain rectangle, which is given as the tool would follow it
 * @param kerf mm: the material is widened by half of it, so that it comes out as drawn; with 0 the artist's own curves are
 * taken
 * @param holes round ones among the openings, which no shape of the layer draws
 */
export function contoursOf(
  sheet: Sheet,
  kerf: number,
  edgeOf: (box: Box) => Ring = ringOfBox,
  holes: readonly RoundHole[] = [],
): DrawnContour[] {
  const region = withEdge(sheet, kerf, edgeOf);
  const sources = kerf > 0 ? undefined : new SourceCurves([...curvesOfLayer(sheet.layer), ...holes.flatMap(circleOf)]);
  const chainOf = (ring: Ring): Chain => (sources ? traceRing(ring, sources) : fittedPath(ring));
  const marked = [...registrationMarks(sheet.layer).map(({ box }) => box), ...holes.map(boxOfHole)];
  const marks = marked.map((box) => growBox(box, DRAWN_ALIKE));
  const outline = growBox(sheet.frame, kerf / 2 - DRAWN_ALIKE);
  const rings = region
    .flatMap((polygon) => ringsWithKind(polygon, outline, marks))
    .filter(({ ring }) => !isSpeck(ring));
  const parents = parentsOf(rings);
  return rings
    .map(({ kind, ring }, i) => ({ kind, ring, parent: parents[i], chain: chainOf(ring) }))
    .filter(({ chain }) => chain.length > 0);
}

/** Whether a ring is smaller than two things that are drawn alike may differ by: no tool can cut it. */
function isSpeck(ring: Ring): boolean {
  const { minX, minY, maxX, maxY } = boxOfRing(ring);
  return Math.max(maxX - minX, maxY - minY) < DRAWN_ALIKE;
}

/** The sheet's corners stay square where no opening reaches them: its inside is cut, and that has no round corners. */
function withEdge({ material, frame }: Sheet, kerf: number, edgeOf: (box: Box) => Ring): Region {
  const plain = material.some(({ outer }) => outer.length === 8 && isSameBox(boxOfRing(outer), frame));
  const region = kerf > 0 ? offset(material, kerf / 2, 'round', WRITTEN_STEP) : material;
  if (!plain) return region;
  const edge = edgeOf(growBox(frame, kerf / 2));
  const inner = growBox(frame, -DRAWN_ALIKE);
  return region.map((polygon) =>
    boxContainsBox(inner, boxOfRing(polygon.outer)) ? polygon : { ...polygon, outer: edge },
  );
}

function isSameBox(a: Box, b: Box): boolean {
  return boxContainsBox(growBox(a, DRAWN_ALIKE), b) && boxContainsBox(growBox(b, DRAWN_ALIKE), a);
}

/** Openings that the tool, as wide as it is, cannot cut at all. */
export function tooNarrowFor(openings: Region, kerf: number): Polygon[] {
  if (kerf === 0) return [];
  return openings.filter((opening) => offset([opening], -kerf / 2, 'round', WRITTEN_STEP).length === 0);
}

interface KnownRing {
  readonly kind: ContourKind;
  readonly ring: Ring;
  /** The outer ring of the material that it bounds. */
  readonly outer: Ring;
}

function ringsWithKind({ outer, holes }: Polygon, outline: Box, marks: readonly Box[]): KnownRing[] {
  const isEdge = !boxContainsBox(outline, boxOfRing(outer));
  const isMark = (ring: Ring) => marks.some((mark) => boxContainsBox(mark, boxOfRing(ring)));
  return [
    { kind: isEdge ? 'edge' : 'piece', ring: outer, outer },
    ...holes.map((ring): KnownRing => ({ kind: isMark(ring) ? 'mark' : 'opening', ring, outer })),
  ];
}

/** An opening lies in its piece; a loose piece in the least opening round it. The sheet's edge is nobody's parent here. */
function parentsOf(rings: readonly KnownRing[]): (number | undefined)[] {
  const numberOf = new Map(rings.map(({ ring }, i) => [ring, i]));
  const byArea = [...rings.keys()].sort((a, b) => spanOf(rings[a]) - spanOf(rings[b]));
  return rings.map(({ kind, ring, outer }) => {
    if (kind === 'edge') return undefined;
    const around = outer === ring ? leastAround(ring, rings, byArea) : numberOf.get(outer);
    return around === undefined || rings[around]?.kind === 'edge' ? undefined : around;
  });
}

function leastAround(ring: Ring, rings: readonly KnownRing[], byArea: readonly number[]): number | undefined {
  const point = { x: defined(ring[0]), y: defined(ring[1]) };
  return byArea.find((number) => {
    const other = defined(rings[number]);
    const isHole = other.outer !== other.ring;
    return isHole && boxContainsBox(boxOfRing(other.ring), boxOfRing(ring)) && ringContains(other.ring, point);
  });
}

function spanOf(known: KnownRing | undefined): number {
  const { minX, minY, maxX, maxY } = boxOfRing(defined(known).ring);
  return (maxX - minX) * (maxY - minY);
}
