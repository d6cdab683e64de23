/**
 * Joins what strips have left of closed chains to closed loops again, along the strips' sides.
 *
 * Any new connection that stays within a strip leaves the winding numbers outside it as they were. Inside the strip
 * nothing may be filled; so where the border of the strip runs through an area with winding number w, |w| connections
 * must run along it (nonzero), or one where w is odd (evenodd). That settles where the connections run; at each
 * crossing exactly one chain ends, so they can always be paired.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import type { FillRule } from '../../geometry/base/polygon-types';
import { distance } from '../../geometry/base/vector';
import { borderPoint, cornerAt, type Strip } from '../strip/strip';
import type { Crossing, PathInterval, SplitPaths } from './clip-subpaths';
import { indexWindings, type RingWindings, windingNumber } from './winding-number';

export type LoopItem =
  | { readonly kind: 'stretch'; readonly stretch: PathInterval }
  /** A straight line along the side of a strip. */
  | { readonly kind: 'line'; readonly to: Point }
  /** A curve that is in nobody's text yet; `exact` where it ends at an end of one of the author's own. */
  | { readonly kind: 'curve'; readonly curve: Curve; readonly exact?: boolean };

/** A closed loop; its last item ends at `start`. */
export interface PathLoop {
  readonly start: Point;
  readonly items: readonly LoopItem[];
}

/** How far flattened curves may stay from the true ones, in widths of the narrowest strip: user units have no size. */
const FLATTENED_SHARE = 1e-4;

/** One end of a chain, as met on the way round a strip. */
interface End extends Crossing {
  readonly chain: number;
  /** Whether the chain goes into the strip here (its last point) or comes out (its first). */
  readonly entering: boolean;
  readonly subpath: number;
}

/** Two ends to be connected; `open` comes first on the way round the strip. */
interface Pair {
  readonly open: End;
  readonly close: End;
}

/**
 * @param subpaths the closed chains that decide what is filled: as a rule those given to `splitSubpaths`
 * @param weightOf how much a curve of a subpath counts when some must be turned round
 * @returns undefined where the curves run too close to a strip's side to tell inside from outside
 */
export function reconnectLoops(
  subpaths: readonly (readonly Curve[])[],
  split: SplitPaths,
  strips: readonly Strip[],
  fillRule: FillRule,
  weightOf: (subpath: number) => number = () => 1,
): PathLoop[] | undefined {
  const pairs: Pair[] = [];
  const rims: PathLoop[] = [];
  const filled = indexWindings(subpaths, Math.min(...strips.map(widthOf)) * FLATTENED_SHARE);
  const endsByStrip = endsOn(split, strips.length);
  for (const [index, strip] of strips.entries()) {
    checkpoint(10);
    const ends = defined(endsByStrip[index]);
    const windings = windingsBetween(ends, strip, filled);
    if (!windings) return undefined;
    pairs.push(...(fillRule === 'nonzero' ? pairByWinding(ends, windings) : pairByParity(ends, windings)));
    rims.push(...stripBorderLoops(strip, windings, fillRule));
  }
  return [...traceLoops(split, linksOf(pairs, strips), weightOf), ...rims];
}

/** For each strip, the ends on its border in the order in which they are met on the way round. */
function endsOn({ fragments: chains }: SplitPaths, strips: number): End[][] {
  const ends = Array.from({ length: strips }, (): End[] => []);
  chains.forEach(({ leaves, enters, stretches }, chain) => {
    const subpath = stretches[0]?.subpath ?? -1;
    ends[leaves.strip]?.push({ ...leaves, chain, subpath, entering: false });
    ends[enters.strip]?.push({ ...enters, chain, subpath, entering: true });
  });
  return ends.map((list) => list.sort((a, b) => a.place - b.place));
}

function widthOf(strip: Strip): number {
  return distance(cornerAt(strip, 1), cornerAt(strip, 2));
}

