/** One sheet as it is cut: its contours in order, each entered where the tool comes from. Page mm. */
import { defined } from '../base/defined';
import { limitsOf } from '../config/limits';
import { type Config, DEFAULT_CONFIG } from '../config/types';
import { count } from '../config/values';
import type { Point } from '../geometry/base/curve-types';
import type { Box, Region, Ring } from '../geometry/base/polygon-types';
import { joinBoxes } from '../geometry/base/ring';
import { add, distance } from '../geometry/base/vector';
import type { Sheet } from '../sheet/types';
import { beginAt, boxOfChain, lengthOfChain, moveChain } from './chains';
import { contoursOf, type DrawnContour, tooNarrowFor } from './contours';
import { withKnifeEnds } from './knife';
import type { LoosePiece } from './loose-pieces';
import { labelFor, labelText } from './marking/label';
import { notchedEdge, placeNotches } from './marking/notches';
import { pieceNumber } from './marking/piece-numbers';
import { planTravel } from './order/plan-travel';
import { withHoles } from './round-holes';
import type { CutContour, CutOptions, CutSheet } from './types';

/** A contour can be entered at so many of its joints at most: more make the search slower, and the ways hardly shorter. */
const MOST_ENTRIES = 24;

/**
 * @param place the sheet's number in painting order, from 1, and how many there are
 * @param config tells how near to an opening a notch or a label may come
 * @param loose pieces of the sheet that are kept: where it is labelled, each gets its number
 */
export function cutSheet(
  drawnSheet: Sheet,
  place: Place,
  options: CutOptions = {},
  config: Config = DEFAULT_CONFIG,
  loose: readonly LoosePiece[] = [],
): CutSheet {
  const { kerf = 0, edge = true, holes = [] } = options;
  const sheet = withHoles(drawnSheet, holes);
  const marked = markingOf(sheet, place, options, config, loose);
  const drawn = contoursOf(sheet, kerf, marked.edge, holes).filter(
    ({ kind, chain }) => edge || kind !== 'edge' || !isRectangle(chain),
  );
  const ordered = inOrder(drawn, sheet.frame);
  const cut = ordered.map((contour) => withEnds(contour, sheet.material, options));
  const page = joinBoxes([sheet.frame, ...cut.map(({ curves }) => boxOfChain(curves))]);
  const origin = { x: page.minX, y: page.minY };
  const back = { x: -origin.x, y: -origin.y };
  const contours = cut.map((contour) => ({ ...contour, curves: moveChain(contour.curves, back) }));
  return {
    ...place,
    name: sheet.layer.name,
    paint: sheet.layer.paint,
    width: page.maxX - page.minX,
    height: page.maxY - page.minY,
    origin,
    contours,
    pen: marked.pen.map((line) => line.map((point) => add(point, back))),
    travel: travelOf(contours),
    notes: [...narrowNote(sheet, kerf), ...marked.notes],
  };
}

interface Place {
  readonly number: number;
  readonly count: number;
}

interface Marking {
  readonly pen: CutSheet['pen'];
  readonly notes: readonly string[];
  /** Where the edge is notched. */
  readonly edge?: (box: Box) => Ring;
}

/** Label and notches, as far as there is room. */
function markingOf(
  sheet: Sheet,
  place: Place,
  { labels, notches }: CutOptions,
  config: Config,
  loose: readonly LoosePiece[],
): Marking {
  const label = labels ? labelFor(sheet, labelText(sheet, place), config) : undefined;
  const numbers = (labels ? loose : []).map(({ label: number, piece }) => ({
    number,
    strokes: pieceNumber(sheet, number, piece, limitsOf(config).bridge),
  }));
  const notched = notches ? placeNotches(sheet, place, config) : undefined;
  return {
    pen: [...(label?.strokes ?? []), ...numbers.flatMap(({ strokes }) => strokes ?? [])],
    notes: [
      ...(labels && !label ? ['no room for a label; a margin would give it'] : []),
      ...numbers.filter(({ strokes }) => !strokes).map(({ number }) => `no room for the number ${number}`),
      ...(notches && !notched ? ['no room for notches at the upper left corner; a margin of 5 mm would give it'] : []),
    ],
    ...(notched && { edge: (box: Box) => notchedEdge(box, notched, place) }),
  };
}

function withEnds(contour: CutContour, material: Region, { leadIn = 0, overcut = 0 }: CutOptions): CutContour {
  if (leadIn === 0 && overcut === 0) return contour;
  const curves = withKnifeEnds(contour.curves, material, { leadIn, overcut });
  return { ...contour, curves, closed: false, length: lengthOfChain(curves) };
}

/** From the page's corner to the first cut, from each to the next, and back. */
function travelOf(contours: readonly CutContour[]): number {
  let [at, travel]: [Point, number] = [{ x: 0, y: 0 }, 0];
  for (const { curves } of contours) {
    const [first, last] = [defined(curves[0]), defined(curves.at(-1))];
    travel += distance(at, first.start);
    at = last.end;
  }
  return travel + distance(at, { x: 0, y: 0 });
}

/** The sheet's edge, where no opening reaches it. */
function isRectangle(chain: DrawnContour['chain']): boolean {
  return chain.length === 4 && chain.every(({ kind }) => kind === 'line');
}

function inOrder(drawn: readonly DrawnContour[], { minX, minY }: Box): CutContour[] {
  const starts = drawn.map(({ chain }) => chain.map(({ start }) => start));
  const choices = starts.map((points) => thinned(points.length));
  const pointsOf = (contour: number): Point[] => defined(choices[contour]).map((i) => defined(starts[contour]?.[i]));
  // What has several edges, as a sheet that openings part, is cut off piece by piece: only the last one is told.
  const last = drawn.findLastIndex(({ kind }) => kind === 'edge');
  const plan = planTravel({
    contours: [...drawn.map((_, i) => pointsOf(i)), [{ x: minX, y: minY }]],
    parents: drawn.map(({ parent }) => parent),
    ...(last >= 0 && { last }),
  });
  return plan.order.map((contour): CutContour => {
    const { kind, chain } = defined(drawn[contour]);
    const joint = defined(choices[contour]?.[defined(plan.entries[contour])]);
    return { kind, curves: beginAt(chain, joint), closed: true, length: lengthOfChain(chain) };
  });
}

/** Some of so many numbers, evenly spread. */
function thinned(total: number): number[] {
  const kept = Math.min(total, MOST_ENTRIES);
  return Array.from({ length: kept }, (_, i) => Math.floor((i * total) / kept));
}

function narrowNote({ openings }: Sheet, kerf: number): string[] {
  const lost = tooNarrowFor(openings, kerf).length;
  if (lost === 0) return [];
  return [`${count(lost, 'opening')} ${lost === 1 ? 'is' : 'are'} narrower than the kerf and cannot be cut`];
}
