/** For the pixels of a set at its thin places: which wide part of it each belongs to. */
import { Bitmap } from '../bits/bitmap';
import { DiscShape } from '../bits/disc-shape';
import { NearestPixel } from '../bits/nearest-pixel';
import { overlayOf } from '../bits/overlay-of-parts';
import { type Parts, partsOf } from '../bits/parts';
import { coresIn } from './cores';

/** What pixels are that belong to no part: beyond the set, and thin. Parts are counted from 0. */
export const BEYOND = -2;
export const THIN = -1;

/** The connected cores of a set, each with what its discs cover. */
export class Owners {
  /** The pixels in no disc of the least width within the set, and those that discs of several parts cover; ascending. */
  readonly thin: readonly number[];
  private readonly set: Bitmap;
  private readonly isThin: Bitmap;
  private readonly parts: Parts;
  private readonly core: NearestPixel;
  /** By pixel: few lie at thin places. */
  private readonly known = new Map<number, number>();

  /** @param radius pixels: half of the least width */
  constructor(set: Bitmap, radius: number) {
    const core = coresIn(set, radius);
    const reach = radius + 0.5;
    this.set = set;
    this.parts = partsOf(core);
    this.core = new NearestPixel(core, reach);
    const { some, several } = overlayOf(set, this.parts.list, new DiscShape(reach));
    this.isThin = this.parts.list.length === 0 ? new Bitmap(set) : set.without(some.without(several).or(core));
    this.thin = this.isThin.pixels();
  }

  /** The part that a pixel belongs to, or why there is none. */
  at(pixel: number): number {
    if (!this.set.has(pixel)) return BEYOND;
    if (this.isThin.has(pixel)) return THIN;
    const known = this.known.get(pixel);
    if (known !== undefined) return known;
    // Discs of one part alone cover it: the nearest core is of that part.
    const owner = this.parts.numberAt(this.core.to(pixel));
    this.known.set(pixel, owner);
    return owner;
  }
}
