/** Regions of the plane with straight edges, in millimetres, y down. */

/**
 * A closed ring as x0, y0, x1, y1, …; the last point is not the first again. Outer rings and holes turn in opposite
 * ways: the region is on the left of each ring's course when y points up, that is on the right on the screen.
 * In numbers: the shoelace sum (x·dy − y·dx, y down) is positive for outer rings, negative for holes.
 */
export interface Ring extends ImmutableFloats {}

/** What of a Float64Array does not write to it. A ring is made as one and never changes after, for facts are kept of it. */
interface ImmutableFloats
  extends Pick<
    Float64Array,
    | 'length'
    | 'at'
    | 'every'
    | 'some'
    | 'map'
    | 'reduce'
    | 'filter'
    | 'forEach'
    | 'slice'
    | 'keys'
    | typeof Symbol.iterator
  > {
  readonly [index: number]: number;
}

/** Which area rings that cross or lie in each other fill. */
export type FillRule = 'nonzero' | 'evenodd';

/** A connected piece of a region: one outer ring and its holes. */
export interface Polygon {
  readonly outer: Ring;
  readonly holes: readonly Ring[];
}

/** Polygons that do not overlap; they may touch in points. */
export type Region = readonly Polygon[];

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}
