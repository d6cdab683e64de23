/** Words: letters that stand side by side, with the line on which each counter is tied. Sheet mm. */
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Box, Region, Ring } from '../../../geometry/base/polygon-types';
import { pointsOf, ringsOf } from '../../../geometry/base/ring';
import { buildSegmentIndex, nearestSegment, type SegmentIndex } from '../../../geometry/spatial/segment-index';
import { countersOnLine, type LetterIsland } from './counter-lines';
import { boxIn, type Frame, framesFor } from './frame';
import { type RowRules, standingRows } from './standing-rows';
import { standIn, stemDirection } from './stems';
import type { Counter, LetterRow } from './types';

/** Letters that are cut one by one, and counters of letters that are joined, as those of a script are. */
const LETTERS: RowRules = { heights: 2.6, gap: 1.2, reach: 0.6 };
const COUNTERS: RowRules = { heights: 2.2, gap: 4, reach: 0.3 };

/** Counters that stand one above the other have so much of the narrower one's width in common. */
const ABOVE = 0.6;

interface Letters {
  readonly islands: readonly LetterIsland[];
  readonly openings: Region;
  /** For each island the number of the opening around it. */
  readonly around: ReadonlyMap<number, number>;
}

export function letterRowsOf(islands: readonly LetterIsland[], openings: Region, edges: SegmentIndex): LetterRow[] {
  const letters = { islands, openings, around: openingsAround(islands, openings) };
  const rows: LetterRow[] = [];
  const placed = new Set<number>();
  const [level, ...turned] = framesFor(openings);
  const add = (found: readonly FoundRow[], frame: Frame): void => {
    for (const { members, shapes } of found) {
      const left = members.filter(({ piece }) => !placed.has(piece));
      const row = rowFrom(left, shapes, frame, edges);
      if (row) rows.push(row);
      for (const { piece } of row?.counters ?? []) placed.add(piece);
    }
  };
  add([...rowsOfLetters(letters, level), ...rowsOfCounters(letters, level)], level);
  for (const frame of turned) add(turnedRows(letters, frame), frame);
  return rows;
}

interface FoundRow {
  readonly members: readonly LetterIsland[];
  /** The outlines of each letter, which show how the stems run. */
  readonly shapes: readonly (readonly Ring[])[];
}

function rowsOfLetters({ islands, openings, around }: Letters, frame: Frame): FoundRow[] {
  const boxes = openings.map(({ outer }) => boxIn(frame, outer));
  return standingRows(boxes, LETTERS).map((row) => ({
    members: islands.filter(({ piece }) => row.includes(around.get(piece) ?? -1)),
    shapes: row.map((number) => ringsOf(defined(openings[number]))),
  }));
}

function rowsOfCounters({ islands, openings, around }: Letters, frame: Frame): FoundRow[] {
  const boxes = islands.map(({ outer }) => boxIn(frame, outer));
  return standingRows(boxes, COUNTERS).map((row) => {
    const members = row.map((number) => defined(islands[number]));
    const near = [...new Set(members.map(({ piece }) => around.get(piece) ?? -1))];
    return { members, shapes: near.flatMap((number) => (openings[number] ? [ringsOf(openings[number])] : [])) };
  });
}

/** A column of bars or windows is no word on its side: letters have counters, more than one of them, and stems. */
function turnedRows(letters: Letters, frame: Frame): FoundRow[] {
  return rowsOfLetters(letters, frame).filter(({ members, shapes }) => {
    const withCounters = new Set(members.map(({ piece }) => letters.around.get(piece)));
    return withCounters.size > 1 && standIn(shapes, frame);
  });
}

/** Each island lies in a hole of one opening. */
function openingsAround(islands: readonly LetterIsland[], openings: Region): Map<number, number> {
  const index = buildSegmentIndex(openings);
  return new Map(
    islands.map(({ piece, outer }) => {
      const [start = { x: 0, y: 0 }] = pointsOf(outer.slice(0, 2));
      const near = nearestSegment(index, start);
      return [piece, near ? defined(index.polygon[near.edge]) : -1];
    }),
  );
}

function rowFrom(
  islands: readonly LetterIsland[],
  shapes: readonly (readonly Ring[])[],
  frame: Frame,
  edges: SegmentIndex,
): LetterRow | undefined {
  if (islands.length === 0) return undefined;
  const along = stemDirection(shapes, frame);
  const across: Frame = { right: { x: -along.y, y: along.x }, up: along };
  const counters = stacksOf(islands, across).flatMap((stack) => countersOfStack(stack, along, edges));
  const place = ({ at }: Counter) => at.x * across.right.x + at.y * across.right.y;
  return counters.length > 0 ? { along, counters: counters.sort((a, b) => place(a) - place(b)) } : undefined;
}

/** On one line where there is one for all, else each on its own. */
function countersOfStack(stack: readonly LetterIsland[], along: Point, edges: SegmentIndex): readonly Counter[] {
  const joint = countersOnLine(stack, along, edges);
  return joint.length > 0 || stack.length === 1 ? joint : stack.flatMap((one) => countersOnLine([one], along, edges));
}

function stacksOf(islands: readonly LetterIsland[], frame: Frame): LetterIsland[][] {
  const stacks: { box: Box; members: LetterIsland[] }[] = [];
  for (const island of islands) {
    const box = boxIn(frame, island.outer);
    const stack = stacks.find((other) => areAbove(other.box, box));
    if (stack) stack.members.push(island);
    else stacks.push({ box, members: [island] });
  }
  return stacks.map(({ members }) => members);
}

function areAbove(a: Box, b: Box): boolean {
  const common = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  const narrower = Math.min(a.maxX - a.minX, b.maxX - b.minX);
  return common >= ABOVE * narrower;
}
