/** Proven bridges in the form in which fixes are given to hosts. */

import { count, formatMillimetres } from '../../config/values';
import { polygonOf } from '../../edits/strip/strip';
import { mapResult, type Result } from '../../report/refusal';
import type { BridgePreview } from '../../report/report';
import type { PlannedBridge, VerifiedBridges } from './bridge-islands';
import type { ProvenChange } from './kind';

/** @param title what is done; how many bridges it takes and how wide they are is added */
export function bridgesAsChange(result: Result<VerifiedBridges>, title: string): Result<ProvenChange> {
  return mapResult(result, (verified) => changeOf(verified, title));
}

function changeOf({ edits, bridges, brings }: VerifiedBridges, title: string): ProvenChange {
  const width = formatMillimetres(bridges[0]?.cutWidth ?? 0);
  return {
    edits,
    brings,
    title: `${title} (${count(bridges.length, 'bridge')} of ${width})`,
    bridges: bridges.map(bridgePreviewOf),
  };
}

/** The bridge as hosts show it. */
function bridgePreviewOf({
  layer,
  layerId,
  strip,
  from,
  to,
  cutWidth,
  length,
  hiddenShare = 0,
}: PlannedBridge): BridgePreview {
  return { layer, layerId, strip: polygonOf(strip), from, to, width: cutWidth, length, shown: 1 - hiddenShare };
}
