/** What is measured between the layers of a stack: overlaps that are too short, bare gaps, buried openings. */
import type { Point } from '../geometry/base/curve-types';
import { fromGrid } from '../geometry/boolean/grid';
import { joinTiles } from '../geometry/boolean/join-tiles';
import { nestRings } from '../geometry/boolean/nest';
import { complementInBox, offset, regionFromRings } from '../geometry/boolean/index';
import type { Box, Region } from '../geometry/base/polygon-types';
import { joinBoxes } from '../geometry/base/ring';
import type { Segment } from '../geometry/spatial/segment-distance';
import { bareGapsOf, measureThinGround, type ThinGround } from './bare-gaps';
import { findHidden, type HiddenOpenings } from './hidden-openings';
import { CRACK } from './tile-seams';
import { joinPieces } from './short-overlaps';
import { measureTiles, type MeasuredTiles } from './tiles';
import type { Sheet } from '../sheet/types';

/** Indices of layers are those of the stack: the first painted is 0. */
export interface Seams {
  /**
   * mm: how far a sheet may land from where it should; shorter overlaps and narrower gaps are listed, up to 5 mm. A slip
   * within the width of a crack, 0.01 mm, is none.
   */
  readonly slip: number;
  readonly overlaps: readonly ShortOverlap[];
  readonly gaps: readonly BareGap[];
  readonly hiddenOpenings: readonly HiddenOpening[];
  /** What the next run can use of this one. */
  readonly cache: SeamCache;
}

/** Two layers, the one painted earlier first. */
export interface Neighbours {
  readonly earlier: number;
  readonly later: number;
}

/** A stretch of the seam of two neighbours that a slip of less than `Seams.slip` opens. */
export interface ShortOverlap extends Neighbours {
  /** The one of the two whose slip opens it first. */
  readonly slipping: number;
  /** mm: the shortest slip of either sheet, in any direction, that lets bare ground show; 0 where the colours only touch. */
  readonly width: number;
  /** Where bare ground first shows. */
  readonly at: Point;
  /** The place on the edge of the sheet that slips which comes to lie there. */
  readonly facing: Point;
  /** mm along the seam */
  readonly length: number;
  /** Its course, as both sheets see it; in no particular order. */
  readonly course: readonly Segment[];
  /** Whether it ends where bare ground is nearer than twice the slip, as at the crossing of two outlines. */
  readonly runsOut: boolean;
}

/** Bare ground between two neighbours. */
export interface BareGap extends Neighbours {
  /** mm, at its narrowest; of a gap that is closed all round and nowhere as wide as a slip, at its widest. */
  readonly width: number;
  /** Whether it is closed all round. */
  readonly closed: boolean;
  /** The facing places on the edges of the two neighbours' openings. */
  readonly onEarlier: Point;
  readonly onLater: Point;
  /** mm along its course */
  readonly length: number;
}

/** An opening whose paint is nowhere seen. */
export interface HiddenOpening {
  readonly layer: number;
  /** Which of the layer's openings. */
  readonly opening: number;
}

export interface SeamCache {
  readonly cut: readonly CutSheet[];
  readonly hidden: HiddenOpenings;
  readonly tiles: MeasuredTiles | undefined;
  readonly ground: ThinGround | undefined;
}

/** A sheet's openings as cut. */
interface CutSheet {
  readonly drawn: Region;
  readonly kerf: number;
  readonly cut: Region;
}

/** mm: a larger slip than any sheet is laid by; all places so near to each other are compared. */
const MAX_SLIP = 5;

/**
 * @param sheets in painting order
 * @param slip mm
 * @param earlier of an earlier state of the stack: kept where it still holds
 */
export function measureSeams(sheets: readonly Sheet[], slip: number, earlier?: Seams): Seams {
  const memory = earlier?.cache;
  const cut = sheets.map((sheet, i) => cutSheet(sheet, memory?.cut[i]));
  const layers = cut.map(({ cut: openings }) => openings);
  const buried = findHidden(layers, memory?.hidden);
  if (sheets.length < 2 || !(slip > 2 * CRACK)) {
    return {
      slip,
      overlaps: [],
      gaps: [],
      hiddenOpenings: buried.found,
      cache: { cut, hidden: buried, tiles: undefined, ground: undefined },
    };
  }
  const reach = Math.min(slip, MAX_SLIP);
  const frame = joinBoxes(sheets.map((sheet) => sheet.frame));
  const cells = measureTiles(layers, frame, reach, memory?.tiles);
  const changed = memory?.tiles === undefined || cells.seams.some((seams, i) => seams !== memory.tiles?.seams[i]);
  if (!changed && earlier?.slip === slip)
    return { ...earlier, hiddenOpenings: buried.found, cache: { ...earlier.cache, cut, hidden: buried, tiles: cells } };
  const ground = measureThinGround(findBareGaps(cells, frame), reach, memory?.ground);
  return {
    slip,
    overlaps: joinPieces(
      cells.seams.flatMap(({ pieces }) => pieces),
      reach,
    ),
    gaps: bareGapsOf(ground, layers),
    hiddenOpenings: buried.found,
    cache: { cut, hidden: buried, tiles: cells, ground },
  };
}

/** A kerf k widens each opening by k/2 on every side. */
function cutSheet({ openings, kerf }: Sheet, known: CutSheet | undefined): CutSheet {
  if (known?.drawn === openings && known.kerf === kerf) return known;
  return { drawn: openings, kerf, cut: kerf > 0 ? offset(openings, kerf / 2) : openings };
}

function findBareGaps({ cells, seams }: MeasuredTiles, frame: Box): Region {
  const painted = seams.flatMap((each) => each.painted);
  const joined = joinTiles(painted, cells)?.map((ring) => fromGrid(ring));
  const region = joined
    ? nestRings(joined)
    : regionFromRings(
        painted.map((ring) => fromGrid(ring)),
        'nonzero',
      );
  return complementInBox(region, frame);
}

/** What the seam of two neighbours bears. */
export interface SafeSlip extends Neighbours {
  /** mm: the largest slip to any side that leaves no bare ground between them. */
  readonly safe: number;
}

/** Of the neighbours that do not bear `seams.slip`, in the order of their first short overlap. */
export function safeSlips({ overlaps }: Seams): SafeSlip[] {
  const least = new Map<string, SafeSlip>();
  for (const { earlier, later, width } of overlaps) {
    const key = `${earlier} ${later}`;
    if (width < (least.get(key)?.safe ?? Infinity)) least.set(key, { earlier, later, safe: width });
  }
  return [...least.values()];
}
