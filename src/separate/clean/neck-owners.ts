/** For the pixels of a set at its thin places: which wide part of it each belongs to. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Bitmap } from '../bits/bitmap';
import { DiscShape } from '../bits/disc-shape';
import { NearestPixel } from '../bits/nearest-pixel';
import { overlayOf } from '../bits/overlay-of-parts';
import { type Part, partsOf } from '../bits/parts';
import { forRunsInRow } from '../bits/runs';
import { coresIn } from './cores';

/** What pixels are that belong to no part: beyond the set, not asked for yet, and thin. Parts are counted from 0. */
export const BEYOND = -3;
const UNASKED = -2;
export const THIN = -1;

/** The connected cores of a set, each with what its discs cover. */
export class Owners {
  /** By pixel; of those that are not thin only when they were asked for. */
  readonly of: Int32Array;
  /** The pixels in no disc of the least width within the set, and those that discs of several parts cover; ascending. */
  readonly thin: readonly number[];
  private readonly core: NearestPixel;

  /** @param radius pixels: half of the least width */
  constructor(set: Bitmap, radius: number) {
    const core = coresIn(set, radius);
    const reach = radius + 0.5;
    const parts = partsOf(core);
    const { some, several } = overlayOf(set, parts, new DiscShape(reach));
    this.core = new NearestPixel(core, reach);
    this.thin = parts.length === 0 ? [] : set.without(some.without(several).or(core)).pixels();
    this.of = new Int32Array(set.width * set.height);
    if (this.thin.length > 0) this.mark(set, parts);
  }

  private mark(set: Bitmap, parts: readonly Part[]): void {
    this.of.fill(BEYOND);
    for (let y = 0; y < set.height; y += 1) forRunsInRow(set, y, (start, stop) => this.of.fill(UNASKED, start, stop));
    parts.forEach(({ starts, stops }, number) => {
      checkpoint(starts.length);
      for (let run = 0; run < starts.length; run += 1) this.of.fill(number, defined(starts[run]), defined(stops[run]));
    });
    for (const at of this.thin) this.of[at] = THIN;
  }

  /** The part that a pixel belongs to, or why there is none. */
  at(pixel: number): number {
    const known = defined(this.of[pixel]);
    if (known !== UNASKED) return known;
    // Discs of one part alone cover it: the nearest core is of that part.
    const owner = defined(this.of[this.core.to(pixel)]);
    this.of[pixel] = owner;
    return owner;
  }
}
