/** What of a set of pixels no disc within the set covers. */
import type { Grid } from '../labels/box-blur';
import { Disc, edgeOf } from './discs';

/**
 * The pixels of a set that are too thin for a disc. The frame is no edge.
 * @param set 1 where a pixel is in it
 */
export class Thin {
  private readonly grid: Grid;
  private readonly disc: Disc;

  /** @param radius pixels */
  constructor(grid: Grid, radius: number) {
    this.grid = grid;
    // From a pixel's centre to its edge it is half a pixel. What is as far away as that is not in the disc.
    this.disc = new Disc(grid, radius + 0.5 - 1e-6);
  }

  of(set: Uint8Array): number[] {
    const { grid } = this;
    const core = set.slice();
    for (const at of edgeOf(grid, set, 0)) this.disc.mark(at, core, 0);
    const covered = core.slice();
    for (const at of edgeOf(grid, core, 1)) this.disc.mark(at, covered, 1);
    const thin: number[] = [];
    for (let at = 0; at < set.length; at += 1) if (set[at] === 1 && covered[at] === 0) thin.push(at);
    return thin;
  }
}
