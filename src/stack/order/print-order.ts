/** Which layers must stay over which, so that another order prints the same picture. Millimetres, y down. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Region } from '../../geometry/base/polygon-types';
import { boxesTouch, joinBoxes } from '../../geometry/base/ring';
import { boxOfPolygon, difference, intersection, union } from '../../geometry/boolean/index';
import { isWithin, withoutHairlines } from '../covered-by-later';

export interface PaintedLayer {
  /** What is painted through the sheet, as cut, without register marks. */
  readonly painted: Region;
  /** `#rrggbb` */
  readonly paint: string;
}

/** A layer that lies under the visible ground of another one. */
interface Overlap {
  readonly under: number;
  readonly ground: Region;
}

/**
 * For each layer the set of those that must be sprayed after it, as a bit mask. An order is allowed if the print is the
 * same outside the slip: where a layer is seen, every layer of another paint that lies under it stays under it. Layers
 * may change places only where they overlap in a band along the border that both show there, as colours do that were
 * extended under each other: where all that would change hands lies within `slip` mm of what is still seen of the one
 * layer and of what was seen of the other, whichever others change places too.
 * @param layers in the present order, first sprayed first
 */
export function layersAfter(layers: readonly PaintedLayer[], slip: number): number[] {
  const after = layers.map(() => 0);
  const seen = seenOf(layers);
  layers.forEach((_, top) => {
    const overlaps = overlapsUnder(layers, seen, top);
    const bands = overlaps.filter(
      ({ under, ground }) =>
        slip > 0 &&
        isWithin(ground, slip, defined(seen[under])) &&
        isWithin(ground, slip, difference(defined(seen[top]), ground)),
    );
    const kept = difference(defined(seen[top]), union(bands.map(({ ground }) => ground)));
    const free = new Set(bands.filter(({ ground }) => isWithin(ground, slip, kept)));
    for (const overlap of overlaps) {
      if (!free.has(overlap)) after[overlap.under] = defined(after[overlap.under]) | (1 << top);
    }
  });
  return after;
}

/** What of each layer no later one covers. */
function seenOf(layers: readonly PaintedLayer[]): Region[] {
  let covered: Region = [];
  return layers
    .toReversed()
    .map(({ painted }) => {
      checkpoint(50);
      const seen = difference(painted, covered);
      covered = union([covered, painted]);
      return seen;
    })
    .reverse();
}

function overlapsUnder(layers: readonly PaintedLayer[], seen: readonly Region[], top: number): Overlap[] {
  const { paint } = defined(layers[top]);
  const ground = defined(seen[top]);
  return layers.slice(0, top).flatMap((layer, under) => {
    checkpoint(50);
    const overlap = layer.paint === paint ? [] : withoutHairlines(overlapOf(layer.painted, ground));
    return overlap.length > 0 ? [{ under, ground: overlap }] : [];
  });
}

/** Only of the polygons whose boxes meet the other's: most of a layer lies elsewhere. */
export function overlapOf(region: Region, other: Region): Region {
  if (other.length === 0) return [];
  const box = joinBoxes(other.map(boxOfPolygon));
  const near = region.filter((polygon) => boxesTouch(boxOfPolygon(polygon), box));
  return near.length === 0 ? [] : intersection(near, other);
}
