/**
 * The error budget of the kernel: every distance in mm below which two things count as one comes from four quantities.
 * What has several users has its name here; what has one is a multiple of a name below, where it is used.
 *
 * | quantity | mm | derived from | used by |
 * |---|---|---|---|
 * | OVERLAY_GRID | 1e-4 | primary | polygon algebra; portals of thin parts |
 * | FLATTENING | 7e-4 | primary | every curve that is flattened: shapes, clips, outlines that are compared |
 * | DRAWN_ALIKE | 0.01 | primary | shared cut lines, measures, marks, pieces that touch |
 * | RELATIVE_ROUNDING | 1e-10 of the size | primary | closing of paths, in the drawing and where paths are written |
 * | TIE | 1e-9 | OVERLAY_GRID / 1e5 | choices between equal lengths |
 * | ROUNDING_DEPTH | 1e-8 | OVERLAY_GRID / 1e4 | discs that touch |
 * | NO_WIDTH | 1e-7 | OVERLAY_GRID / 1000 | spikes and slits of boundaries; joints of stretches |
 * | SAME_POINT | 1e-6 | OVERLAY_GRID / 100 | vertices, ends of chords, starts of rays |
 * | TOUCHING | 2e-4 | 2 OVERLAY_GRID | pinch points, clusters of boxes |
 * | WRITTEN_STEP | 1e-3 | 10 OVERLAY_GRID | written coordinates, arcs of offsets, the sheet's border |
 * | STROKE_OUTLINE | 5e-4 | FLATTENING − 2 OVERLAY_GRID | outlines of strokes |
 * | ON_CURVE | 0.0015 | 2 FLATTENING + OVERLAY_GRID | edges that are looked for on their curves |
 * | NECK_MARGIN | 0.006 | 4 ON_CURVE | thin parts, sides of bridges |
 * | MEANT_TO_MEET | 0.005 | DRAWN_ALIKE / 2 | cracks, hairlines, colours that only touch |
 * | NEAR_EDGE | 0.02 | 2 DRAWN_ALIKE | places on the sheet and the text that drew them; chains of open lines |
 * | LEAST_SHEET | 0.02 | 2 DRAWN_ALIKE | pieces: a strip of sheet that is narrower as cut holds nothing |
 * | PLAINLY_BESIDE | 0.05 | 5 DRAWN_ALIKE | points that are looked at beside an edge |
 * | SAME_FINDING | 0.5 | 50 DRAWN_ALIKE | findings before and after an edit |
 *
 * Limits on the accuracy of a computation, relative to its numbers, stand with the algorithm that needs them.
 */

/** Polygon algebra is exact on this grid; it is finer than any cutter by two powers of ten. */
export const OVERLAY_GRID = 1e-4;

/**
 * Largest distance between a curve and the straight edges that stand for it. An inscribed polygon loses 4/3 of it for
 * each unit of radius, so this keeps the area of a disc of 10 mm radius within 1e-4 of itself.
 */
export const FLATTENING = 7e-4;

/**
 * What an artist means as one place or one measure: coordinates are commonly written to two or three decimals, and
 * measures are promised to 0.01 mm.
 */
export const DRAWN_ALIKE = 0.01;

/** Of the size of a coordinate: relative commands rarely come back to the very same number. Ten sums of doubles keep it. */
export const RELATIVE_ROUNDING = 1e-10;

/** Lengths of a metre come with errors a thousand times less: what differs by no more is equal. */
export const TIE = OVERLAY_GRID / 1e5;

/** How deep something must reach into a disc to count: several times what the disc's centre may be off. */
export const ROUNDING_DEPTH = OVERLAY_GRID / 1e4;

/** Rings of the grid have no vertices nearer to each other, so that what is narrower came from arithmetic. */
export const NO_WIDTH = OVERLAY_GRID / 1000;

/** A place this near to a vertex is the vertex: far above arithmetic, far below the grid. */
export const SAME_POINT = OVERLAY_GRID / 100;

/** Rounding to the grid moves each of two places by up to one unit: nearer ones may come to touch. */
export const TOUCHING = 2 * OVERLAY_GRID;

/** The step to which edits write coordinates, and to which arcs of offsets are drawn: a micrometre. */
export const WRITTEN_STEP = 10 * OVERLAY_GRID;

/** The outline of a stroke is flattened after it was made, and both errors and the grid's add up. */
export const STROKE_OUTLINE = FLATTENING - 2 * OVERLAY_GRID;

/** An edge lies within the flattening of its curve, and the curves of a clip or union are flattened once more. */
export const ON_CURVE = 2 * FLATTENING + OVERLAY_GRID;

/** Both sides of a neck may be off by this much twice: as they were drawn, and as an edit wrote them anew. */
export const NECK_MARGIN = 4 * ON_CURVE;

/** Half the distance that is drawn alike: ground closed from both sides by as much was never meant to be seen. */
export const MEANT_TO_MEET = DRAWN_ALIKE / 2;

/** Two things that are drawn alike, each in its own way. */
export const NEAR_EDGE = 2 * DRAWN_ALIKE;

/**
 * The least sheet that can be cut. A tool takes its kerf first; of what is narrower than this after it, or where the files
 * allow for the kerf, nothing is left standing by any beam or blade: it is less than both sides of a cut may be off.
 */
export const LEAST_SHEET = 2 * DRAWN_ALIKE;

/** What lies so far from an edge is not on it by any error above, and still within the thinnest material. */
export const PLAINLY_BESIDE = 5 * DRAWN_ALIKE;

/** A finding's place moves along its neck when curves are written anew; other necks are farther away. */
export const SAME_FINDING = 50 * DRAWN_ALIKE;
