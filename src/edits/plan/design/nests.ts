/**
 * Islands that lie one in another, and the lines on which one cut of the knife bridges them all: straight through the
 * whole nest, as targets and ripples are bridged. Common practice, no source. Sheet mm.
 */
import { checkpoint } from '../../../base/checkpoint';
import type { Point } from '../../../geometry/base/curve-types';
import type { Box, Polygon } from '../../../geometry/base/polygon-types';
import { boxContainsBox, boxOfRing, ringContains } from '../../../geometry/base/ring';
import { cross } from '../../../geometry/base/vector';
import type { SegmentIndex } from '../../../geometry/spatial/segment-index';
import { countersOnLine, countersThrough } from './counter-lines';
import type { Counter, Mirror, Nest } from './types';

export interface NestedIsland {
  readonly piece: number;
  readonly polygon: Polygon;
  /** A point on it. */
  readonly label: Point;
}

/** More islands than this are not looked at: each is compared with each. */
const MOST = 400;

/**
 * Islands each of which lies in the one before it, and nothing else does.
 * @param inWords islands that have a line of their own
 */
export function nestedChains(islands: readonly NestedIsland[], inWords: ReadonlySet<number>): NestedIsland[][] {
  return islands.length > MOST ? [] : chainsOf(islands.filter(({ piece }) => !inWords.has(piece)));
}

/** @param mirrors a nest that lies on axes is bridged along these */
export function nestsOf(chains: readonly NestedIsland[][], edges: SegmentIndex, mirrors: readonly Mirror[]): Nest[] {
  return chains.flatMap((chain) => {
    const stack = chain.map(({ piece, polygon: { outer } }) => ({ piece, outer }));
    const found: (LineRule & { readonly line: readonly Counter[] })[] = [];
    for (const { along, point } of [...axesOf(chain, mirrors), ...PLAIN]) {
      if (found.length === LINES || found.some((other) => Math.abs(cross(other.along, along)) < CROSSING)) continue;
      const line = point ? countersThrough(stack, point, along, edges) : countersOnLine(stack, along, edges);
      if (line.length > 0 && line.every(({ places }) => places.length === 2)) found.push({ along, line });
    }
    return found.length > 0 ? [{ lines: found.map(({ line }) => line) }] : [];
  });
}

/** An island that is mirrored about so many axes is round. */
const ROUND = 4;

/** Without the slanted axes of circles that lie in each other: there always is one for two of them, and nobody sees it. */
export function withoutChance(mirrors: readonly Mirror[], chains: readonly NestedIsland[][]): Mirror[] {
  const nested = chains.map((chain) => new Set(chain.map(({ piece }) => piece)));
  const axes = (piece: number): number => mirrors.filter(({ images }) => images.get(piece) === piece).length;
  return mirrors.filter((mirror) => {
    const pairs = [...mirror.images];
    if (pairs.length < 2 || isPlain(mirror)) return true;
    return !nested.some((chain) =>
      pairs.every(([piece, image]) => piece === image && chain.has(piece) && axes(piece) >= ROUND),
    );
  });
}

/** A cross is enough; the sine of the angle from which on two lines make one. */
const LINES = 2;
const CROSSING = 0.5;

/** Where it runs, if not where it crosses the gaps best. */
interface LineRule {
  readonly along: Point;
  readonly point?: Point;
}

/** The calmest. */
const PLAIN: readonly LineRule[] = [{ along: { x: 0, y: -1 } }, { along: { x: 1, y: 0 } }];

function chainsOf(islands: readonly NestedIsland[]): NestedIsland[][] {
  const boxed = islands.map((island): Boxed => ({ island, box: boxOfRing(island.polygon.outer) }));
  const inner = new Map<NestedIsland | undefined, NestedIsland[]>();
  for (const each of boxed) {
    const { island } = each;
    const around = innermostAround(each, boxed)?.island;
    inner.set(around, [...(inner.get(around) ?? []), island]);
  }
  const isLink = (island: NestedIsland): boolean => inner.get(island)?.length === 1;
  const linked = new Set(islands.filter(isLink).flatMap((island) => inner.get(island) ?? []));
  const starts = islands.filter((island) => isLink(island) && !linked.has(island));
  return starts.map((start) => {
    const chain = [start];
    for (const each of chain) if (isLink(each)) chain.push(...(inner.get(each) ?? []));
    return chain;
  });
}

interface Boxed {
  readonly island: NestedIsland;
  readonly box: Box;
}

function innermostAround({ island, box }: Boxed, all: readonly Boxed[]): Boxed | undefined {
  checkpoint(all.length);
  let found: Boxed | undefined;
  for (const other of all) {
    if (other.island === island || !boxContainsBox(other.box, box)) continue;
    if (!ringContains(other.island.polygon.outer, island.label)) continue;
    if (!found || boxContainsBox(found.box, other.box)) found = other;
  }
  return found;
}

/**
 * Those that all of the islands are mirrored about, and upright and level ones that two of them are: a line beside these
 * would look like a mistake. Two circles alone always have one that runs anyhow.
 */
function axesOf(chain: readonly NestedIsland[], mirrors: readonly Mirror[]): LineRule[] {
  const onIt = ({ images }: Mirror): number => chain.filter(({ piece }) => images.get(piece) === piece).length;
  return mirrors
    .filter((mirror) => onIt(mirror) === chain.length || (isPlain(mirror) && onIt(mirror) > 1))
    .sort((a, b) => onIt(b) - onIt(a) || Number(isPlain(b)) - Number(isPlain(a)))
    .map(({ along, point }) => ({ along, point }));
}

function isPlain({ along: { x, y } }: Mirror): boolean {
  return x === 0 || y === 0;
}
