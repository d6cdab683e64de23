/** Bridges for every island of a file, where more than one of its layers has islands. */
import { isRefusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { BRIDGING_EFFECTS, islandsOf, joinBridges, type VerifiedBridges, verifyLayerBridges } from '../bridge-islands';
import { bridgesAsChange } from '../bridges-as-change';
import type { FixKind } from '../kind';

export const bridgeFile: FixKind = {
  kind: 'bridge-file',
  spare: 1,
  scope: 'file',
  safe: false,
  effects: BRIDGING_EFFECTS,
  preferred: false,
  offer: (report, { subject }) =>
    subject?.kind === 'island' && sheetsWithIslands(report).length > 1 ? 'Bridge every island in this file' : undefined,
  prove: (report, _, title) => bridgesAsChange(bridgeAll(report), title),
};

function sheetsWithIslands({ sheets }: Report): Sheet[] {
  return sheets.filter((sheet) => islandsOf(sheet).length > 0);
}

/** Every layer's bridges together, where those of each could be proven. */
function bridgeAll(report: Report): Result<VerifiedBridges> {
  return sheetsWithIslands(report)
    .map((sheet): Result<VerifiedBridges> => {
      const bridges = verifyLayerBridges(report, sheet);
      return isRefusal(bridges) ? refuse(`Layer "${sheet.layer.name}": ${bridges.reason}`) : bridges;
    })
    .reduce((first, second) => {
      if (isRefusal(first)) return first;
      return isRefusal(second) ? second : joinBridges(report, first, second);
    });
}
