import type { Region, Ring } from '../geometry/region';

/** The region as large by `factor`, about the origin. */
export function scaleRegion(region: Region, factor: number): Region {
  if (factor === 1) return region;
  const scaleRing = (ring: Ring): Ring => ring.map((value) => value * factor);
  return region.map(({ outer, holes }) => ({ outer: scaleRing(outer), holes: holes.map(scaleRing) }));
}
