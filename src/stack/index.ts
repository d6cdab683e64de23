import { defined } from '../base/defined';
import type { Box, Region } from '../geometry/base/polygon-types';
import { joinBoxes } from '../geometry/base/ring';
import { fromGrid } from '../geometry/boolean/grid';
import { complementInBox, regionFromRings } from '../geometry/boolean/index';
import { nestRings } from '../geometry/boolean/nest';
import { joinTiles } from '../geometry/boolean/tiles';
import type { SheetMeasures } from '../sheet/types';
import { bareGapsOf, measureThinGround, type ThinGround } from './bare-gaps';
import { findHidden, type HiddenOpenings } from './hidden-openings';
import { type JoinedSheets, joinSheets } from './joined-sheets';
import { openingsAsCut } from './openings-as-cut';
import type { BareGap, HiddenOpening, Neighbours, ShortOverlap } from './seam-types';
import { joinPieces } from './short-overlaps';
import { CRACK } from './tile-seams';
import { type MeasuredTiles, measureTiles } from './tiles';

export type { BareGap, HiddenOpening, Neighbours, ShortOverlap } from './seam-types';

/** Indices of layers are those of the stack: the first painted is 0. */
export interface Seams {
  /**
   * mm: how far a sheet may land from where it should; shorter overlaps and narrower gaps are listed, up to 5 mm. A
   * slip within the width of a crack, 0.01 mm, is none.
   */
  readonly slip: number;
  readonly overlaps: readonly ShortOverlap[];
  readonly gaps: readonly BareGap[];
  readonly hiddenOpenings: readonly HiddenOpening[];
}

/** What was measured of a stack, with what a later measuring of the same stack can take over. */
export interface MeasuredSeams {
  readonly seams: Seams;
  readonly memory: SeamMemory;
}

export interface SeamMemory {
  readonly cut: readonly CutSheet[];
  readonly joined: readonly JoinedSheets[];
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
 * @param previous of the stack before an edit: kept where it still holds
 * @param firsts for each sheet the first of those that it is one painted region with; by default each stands alone
 */
export function measureSeams(
  sheets: readonly SheetMeasures[],
  slip: number,
  previous?: MeasuredSeams,
  firsts: readonly number[] = [...sheets.keys()],
): MeasuredSeams {
  const memory = previous?.memory;
  const cut = sheets.map((sheet, i) => cutSheet(sheet, memory?.cut[i]));
  const openings = cut.map(({ cut: own }) => own);
  const buried = findHidden(openings, firsts, memory?.hidden);
  const joined = joinSheets(openings, firsts, memory?.joined);
  if (joined.length < 2 || !(slip > 2 * CRACK)) {
    return {
      seams: { slip, overlaps: [], gaps: [], hiddenOpenings: buried.found },
      memory: { cut, joined, hidden: buried, tiles: undefined, ground: undefined },
    };
  }
  const layers = joined.map(({ region }) => region);
  const reach = Math.min(slip, MAX_SLIP);
  const frame = joinBoxes(sheets.map((sheet) => sheet.frame));
  const cells = measureTiles(layers, frame, reach, memory?.tiles);
  const changed = memory?.tiles === undefined || cells.seams.some((seams, i) => seams !== memory.tiles?.seams[i]);
  const sameSheets = joined.every(({ first }, i) => first === memory?.joined[i]?.first);
  if (!changed && sameSheets && previous?.seams.slip === slip) {
    return {
      seams: { ...previous.seams, hiddenOpenings: buried.found },
      memory: { ...previous.memory, cut, joined, hidden: buried, tiles: cells },
    };
  }
  const ground = measureThinGround(findBareGaps(cells, frame), reach, memory?.ground);
  const overlaps = joinPieces(
    cells.seams.flatMap(({ pieces }) => pieces),
    reach,
  );
  const inStack = <T extends Neighbours>(found: readonly T[]) => found.map((each) => numberedInStack(each, joined));
  return {
    seams: {
      slip,
      overlaps: inStack(overlaps).map((each, i) => ({ ...each, slipping: firstOf(joined, overlaps[i]?.slipping) })),
      gaps: inStack(bareGapsOf(ground, layers)),
      hiddenOpenings: buried.found,
    },
    memory: { cut, joined, hidden: buried, tiles: cells, ground },
  };
}

/** What sheets paint together is told of the first of them. */
function numberedInStack<T extends Neighbours>(found: T, joined: readonly JoinedSheets[]): T {
  return { ...found, earlier: firstOf(joined, found.earlier), later: firstOf(joined, found.later) };
}

function firstOf(joined: readonly JoinedSheets[], number = 0): number {
  return defined(joined[number]).first;
}

function cutSheet(sheet: SheetMeasures, known: CutSheet | undefined): CutSheet {
  const { openings: drawn, kerf } = sheet;
  return known?.drawn === drawn && known.kerf === kerf ? known : { drawn, kerf, cut: openingsAsCut(sheet) };
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
