/** Bridges beside those that a sheet gets already, where these let islands lift too far. Sheet mm. */
import { defined } from '../../base/defined';
import { distance } from '../../geometry/base/vector';
import type { Sheet } from '../../sheet/types';
import { bridgeFrom, designFor, LONGEST_BRIDGE, scoredCandidates, surroundingsOf } from './index';
import { beamOf } from './lifting';
import type { ScoredCandidate } from './score';
import { type Assignment, applyChange, hangingOn, type Layout, tiesOf } from './search/layout';
import { addedFor } from './stiffness/added';
import type { Bridge, PlanOptions } from './types';

/** More islands than this are not looked at as a whole. */
const MOST_ISLANDS = 60;

/**
 * The plan of each run of `planBridges` is stiff by itself; where its proof left some out, or later runs hung islands on others,
 * all of them together may not be.
 * @param sheet as it is without the bridges
 * @param standing all bridges that it gets; they stay as they are
 * @returns none where none would be worth it
 */
export function planFurther(sheet: Sheet, standing: readonly Bridge[], options: PlanOptions): Bridge[] {
  const { pieces } = sheet;
  const around = { ...surroundingsOf(sheet, options), longest: LONGEST_BRIDGE + sheet.kerf };
  const frames = new Set(pieces.flatMap((piece, number) => (piece.island ? [] : [number])));
  const ties = standing.flatMap((bridge) => tieOf(sheet, bridge, options) ?? []);
  const hanging = [...hangingOn(frames, ties)].filter((number) => !frames.has(number));
  if (hanging.length === 0 || hanging.length > MOST_ISLANDS) return [];
  const ways = pieces.map((piece, number) =>
    hanging.includes(number) ? scoredCandidates(sheet, piece, number, options, around) : [],
  );
  const design = designFor(sheet, options, around.pieces);
  const state: Assignment = { pieces, ways, options, around, design, asked: new Set(hanging), frames };
  const layout: Layout = new Map();
  applyChange(layout, { out: [], in: ties });
  const added = addedFor(state, layout);
  return tiesOf(added)
    .filter((tie) => !ties.includes(tie))
    .map((tie) => bridgeFrom(tie, defined(pieces[tie.island]), sheet, options));
}

function tieOf(sheet: Sheet, bridge: Bridge, { width: least }: PlanOptions): ScoredCandidate | undefined {
  const beam = beamOf(sheet, bridge);
  if (!beam) return undefined;
  const length = distance(beam.from, beam.to);
  // What leaves the sheet itself is seen from the island.
  const isOut = defined(sheet.pieces[beam.island]).island;
  const ends = isOut ? beam : { ...beam, island: beam.target, target: beam.island, from: beam.to, to: beam.from };
  return { ...ends, length, cost: (length * beam.width) / least };
}
