/** Where a sheet that is too large is parted: away from bridges, marks and small detail as far as the tiles allow. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';

/** One way across the sheet, mm from its edge. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** What a joint should keep clear of; the weight is what each mm of it counts. */
export interface Detail extends Span {
  readonly weight: number;
}

/** mm: joints are tried at every one. */
const STEP = 1;

/**
 * Parts a length into as few tiles as there can be, each no longer than `longest`, neighbours overlapping by `overlap`. Of
 * all places for the overlaps those are taken that cover the least detail; of equal ones those that make tiles alike.
 * @returns undefined where the overlap leaves no room for a tile
 */
export function tilesAlong(
  length: number,
  longest: number,
  overlap: number,
  details: readonly Detail[],
): Span[] | undefined {
  if (length <= longest) return [{ from: 0, to: length }];
  if (longest <= overlap) return undefined;
  const count = Math.ceil((length - overlap) / (longest - overlap) - 1e-9);
  const covered = coverage(length, details);
  const costAt = (middle: number) => covered(middle + overlap / 2) - covered(middle - overlap / 2);
  const even = (length - overlap) / count;
  // Joint k lies where the tiles before it, and those behind it, still reach.
  let best = [{ at: -overlap / 2, cost: 0, joints: [] as readonly number[] }];
  for (let joint = 1; joint < count; joint += 1) {
    const low = Math.max(length - overlap / 2 - (count - joint) * (longest - overlap), overlap / 2);
    const high = Math.min(overlap / 2 + joint * (longest - overlap), length - overlap / 2);
    const places = [...placesBetween(low, high), Math.min(high, Math.max(low, joint * even + overlap / 2))];
    const next: typeof best = [];
    for (const at of places) {
      const reached = best.filter(
        (each) => beginOf(each.at, overlap) + longest >= at + overlap / 2 - 1e-9 && each.at < at,
      );
      checkpoint(reached.length);
      const uneven = Math.abs(at - joint * even - overlap / 2) * 1e-6;
      const chosen = reached.reduce<(typeof best)[number] | undefined>(
        (least, each) => (!least || each.cost < least.cost ? each : least),
        undefined,
      );
      if (chosen) next.push({ at, cost: chosen.cost + costAt(at) + uneven, joints: [...chosen.joints, at] });
    }
    best = next;
  }
  const last = best.filter(({ at }) => beginOf(at, overlap) + longest >= length - 1e-9);
  const { joints } = defined(last.reduce((least, each) => (each.cost < least.cost ? each : least), defined(last[0])));
  return Array.from({ length: count }, (_, i) => ({
    from: i === 0 ? 0 : defined(joints[i - 1]) - overlap / 2,
    to: i === count - 1 ? length : defined(joints[i]) + overlap / 2,
  }));
}

function beginOf(joint: number, overlap: number): number {
  return Math.max(0, joint - overlap / 2);
}

function placesBetween(low: number, high: number): number[] {
  return Array.from({ length: Math.floor((high - low) / STEP) + 1 }, (_, i) => low + i * STEP);
}

/** How much detail lies before a place: a sum that is kept for every hundredth of a millimetre of a step. */
function coverage(length: number, details: readonly Detail[]): (place: number) => number {
  const bins = new Float64Array(Math.ceil(length * 10) + 2);
  for (const { from, to, weight } of details) {
    const [first, last] = [Math.floor(Math.max(0, from) * 10), Math.ceil(Math.min(length, to) * 10)];
    checkpoint(last - first);
    for (let bin = first; bin < Math.max(last, first + 1) && bin < bins.length; bin += 1)
      bins[bin] = (bins[bin] as number) + weight;
  }
  for (let i = 1; i < bins.length; i += 1) bins[i] = (bins[i] as number) + (bins[i - 1] as number);
  return (place) => bins[Math.max(0, Math.min(bins.length - 1, Math.round(place * 10)))] ?? 0;
}
