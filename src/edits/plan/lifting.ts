/** Islands that lift too far on their bridges, all those of a layer together. Sheet mm. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { boxOfRing } from '../../geometry/base/ring';
import { DRAWN_ALIKE } from '../../geometry/base/tolerances';
import { add, normalise, scale, subtract } from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import type { Bending } from '../../sheet/lift/index';
import type { Piece, Sheet } from '../../sheet/types';
import { bodyOf } from './search/body';
import { bridgeCountFor } from './search/count';
import { hangingOn } from './search/layout';
import { WEIGHTS } from './search/weights';
import { type Beam, grillageOf, liftOfPlate } from './stiffness/grillage';
import type { Bridge } from './types';

export interface LiftingIsland {
  readonly island: Piece;
  /** mm, where it lifts most. */
  readonly lift: number;
}

/** More plates than this are not looked at as a whole: that takes as long as the cube of their number. */
const MOST_PLATES = 200;
/** mm beyond a bridge's end, where the piece begins that it leads to. */
const BEYOND = 2 * DRAWN_ALIKE;

/**
 * Small islands are held wherever a bridge is, and are not told of.
 * @param sheet as it is without the bridges
 * @param bridges may have been planned one after the other, between pieces that hung by then
 * @returns the farthest lifting first
 */
export function liftingOn(sheet: Sheet, bridges: readonly Bridge[], bending: Bending): LiftingIsland[] {
  const { pieces, kerf } = sheet;
  const beams = bridges.flatMap((bridge) => beamOf(sheet, bridge) ?? []);
  const frames = new Set(pieces.flatMap(({ island }, number) => (island ? [] : [number])));
  const hanging = [...hangingOn(frames, beams)].filter((number) => !frames.has(number));
  if (hanging.length === 0 || hanging.length > MOST_PLATES) return [];
  const bodies = new Map(hanging.map((number) => [number, bodyOf(defined(pieces[number]))]));
  const grillage = grillageOf(bodies, beams, { bending, kerf });
  return hanging
    .map((number) => ({ island: defined(pieces[number]), lift: liftOfPlate(grillage, number).lift }))
    .filter(({ island: { polygon, area } }) => bridgeCountFor(boxOfRing(polygon.outer), area) > 1)
    .filter(({ lift }) => lift > WEIGHTS.swing.value)
    .sort((a, b) => b.lift - a.lift);
}

/** Undefined where it does not lead from one piece to another as they are without the bridges. */
export function beamOf(sheet: Sheet, { from, to, width }: Bridge): Beam | undefined {
  const along = normalise(subtract(to, from));
  if (!along) return undefined;
  const out = scale(along, sheet.kerf / 2 + BEYOND);
  const [island, target] = [pieceAt(sheet, subtract(from, out)), pieceAt(sheet, add(to, out))];
  return island < 0 || target < 0 || island === target ? undefined : { island, target, from, to, width };
}

function pieceAt({ pieces }: Sheet, place: Point): number {
  return pieces.findIndex(({ polygon }) => regionContains([polygon], place));
}
