/** Runs the search and both other ways on many polygons, and counts where they differ. */
import type { Region } from '../../../src/geometry/base/polygon-types';
import { findThinParts } from '../../../src/geometry/thickness/index';
import { judgeByErosion } from './erosion';
import { judgeByPixels } from './raster-judge';

const TOLERANCE = 0.006;

export interface Tally {
  polygons: number;
  necks: number;
  tips: number;
  wholes: number;
  /** Polygons that polygon offset cannot judge, and necks that pixels cannot. */
  unclear: number;
  readonly differences: string[];
}

export function emptyTally(): Tally {
  return { polygons: 0, necks: 0, tips: 0, wholes: 0, unclear: 0, differences: [] };
}

/** `pixels`: how many make the width; none for the comparison with polygon offset alone. */
export function compareWays(tally: Tally, name: string, region: Region, width: number, pixels: number): void {
  region.forEach((polygon, number) => {
    const parts = findThinParts([polygon], width, { tolerance: TOLERANCE });
    const count = (kind: string): number => parts.filter((part) => part.kind === kind).length;
    tally.polygons += 1;
    tally.necks += count('neck');
    tally.tips += count('tip');
    tally.wholes += count('whole');
    const { wrong } = judgeByErosion(polygon, parts, width, TOLERANCE);
    if (!wrong) tally.unclear += 1;
    const differences = [...(wrong ?? [])];
    if (pixels > 0) {
      const { missed, invented, unclear } = judgeByPixels(polygon, parts, width, width / pixels);
      tally.unclear += unclear;
      differences.push(...missed, ...invented);
    }
    if (differences.length === 0) return;
    tally.differences.push(`${name}, polygon ${number}, ${width} mm: ${differences.join('; ')}`);
  });
}

export function describeTally({ polygons, necks, tips, wholes, unclear, differences }: Tally): string {
  const found = `${necks} necks, ${tips} tips, ${wholes} thin as a whole`;
  return `${polygons} polygons: ${found}; ${unclear} unclear, ${differences.length} judged differently`;
}
