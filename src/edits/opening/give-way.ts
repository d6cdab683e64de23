/** How far the boundary of an opening has to give way for a thin part of it to become as wide as it must. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { growBox, ringsOf } from '../../geometry/base/ring';
import { ON_CURVE } from '../../geometry/base/tolerances';
import { distance, interpolate } from '../../geometry/base/vector';
import { PointIndex } from '../../geometry/spatial/point-index';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Sheet } from '../../sheet/types';
import { type BoundaryPlace, FacingBoundary, type FacingDisc } from './facing';
import type { Bank, MovableBoundary } from './movable-boundary';

/** mm: what lacks less is not worth a change. */
const NOTHING = ON_CURVE;

/** In widths: discs of one thin part lie no farther apart than this. */
const LINKED = 0.3;

interface ThinDisc extends FacingDisc {
  readonly place: BoundaryPlace;
  /** Which stretch of the boundary it touches: discs of one stretch have the same number. */
  readonly run: number;
}

/** The boundary round one thin part of an opening. */
export class GivingBoundary implements MovableBoundary {
  readonly extent: Box;
  private readonly boundary: FacingBoundary;
  private readonly discs: readonly ThinDisc[];
  private readonly centres: PointIndex;
  private readonly banks: { readonly from: number; readonly to: number };
  private readonly width: number;

  /** @param width mm, as drawn, that it is to have everywhere */
  constructor(sheet: Sheet, part: ThinPlace, width: number) {
    const opening = sheet.openings[part.polygon];
    this.width = width;
    this.extent = growBox(part.extent, part.kind === 'whole' ? ON_CURVE : width / 2);
    this.boundary = new FacingBoundary(opening ? ringsOf(opening) : [], growBox(this.extent, 1.5 * width), width / 2);
    const thin = this.thinDiscs();
    this.discs = part.kind === 'whole' ? thin : linkedTo(thin, interpolate(part.from, part.to, 0.5), LINKED * width);
    this.centres = new PointIndex(this.discs.map(({ centre }) => centre));
    this.banks = { from: this.runNear(part.from), to: this.runNear(part.to) };
  }

  /** Whether two stretches of the boundary face each other, of which either may give way alone. */
  get hasBanks(): boolean {
    return this.banks.from !== this.banks.to;
  }

  /** The thin part's discs, each with the place of the boundary that it touches. */
  get thinnest(): readonly (FacingDisc & { readonly place: BoundaryPlace })[] {
    return this.discs;
  }

  placesAt(point: Point): BoundaryPlace[] {
    return this.boundary.placesAt(point);
  }

  outwardAt(point: Point, normal: Point): Point | undefined {
    return this.boundary.outwardAt(point, normal);
  }

  /** mm, outward. @param bank which of the two gives way, for itself and the other */
  needAt(place: BoundaryPlace, bank: Bank): number {
    const disc = this.boundary.discAt(place);
    const lacks = disc ? this.width / 2 - disc.radius : 0;
    if (!disc || lacks < NOTHING) return 0;
    const near = this.nearestDisc(place, disc);
    if (!near) return 0;
    if (bank === 'both' || !this.hasBanks) return lacks;
    if (near.run === this.banks[bank]) return 2 * lacks;
    return near.run === this.banks[bank === 'from' ? 'to' : 'from'] ? 0 : lacks;
  }

  private thinDiscs(): ThinDisc[] {
    const { places } = this.boundary;
    const discs: ThinDisc[] = [];
    let run = 0;
    places.forEach((place, i) => {
      const previous = places[i - 1];
      if (previous && distance(previous.at, place.at) > this.width / 4) run += 1;
      const disc = this.boundary.discAt(place);
      if (disc && disc.radius < this.width / 2 - NOTHING) discs.push({ ...disc, place, run });
      else if (discs.at(-1)?.run === run) run += 1;
    });
    return discs;
  }

  private runNear(point: Point): number {
    return nearest(this.discs, ({ place }) => distance(place.at, point))?.run ?? -1;
  }

  private nearestDisc({ at }: BoundaryPlace, { centre }: FacingDisc): ThinDisc | undefined {
    const linked = within(this.discs, this.centres, centre, LINKED * this.width);
    return nearest(linked, (disc) => distance(disc.centre, centre) + distance(disc.place.at, at));
  }
}

/** The discs whose centres lie nearer to a point than `apart`. */
function within(discs: readonly ThinDisc[], centres: PointIndex, point: Point, apart: number): ThinDisc[] {
  return centres
    .near(point, apart)
    .map((i) => defined(discs[i]))
    .filter(({ centre }) => distance(centre, point) < apart);
}

function nearest<T>(items: readonly T[], far: (item: T) => number): T | undefined {
  let best: T | undefined;
  let least = Infinity;
  for (const item of items) {
    const own = far(item);
    if (own < least) [best, least] = [item, own];
  }
  return best;
}

/** Those that lie in one row with the disc nearest to a point. */
function linkedTo(discs: readonly ThinDisc[], point: Point, apart: number): ThinDisc[] {
  const first = nearest(discs, ({ centre }) => distance(centre, point));
  if (!first) return [];
  const centres = new PointIndex(discs.map(({ centre }) => centre));
  const linked = new Set([first]);
  const waiting = [first];
  for (let disc = waiting.pop(); disc; disc = waiting.pop()) {
    for (const other of within(discs, centres, disc.centre, apart)) {
      if (linked.has(other)) continue;
      linked.add(other);
      waiting.push(other);
    }
  }
  return [...linked];
}
