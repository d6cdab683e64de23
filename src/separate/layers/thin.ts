/** What of a set of pixels no disc within the set covers. */
import type { Grid } from '../labels/box-blur';
import { edgeOf } from './discs';
import { SweptDisc } from './swept-disc';

/**
 * The pixels of a set that are too thin for a disc. The frame is no edge.
 * @param set 1 where a pixel is in it
 */
export class Thin {
  private readonly grid: Grid;
  private readonly disc: SweptDisc;

  /** @param radius pixels */
  constructor(grid: Grid, radius: number) {
    this.grid = grid;
    // From a pixel's centre to its edge it is half a pixel. What is as far away as that is not in the disc.
    this.disc = new SweptDisc(grid, radius + 0.5 - 1e-6);
  }

  of(set: Uint8Array): number[] {
    const { grid } = this;
    const core = set.slice();
    this.disc.mark(edgeOf(grid, set, 0), core, 0);
    const covered = core.slice();
    this.disc.mark(edgeOf(grid, core, 1), covered, 1);
    const thin: number[] = [];
    for (let at = 0; at < set.length; at += 1) if (set[at] === 1 && covered[at] === 0) thin.push(at);
    return thin;
  }
}
