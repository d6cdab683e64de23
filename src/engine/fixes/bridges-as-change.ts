/** Proven bridges in the form in which fixes are given to hosts. */

import { count, formatMillimetres } from '../../config/values';
import { regionOfStrip } from '../../edits/roots/outline';
import { regionContains } from '../../geometry/boolean/index';
import { mapResult, type Result } from '../../report/refusal';
import type { BridgePreview } from '../../report/report';
import type { Piece } from '../../sheet/types';
import type { BridgedMany } from './bridge-islands';
import type { PlannedBridge, VerifiedBridges } from './bridging/cut';
import type { ProvenChange } from './kind';

/** @param title what is done; how many bridges it takes and how wide they are is added */
export function bridgesAsChange(result: Result<VerifiedBridges>, title: string): Result<ProvenChange> {
  return mapResult(result, (verified) => changeOf(verified, `${title} (${bridgesOf(verified.bridges)})`));
}

/** The same for all islands of a layer or a file: those that are left the title says. */
export function manyBridgesAsChange(result: Result<BridgedMany>, title: string): Result<ProvenChange> {
  return mapResult(result, (verified) => {
    const left = verified.left > 0 ? `; ${count(verified.left, 'island')} left` : '';
    return changeOf(verified, `${title} (${bridgesOf(verified.bridges)}${left})`);
  });
}

/**
 * The same for one island: what else is bridged the title says, and that what it hangs on is loose itself.
 * @param counted whether the title says already how many bridges the island itself gets
 */
export function islandBridgesAsChange(
  result: Result<VerifiedBridges>,
  title: string,
  island: Piece,
  counted: boolean,
): Result<ProvenChange> {
  return mapResult(result, (verified) => {
    const { bridges } = verified;
    const own = bridges.filter((each) => each.island === island || each.target === island);
    const beside = besideOf(own, bridges, island);
    const said = [...(counted ? [] : [bridgesOf(own)]), ...(beside ? [beside] : [])];
    return changeOf(
      verified,
      said.length > 0 ? `${title} (${said.join(beside.startsWith('and') ? ' ' : '; ')})` : title,
    );
  });
}

/** "and 3 for the piece around it", "the piece around it is loose too" */
function besideOf(own: readonly PlannedBridge[], all: readonly PlannedBridge[], island: Piece): string {
  const others = all.filter((each) => !own.includes(each));
  if (others.length > 0) {
    const pieces = others.map((each) => each.island);
    return `and ${others.length} for ${pieceNames(pieces, island)}`;
  }
  const holding = own.map((each) => (each.island === island ? each.target : each.island));
  return holding.every((piece) => piece.island) ? `${pieceNames(holding, island)} is loose too` : '';
}

function pieceNames(pieces: readonly Piece[], island: Piece): string {
  const [first, ...more] = [...new Set(pieces)];
  if (!first || more.length > 0) return 'the pieces around it';
  const isAround = regionContains([{ outer: first.polygon.outer, holes: [] }], island.label);
  return `the piece ${isAround ? 'around' : 'beside'} it`;
}

/** "2 bridges of 0.80 mm", "3 bridges of 0.80 mm to 1.20 mm" */
function bridgesOf(bridges: readonly PlannedBridge[]): string {
  const widths = bridges.map(({ cutWidth }) => cutWidth);
  const ends = [Math.min(...widths), Math.max(...widths)].map(formatMillimetres);
  return `${count(bridges.length, 'bridge')} of ${[...new Set(ends)].join(' to ')}`;
}

function changeOf({ edits, bridges, brings }: VerifiedBridges, title: string): ProvenChange {
  return { edits, brings, title, bridges: bridges.map(bridgePreviewOf) };
}

/** The bridge as hosts show it. */
export function bridgePreviewOf({
  layer,
  layerId,
  strip,
  from,
  to,
  cutWidth,
  length,
  hiddenShare = 0,
}: PlannedBridge): BridgePreview {
  return { layer, layerId, strip: regionOfStrip(strip), from, to, width: cutWidth, length, shown: 1 - hiddenShare };
}
