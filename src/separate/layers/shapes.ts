/**
 * The outlines of a layer, put together to the connected openings that they bound. Islands that later paint covers are
 * painted as well: their outlines are left out, with those of what was cut in them.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Box, Ring } from '../../geometry/base/polygon-types';
import { boxContainsBox, boxOfRing, ringContains, signedArea } from '../../geometry/base/ring';
import type { PlanarMap } from '../map/planar-map';
import { type ArcRing, ringsAround } from '../map/rings';

export interface LayerShapes {
  /** For each connected opening its own outline, then those of the islands in it. */
  readonly shapes: readonly (readonly ArcRing[])[];
  /** How many islands there are. */
  readonly islands: number;
}

/** An outline with what lies directly in it. */
interface Nested {
  readonly ring: ArcRing;
  readonly flat: Ring;
  readonly box: Box;
  readonly isHole: boolean;
  readonly inner: Nested[];
}

/**
 * @param isInside whether a region is painted by the layer
 * @param isShown whether the layer's sheet must keep a region free: no later paint covers it
 */
export function shapesOf(
  map: PlanarMap,
  isInside: (region: number) => boolean,
  isShown: (region: number) => boolean,
): LayerShapes {
  const roots = nest(ringsAround(map, isInside).map((ring) => nestedOf(map, ring)));
  const flood = new Flood(map, isInside, isShown);
  const shapes: ArcRing[][] = [];
  let islands = 0;
  const addOpening = ({ ring, inner }: Nested): void => {
    const shape = [ring];
    shapes.push(shape);
    addHoles(inner, shape);
  };
  const addHoles = (holes: readonly Nested[], shape: ArcRing[]): void => {
    for (const hole of holes) {
      if (flood.isCovered([hole.ring, ...hole.inner.map(({ ring }) => ring)])) {
        for (const opening of hole.inner) addHoles(opening.inner, shape);
      } else {
        islands += 1;
        shape.push(hole.ring);
        hole.inner.forEach(addOpening);
      }
    }
  };
  roots.forEach(addOpening);
  return { shapes, islands };
}

function nestedOf({ arcs }: PlanarMap, ring: ArcRing): Nested {
  const points: number[] = [];
  for (const { arc, reversed } of ring) {
    const { points: own } = defined(arcs[arc]);
    for (let i = 0; i + 3 < own.length; i += 2) {
      const at = reversed ? own.length - 2 - i : i;
      points.push(defined(own[at]), defined(own[at + 1]));
    }
  }
  const flat = Float64Array.from(points);
  // Painted ground is on the left, which is the outside where the outline runs clockwise on the screen.
  return { ring, flat, box: boxOfRing(flat), isHole: signedArea(flat) > 0, inner: [] };
}

/** The outlines that lie in no other; the others become the inner ones of the smallest that holds them. */
function nest(all: readonly Nested[]): Nested[] {
  const bySize = [...all].sort((a, b) => Math.abs(signedArea(a.flat)) - Math.abs(signedArea(b.flat)));
  return bySize.filter((own, i) => {
    checkpoint(bySize.length);
    // A point of the outline that is no junction: others cannot pass through it.
    const point = { x: defined(own.flat[2]), y: defined(own.flat[3]) };
    const parent = bySize
      .slice(i + 1)
      .find(
        (other) => other.isHole !== own.isHole && boxContainsBox(other.box, own.box) && ringContains(other.flat, point),
      );
    parent?.inner.push(own);
    return !parent;
  });
}

/** Looks through islands for what later paint does not cover. */
class Flood {
  private readonly map: PlanarMap;
  private readonly isInside: (region: number) => boolean;
  private readonly isShown: (region: number) => boolean;
  private seen: Uint8Array | undefined;

  constructor(map: PlanarMap, isInside: (region: number) => boolean, isShown: (region: number) => boolean) {
    this.map = map;
    this.isInside = isInside;
    this.isShown = isShown;
  }

  /** @param outlines all that bound the island */
  isCovered(outlines: readonly ArcRing[]): boolean {
    const { grid, arcs } = this.map;
    const { regions, across } = grid;
    this.seen ??= new Uint8Array(regions.length);
    const { seen } = this;
    const open: number[] = [];
    const add = (at: number): void => {
      if (seen[at] === 1 || this.isInside(defined(regions[at]))) return;
      seen[at] = 1;
      open.push(at);
    };
    for (const outline of outlines) {
      for (const { arc } of outline) {
        for (const edge of defined(arcs[arc]).edges) {
          add(edge >> 1);
          add(edge & 1 ? (edge >> 1) + across : (edge >> 1) + 1);
        }
      }
    }
    // The list grows while it is gone through. An island ends before the rim of the grid.
    for (const at of open) {
      checkpoint(4);
      if (this.isShown(defined(regions[at]))) return false;
      add(at - 1);
      add(at + 1);
      add(at - across);
      add(at + across);
    }
    return true;
  }
}
