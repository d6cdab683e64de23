/** Puts holes into the outer rings they belong to. */

import type Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { pointInside } from '../base/point-inside';
import type { Box, Region, Ring } from '../base/polygon-types';
import { boxContainsBox, boxOfRing, ringContains, signedArea } from '../base/ring';
import { indexBoxes } from '../spatial/clusters';

interface Outer {
  readonly ring: Ring;
  readonly box: Box;
  readonly area: number;
  readonly holes: Ring[];
}

/**
 * A region from rings that do not cross each other (they may touch): rings of positive area are outer ones, rings of
 * negative area holes, each held by the smallest outer ring round it. Rings without area are dropped, and so are
 * holes that nothing holds.
 */
export function nestRings(rings: readonly Ring[]): Region {
  const outers: Outer[] = [];
  const holes: { ring: Ring; area: number }[] = [];
  for (const ring of rings) {
    checkpoint(10 + ring.length / 4);
    const area = signedArea(ring);
    if (area > 0) outers.push({ ring, box: boxOfRing(ring), area, holes: [] });
    else if (area < 0) holes.push({ ring, area: -area });
  }
  const [only, another] = outers;
  if (only && !another) for (const { ring } of holes) only.holes.push(ring);
  else if (another && holes.length > 0) placeHoles(outers, holes);
  return outers.map(({ ring, holes: held }) => ({ outer: ring, holes: held }));
}

function placeHoles(outers: readonly Outer[], holes: readonly { ring: Ring; area: number }[]): void {
  const index = indexBoxes(outers.map((outer) => outer.box));
  for (const hole of holes) holderOf(hole.ring, hole.area, outers, index)?.holes.push(hole.ring);
}

/** An island inside the hole is smaller than the hole, the holder larger: so areas tell them apart. */
function holderOf(hole: Ring, area: number, outers: readonly Outer[], index: Flatbush): Outer | undefined {
  const box = boxOfRing(hole);
  const around = index
    .search(box.minX, box.minY, box.maxX, box.maxY)
    .map((found) => {
      checkpoint();
      return defined(outers[found]);
    })
    .filter((outer) => outer.area >= area && boxContainsBox(outer.box, box))
    .sort((a, b) => a.area - b.area);
  if (around.length < 2) return around[0];
  const inside = pointInside(hole);
  return around.find((outer) => ringContains(outer.ring, inside)) ?? around.at(-1);
}
