/** A few colours that stand for many: k-means in OKLab, deterministic. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Rgb } from '../raster';
import type { Bin } from './histogram';
import { nearestOf, type Oklab, oklabOf, rgbOfOklab, squaredDistance } from './oklab';

const MOST_ROUNDS = 40;

/** Squared distance in OKLab by which all colours together move in a round that is the last. */
const AT_REST = 1e-10;

/** So many of the worst served colours are tried as the next one. */
const TRIED = 48;

/** Of so few colours each is tried in place of each centre, where that is asked for. */
const FEW = 64;

/** What an exchange must take off the sum of squared distances. */
const BETTER = 1e-6;

interface Weighted {
  readonly place: Oklab;
  readonly weight: number;
}

/**
 * @param fixed colours that may not move; they come first
 * @param count of all colours together; fewer are given where the picture has fewer
 * @param exchange whether others are tried in place of those that are found first
 */
export function clusterColours(
  bins: readonly Bin[],
  count: number,
  fixed: readonly Rgb[] = [],
  exchange = false,
): Rgb[] {
  const points = bins.map(({ colour, count: weight }): Weighted => ({ place: oklabOf(colour), weight }));
  const first = settled(points, seeds(points, count, fixed.map(oklabOf)), fixed.length);
  const centres = exchange && points.length <= FEW ? exchanged(points, first, fixed.length) : first;
  return [...fixed, ...centres.slice(fixed.length).map(rgbOfOklab)];
}

function settled(points: readonly Weighted[], start: readonly Oklab[], fixed: number): Oklab[] {
  const centres = [...start];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    checkpoint(points.length * centres.length);
    if (moveToMeans(points, centres, fixed) < AT_REST) break;
  }
  return centres;
}

/**
 * The centres, one after the other in another place as long as that is better: the best colours to begin with may not be among
 * the best few, as where two large areas of nearly one colour come first and a small bright one would be given to either.
 */
function exchanged(points: readonly Weighted[], start: readonly Oklab[], fixed: number): readonly Oklab[] {
  let centres = start;
  let least = errorOf(points, centres);
  for (let i = fixed; i < centres.length; i += 1) {
    for (const { place } of points) {
      const other = settled(points, centres.with(i, place), fixed);
      const error = errorOf(points, other);
      if (error >= (1 - BETTER) * least) continue;
      [centres, least, i] = [other, error, fixed - 1];
      break;
    }
  }
  return centres;
}

function errorOf(points: readonly Weighted[], centres: readonly Oklab[]): number {
  return points.reduce((sum, { place, weight }) => sum + weight * squaredToNearest(centres, place), 0);
}

/** From the heaviest on, each next one that lowers the sum of squared distances most. */
function seeds(points: readonly Weighted[], count: number, fixed: readonly Oklab[]): Oklab[] {
  const centres = [...fixed];
  const error = Float64Array.from(points, ({ place }) => squaredToNearest(centres, place));
  while (centres.length < count) {
    const next = centres.length === 0 ? heaviest(points) : worstServed(points, error);
    if (next === undefined) break;
    centres.push(next);
    points.forEach(({ place }, i) => {
      error[i] = Math.min(defined(error[i]), squaredDistance(place, next));
    });
  }
  return centres;
}

function squaredToNearest(centres: readonly Oklab[], place: Oklab): number {
  return centres.reduce((least, centre) => Math.min(least, squaredDistance(centre, place)), Infinity);
}

function heaviest(points: readonly Weighted[]): Oklab | undefined {
  return points.reduce<Weighted | undefined>(
    (most, point) => (most === undefined || point.weight > most.weight ? point : most),
    undefined,
  )?.place;
}

function worstServed(points: readonly Weighted[], error: Float64Array): Oklab | undefined {
  const badness = (i: number): number => defined(error[i]) * defined(points[i]).weight;
  const worst = [...points.keys()].sort((a, b) => badness(b) - badness(a)).slice(0, TRIED);
  let best: Oklab | undefined;
  let least = Infinity;
  for (const candidate of worst) {
    if (badness(candidate) <= 0) break;
    checkpoint(points.length);
    const { place } = defined(points[candidate]);
    let sum = 0;
    for (let i = 0; i < points.length; i += 1) {
      const { place: other, weight } = defined(points[i]);
      sum += Math.min(defined(error[i]), squaredDistance(other, place)) * weight;
    }
    if (sum >= least) continue;
    least = sum;
    best = place;
  }
  return best;
}

/** @returns by how much the centres moved, squared */
function moveToMeans(points: readonly Weighted[], centres: Oklab[], fixed: number): number {
  const sums = centres.map(() => [0, 0, 0, 0] as [number, number, number, number]);
  for (const { place, weight } of points) {
    const sum = defined(sums[nearestOf(centres, place)]);
    for (const axis of [0, 1, 2] as const) sum[axis] += weight * place[axis];
    sum[3] += weight;
  }
  let moved = 0;
  sums.forEach(([l, a, b, weight], i) => {
    if (i < fixed || weight === 0) return;
    const mean: Oklab = [l / weight, a / weight, b / weight];
    moved += squaredDistance(mean, defined(centres[i]));
    centres[i] = mean;
  });
  return moved;
}
