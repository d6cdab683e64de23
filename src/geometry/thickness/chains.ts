/** Thin chains: thin stretches that follow each other without a gap along a ring. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { JOINT } from './blocked-intervals';
import type { Outline } from './boundary-arrays';
import { sizeOf } from './tangent-disc';
import type { ThinIntervals } from './thin-intervals';

export interface Chains {
  readonly count: number;
  /** The chain of each stretch. */
  readonly chainOf: Int32Array;
  /** The element of each stretch. */
  readonly elementOf: Int32Array;
  /** First and last stretch of each chain; the first comes after the last where the chain runs over its ring's seam. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** 1 for chains that go all the way round their ring. */
  readonly closed: Uint8Array;
}

export function buildChains(outline: Outline, stretches: ThinIntervals): Chains {
  const size = stretches.from.length;
  const building: Building = {
    chainOf: new Int32Array(size),
    elementOf: new Int32Array(size),
    first: [],
    last: [],
    closed: [],
  };
  for (let ring = 0; ring + 1 < outline.ringStart.length; ring += 1) chainRing(outline, stretches, ring, building);
  return {
    count: building.first.length,
    chainOf: building.chainOf,
    elementOf: building.elementOf,
    first: Int32Array.from(building.first),
    last: Int32Array.from(building.last),
    closed: Uint8Array.from(building.closed),
  };
}

interface Building {
  readonly chainOf: Int32Array;
  readonly elementOf: Int32Array;
  readonly first: number[];
  readonly last: number[];
  readonly closed: number[];
}

function chainRing(outline: Outline, stretches: ThinIntervals, ring: number, building: Building): void {
  const [start, end] = [2 * defined(outline.ringStart[ring]), 2 * defined(outline.ringStart[ring + 1])];
  const firstChain = building.first.length;
  let open = false;
  let whole = true;
  for (let element = start; element < end; element += 1) {
    checkpoint(3);
    const size = sizeOf(outline, element);
    if (size === 0) continue;
    const [low, high] = [defined(stretches.first[element]), defined(stretches.first[element + 1])];
    whole = whole && high === low + 1 && isWhole(stretches, low, size);
    if (low === high) open = false;
    for (let stretch = low; stretch < high; stretch += 1) {
      if (!open || defined(stretches.from[stretch]) > JOINT) startChain(building, stretch);
      building.last[building.last.length - 1] = stretch;
      building.chainOf[stretch] = building.first.length - 1;
      building.elementOf[stretch] = element;
      open = defined(stretches.to[stretch]) >= size - JOINT;
    }
  }
  const lastChain = building.first.length - 1;
  if (whole) building.closed[lastChain] = 1;
  else if (open && lastChain > firstChain) {
    joinOverSeam(stretches, building, firstChain, sizeOf(outline, start) > 0 ? start : start + 1);
  }
}

function isWhole(stretches: ThinIntervals, stretch: number, size: number): boolean {
  return defined(stretches.from[stretch]) <= JOINT && defined(stretches.to[stretch]) >= size - JOINT;
}

function startChain(building: Building, stretch: number): void {
  building.first.push(stretch);
  building.last.push(stretch);
  building.closed.push(0);
}

/** The ring's last chain reaches its end: where the first one begins at its start, the two are one. */
function joinOverSeam(stretches: ThinIntervals, building: Building, firstChain: number, firstElement: number): void {
  const seam = defined(building.first[firstChain]);
  if (building.elementOf[seam] !== firstElement || defined(stretches.from[seam]) > JOINT) return;
  const from = building.first.pop()!;
  const last = building.last.pop()!;
  building.closed.pop();
  for (let stretch = from; stretch <= last; stretch += 1) building.chainOf[stretch] = firstChain;
  building.first[firstChain] = from;
}

/** Calls back with the stretches of the chain in the order of its course. */
export function forEachInterval(
  chains: Chains,
  stretches: ThinIntervals,
  outline: Outline,
  chain: number,
  visit: (stretch: number) => void,
): void {
  const [from, last] = [defined(chains.first[chain]), defined(chains.last[chain])];
  if (from <= last) {
    for (let stretch = from; stretch <= last; stretch += 1) visit(stretch);
    return;
  }
  const ring = defined(outline.ring[defined(chains.elementOf[from]) >> 1]);
  const seam = defined(stretches.first[2 * defined(outline.ringStart[ring])]);
  const end = defined(stretches.first[2 * defined(outline.ringStart[ring + 1])]);
  for (let stretch = from; stretch < end; stretch += 1) visit(stretch);
  for (let stretch = seam; stretch <= last; stretch += 1) visit(stretch);
}
