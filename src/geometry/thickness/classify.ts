/** Thin components as parts: classed and measured. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { joinBoxes } from '../base/ring';
import { type Chord, lengthOfChord } from './chord';
import { type Components, rootOf } from './components';
import { narrowestChord } from './narrowest-chord';
import { PocketFinder } from './pocket-area';
import { chordOfSpur, reachOfSpur } from './spur';
import { extentOfChain, lengthOfChain, type ThinBoundary } from './thin-boundary';
import type { ThinPart } from './types';

export interface PartSearch {
  readonly thin: ThinBoundary;
  readonly components: Components;
  /** Polygons marked here are passed over. */
  readonly skip: Uint8Array;
  /** mm: only narrower parts are wanted. */
  readonly limit: number;
  /** mm: only tips that reach farther are wanted. */
  readonly leastReach: number;
}

/**
 * A component is the part of the region's medial axis where the discs are smaller than the width. Each of its ends is a
 * last disc that fits; a chain runs along it from one end to the next. One open chain alone has one end and is a tip;
 * where there are more chains, there are more ends or a way round a hole, and it is a neck.
 */
export function describeComponents(search: PartSearch): ThinPart[] {
  const held = new PocketFinder(search.thin.boundary, search.thin.radius);
  const parts: ThinPart[] = [];
  for (const chains of groupChains(search)) {
    const part = chains.length > 1 ? describeNeck(search, chains, held) : describeSpur(search, defined(chains[0]));
    if (part) parts.push(part);
  }
  return parts;
}

/** The chains of each component; most are alone, as every convex corner has one. */
function* groupChains({ thin, components, skip }: PartSearch): Generator<readonly number[]> {
  const { chains, boundary } = thin;
  const size = new Int32Array(chains.count);
  for (let chain = 0; chain < chains.count; chain += 1) size[rootOf(components, chain)]! += 1;
  const groups = new Map<number, number[]>();
  for (let chain = 0; chain < chains.count; chain += 1) {
    checkpoint();
    if (skip[defined(boundary.outline.polygon[defined(chains.elementOf[defined(chains.first[chain])]) >> 1])] === 1)
      continue;
    const root = rootOf(components, chain);
    if (size[root] === 1) {
      if (chains.closed[chain] === 0) yield [chain];
      continue;
    }
    const group = groups.get(root);
    if (group) group.push(chain);
    else groups.set(root, [chain]);
  }
  yield* groups.values();
}

function describeNeck(
  { thin, components, limit }: PartSearch,
  chains: readonly number[],
  held: PocketFinder,
): ThinPart | undefined {
  const chord = narrowestChord(thin, components, chains);
  if (!chord || lengthOfChord(chord) >= limit) return undefined;
  const along = chains.reduce((sum, chain) => sum + lengthOfChain(thin, chain), 0) / 2;
  const extent = joinBoxes(chains.map((chain) => extentOfChain(thin, chain)));
  const holds = held.find(chord);
  return { ...measurePart(thin, 'neck', chord), length: along, reach: 0, sides: chains.length, extent, holds };
}

function describeSpur({ thin, limit, leastReach }: PartSearch, chain: number): ThinPart | undefined {
  const { reach, end } = reachOfSpur(thin, chain);
  if (reach <= leastReach) return undefined;
  const chord = chordOfSpur(thin, chain);
  if (lengthOfChord(chord) >= limit) return undefined;
  const length = lengthOfChain(thin, chain) / 2;
  return {
    ...measurePart(thin, 'tip', chord),
    length,
    reach,
    end,
    sides: 1,
    extent: extentOfChain(thin, chain),
    holds: undefined,
  };
}

function measurePart(
  { boundary }: ThinBoundary,
  kind: ThinPart['kind'],
  { from, to }: Chord,
): Pick<ThinPart, 'kind' | 'width' | 'from' | 'to' | 'polygon'> {
  return {
    kind,
    width: lengthOfChord({ from, to }),
    from: { x: from.x, y: from.y },
    to: { x: to.x, y: to.y },
    polygon: defined(boundary.outline.polygon[from.edge]),
  };
}