/** The winding number on the strip's border after each end, up to the next; one entry where there is no end at all. */
function windingsBetween(ends: readonly End[], strip: Strip, filled: RingWindings): number[] | undefined {
  const size = widthOf(strip);
  if (ends.length === 0) return [windingNumber(filled, cornerAt(strip, 0))];
  const gaps = ends.map((_, index) => gapAfter(ends, index, strip));
  const longest = gaps.reduce((best, gap, index) => (gap.length > (gaps[best]?.length ?? 0) ? index : best), 0);
  const windings = new Array<number>(ends.length).fill(0);
  let winding = windingNumber(filled, gaps[longest]?.middle ?? cornerAt(strip, 0));
  for (let step = 0; step < ends.length; step += 1) {
    const index = (longest + step) % ends.length;
    if (step > 0) winding += ends[index]?.entering ? -1 : 1;
    windings[index] = winding;
  }
  const told = gaps.every(
    ({ length, middle }, index) => length < size * 1e-2 || windingNumber(filled, middle) === windings[index],
  );
  return told ? windings : undefined;
}

function gapAfter(ends: readonly End[], index: number, strip: Strip): { length: number; middle: Point } {
  const from = ends[index]?.place ?? 0;
  const next = ends[(index + 1) % ends.length]?.place ?? 0;
  const to = index + 1 < ends.length ? next : next + 4;
  const stops = [from, ...cornersBetween(from, to), to];
  const sections = stops.slice(1).map((stop, at) => {
    const [a, b] = [sectionPoint(strip, defined(stops[at])), sectionPoint(strip, stop)];
    return { length: distance(a, b), middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } };
  });
  return sections.reduce((best, section) => (section.length > best.length ? section : best));
}

function sectionPoint(strip: Strip, place: number): Point {
  return borderPoint(strip, place % 4);
}

/** The whole numbers strictly between two places. */
function cornersBetween(from: number, to: number): number[] {
  const corners: number[] = [];
  for (let corner = Math.floor(from) + 1; corner < to; corner += 1) corners.push(corner);
  return corners;
}

/**
 * Walks round from an area without paint. Where |w| grows a connection opens, where it shrinks one closes: with the
 * subpath that opened it if that is among the open ones, so that overlapping subpaths stay apart.
 */
function pairByWinding(ends: readonly End[], windings: readonly number[]): Pair[] {
  const base = sharedWinding(windings);
  const first = windings.indexOf(base) + 1;
  const open: End[] = [];
  const pairs: Pair[] = [];
  for (let step = 0; step < ends.length; step += 1) {
    const index = (first + step) % ends.length;
    const end = defined(ends[index]);
    const before = Math.abs(defined(windings[(index + ends.length - 1) % ends.length]) - base);
    if (Math.abs(defined(windings[index]) - base) > before) {
      open.push(end);
      continue;
    }
    const own = open.findLastIndex((candidate) => candidate.subpath === end.subpath);
    const [opener] = open.splice(own < 0 ? open.length - 1 : own, 1);
    if (opener) pairs.push({ open: opener, close: end });
  }
  return pairs;
}

/** What all winding numbers along a border have in common: connections that run all the way round. */
function sharedWinding(windings: readonly number[]): number {
  if (windings.every((winding) => winding > 0)) return Math.min(...windings);
  return windings.every((winding) => winding < 0) ? Math.max(...windings) : 0;
}

function pairByParity(ends: readonly End[], windings: readonly number[]): Pair[] {
  const pairs: Pair[] = [];
  ends.forEach((open, index) => {
    const close = ends[(index + 1) % ends.length];
    if (close && defined(windings[index]) % 2 !== 0) pairs.push({ open, close });
  });
  return pairs;
}

