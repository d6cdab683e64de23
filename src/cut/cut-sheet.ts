/** One sheet as it is cut: its contours in order, each entered where the tool comes from. Page mm. */
import { defined } from '../base/defined';
import { count } from '../config/values';
import type { Point } from '../geometry/base/curve-types';
import { joinBoxes } from '../geometry/base/ring';
import type { Sheet } from '../sheet/types';
import { beginAt, boxOfChain, lengthOfChain, moveChain } from './chains';
import { contoursOf, type DrawnContour, tooNarrowFor } from './contours';
import { planTravel } from './order/plan-travel';
import type { CutContour, CutOptions, CutSheet } from './types';

/** A contour can be entered at so many of its joints at most: more make the search slower, and the ways hardly shorter. */
const MOST_ENTRIES = 24;

/** @param place the sheet's number in painting order, from 1, and how many there are */
export function cutSheet(sheet: Sheet, place: { number: number; count: number }, options: CutOptions = {}): CutSheet {
  const { kerf = 0, edge = true } = options;
  const drawn = contoursOf(sheet, kerf).filter(({ kind, chain }) => edge || kind !== 'edge' || !isRectangle(chain));
  const page = joinBoxes([sheet.frame, ...drawn.map(({ chain }) => boxOfChain(chain))]);
  const origin = { x: page.minX, y: page.minY };
  const moved = drawn.map((contour) => ({
    ...contour,
    chain: moveChain(contour.chain, { x: -origin.x, y: -origin.y }),
  }));
  const { contours, travel } = inOrder(moved);
  return {
    ...place,
    name: sheet.layer.name,
    paint: sheet.layer.paint,
    width: page.maxX - page.minX,
    height: page.maxY - page.minY,
    origin,
    contours,
    pen: [],
    travel,
    notes: narrowNote(sheet, kerf),
  };
}

/** The sheet's edge, where no opening reaches it. */
function isRectangle(chain: DrawnContour['chain']): boolean {
  return chain.length === 4 && chain.every(({ kind }) => kind === 'line');
}

function inOrder(drawn: readonly DrawnContour[]): { contours: CutContour[]; travel: number } {
  const starts = drawn.map(({ chain }) => chain.map(({ start }) => start));
  const choices = starts.map((points) => thinned(points.length));
  const pointsOf = (contour: number): Point[] => defined(choices[contour]).map((i) => defined(starts[contour]?.[i]));
  // What has several edges, as a sheet that openings part, is cut off piece by piece: only the last one is told.
  const last = drawn.findLastIndex(({ kind }) => kind === 'edge');
  const plan = planTravel({
    contours: [...drawn.map((_, i) => pointsOf(i)), [{ x: 0, y: 0 }]],
    parents: drawn.map(({ parent }) => parent),
    ...(last >= 0 && { last }),
  });
  const contours = plan.order.map((contour): CutContour => {
    const { kind, chain } = defined(drawn[contour]);
    const joint = defined(choices[contour]?.[defined(plan.entries[contour])]);
    return { kind, curves: beginAt(chain, joint), closed: true, length: lengthOfChain(chain) };
  });
  return { contours, travel: plan.length };
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
