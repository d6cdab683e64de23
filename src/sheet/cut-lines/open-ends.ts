/** Cut lines that do not close by themselves, put together where their ends meet. */

import Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { NEAR_EDGE } from '../../geometry/base/tolerances';
import { distance } from '../../geometry/base/vector';
import { ancestors, attributeOf } from '../../markup/query';
import type { Layer } from '../types';
import { type CutLine, cutLinesOf } from './index';

export interface OpenPath {
  /** In the order in which they meet. */
  readonly lines: readonly CutLine[];
  /** The two free ends; undefined where the lines come round to where they began. */
  readonly ends: readonly [Point, Point] | undefined;
}

/** mm: ends nearer than this are drawn as one place. */
const SAME_PLACE = NEAR_EDGE;

/** Marks of the print itself are lines on purpose. */
const REGISTER = 'data-tombolo-register';

export function openPathsOf(layer: Layer): OpenPath[] {
  const lines = cutLinesOf(layer).filter((line) => !line.closed && line.curves.length > 0 && !isRegister(line));
  const ends = lines.flatMap(({ curves }) => [curves[0]?.start as Point, curves.at(-1)?.end as Point]);
  const partners = pairUp(ends);
  const free = [...ends.keys()].filter((end) => !partners.has(end));
  const seen = new Set<number>();
  const chains: OpenPath[] = [];
  // From a free end a chain is walked through from end to end; what is left then comes round.
  for (const end of [...free, ...ends.keys()]) {
    if (seen.has(lineOf(end))) continue;
    const way = walk(end, partners, seen);
    const last = otherEnd(defined(way.at(-1)));
    chains.push({
      lines: way.map((each) => defined(lines[lineOf(each)])),
      ends: partners.has(last) ? undefined : [defined(ends[end]), defined(ends[last])],
    });
  }
  return chains;
}

function isRegister({ shape }: CutLine): boolean {
  return [shape.element, ...ancestors(shape.element)].some((element) => attributeOf(element, REGISTER));
}

/** Ends are numbered so that line n has the ends 2n and 2n + 1. */
const lineOf = (end: number): number => end >> 1;
const otherEnd = (end: number): number => end ^ 1;

/** Each end with the nearest end of another line, nearest pairs first. */
function pairUp(ends: readonly Point[]): ReadonlyMap<number, number> {
  const partners = new Map<number, number>();
  if (ends.length < 4) return partners;
  const tree = new Flatbush(ends.length);
  for (const { x, y } of ends) tree.add(x, y, x, y);
  tree.finish();
  const pairs = ends.flatMap((point, end) => {
    checkpoint(20);
    return tree
      .neighbors(point.x, point.y, 8, SAME_PLACE, (other) => lineOf(other) !== lineOf(end))
      .filter((other) => other > end)
      .map((other) => ({ end, other, gap: distance(point, defined(ends[other])) }));
  });
  for (const { end, other } of pairs.sort((a, b) => a.gap - b.gap)) {
    if (partners.has(end) || partners.has(other)) continue;
    partners.set(end, other);
    partners.set(other, end);
  }
  return partners;
}

/** The ends at which the lines of a chain are entered, one after the other. */
function walk(from: number, partners: ReadonlyMap<number, number>, seen: Set<number>): number[] {
  const way: number[] = [];
  for (let end: number | undefined = from; end !== undefined && !seen.has(lineOf(end)); ) {
    seen.add(lineOf(end));
    way.push(end);
    end = partners.get(otherEnd(end));
  }
  return way;
}