/** Loops right round a strip that lies within a filled area, turning against the area's own winding. */
function stripBorderLoops(strip: Strip, windings: readonly number[], fillRule: FillRule): PathLoop[] {
  const shared = sharedWinding(windings);
  const parity = windings.length === 1 && shared % 2 !== 0 ? Math.sign(shared) : 0;
  const turns = fillRule === 'nonzero' ? shared : parity;
  const [a, b, c, d] = strip.corners;
  const round = turns > 0 ? [d, c, b, a] : [b, c, d, a];
  return new Array<PathLoop>(Math.abs(turns)).fill({ start: a, items: round.map(lineItem) });
}

function lineItem(to: Point): LoopItem {
  return { kind: 'line', to };
}

interface FragmentLink {
  readonly chain: number;
  /** Whether the chain linked to is run through from its first point to its last. */
  readonly forward: boolean;
  readonly route: readonly Point[];
}

/** Keyed by chain and end. */
type Links = ReadonlyMap<string, FragmentLink>;

function linksOf(pairs: readonly Pair[], strips: readonly Strip[]): Links {
  const links = new Map<string, FragmentLink>();
  for (const { open, close } of pairs) {
    const corners = cornersPassed(defined(strips[open.strip]), open, close);
    links.set(endKey(open.chain, open.entering), { ...linkTarget(close), route: [...corners, close.point] });
    links.set(endKey(close.chain, close.entering), { ...linkTarget(open), route: [...corners.reverse(), open.point] });
  }
  return links;
}

/** Loops run the way in which most of their curves were drawn. */
function traceLoops(split: SplitPaths, links: Links, weightOf: (subpath: number) => number): PathLoop[] {
  const seen = new Set<number>();
  const loops: PathLoop[] = [];
  split.fragments.forEach((_, chain) => {
    if (seen.has(chain)) return;
    const { loop, chains } = traceLoop(split, links, chain, true);
    chains.forEach((member) => seen.add(member));
    loops.push(forwardWeight(loop, weightOf) < 0 ? traceLoop(split, links, chain, false).loop : loop);
  });
  return loops;
}

/** Negative where more is turned round than not. */
function forwardWeight({ items }: PathLoop, weightOf: (subpath: number) => number): number {
  return items.reduce((sum, item) => {
    if (item.kind !== 'stretch') return sum;
    const { subpath, from, to } = item.stretch;
    return sum + Math.sign(to - from) * weightOf(subpath);
  }, 0);
}

function linkTarget(end: End): { chain: number; forward: boolean } {
  return { chain: end.chain, forward: !end.entering };
}

function endKey(chain: number, last: boolean): string {
  return `${chain} ${last}`;
}

/** The corners passed on the way round from one end to another. */
function cornersPassed(strip: Strip, open: End, close: End): Point[] {
  const to = close.place < open.place ? close.place + 4 : close.place;
  return cornersBetween(open.place, to).map((corner) => cornerAt(strip, corner));
}

function traceLoop(
  { fragments: chains }: SplitPaths,
  links: Links,
  first: number,
  forwardFirst: boolean,
): { loop: PathLoop; chains: number[] } {
  const items: LoopItem[] = [];
  const members: number[] = [];
  let [at, forward] = [first, forwardFirst];
  do {
    items.push(...fragmentItems(chains[at]?.stretches ?? [], forward));
    members.push(at);
    const link = links.get(endKey(at, forward));
    if (!link) break;
    items.push(...link.route.map(lineItem));
    ({ chain: at, forward } = link);
  } while (!(at === first && forward === forwardFirst) && members.length <= chains.length);
  const start = chains[first]?.[forwardFirst ? 'leaves' : 'enters'].point ?? { x: 0, y: 0 };
  return { loop: { start, items }, chains: members };
}

function fragmentItems(stretches: readonly PathInterval[], forward: boolean): LoopItem[] {
  const ordered = forward
    ? stretches
    : stretches.map((stretch) => ({ ...stretch, from: stretch.to, to: stretch.from })).reverse();
  return ordered.map((stretch) => ({ kind: 'stretch', stretch }));
}
