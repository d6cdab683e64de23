/** Bridges for every island of a file, where more than one of its layers has islands. */
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { verifyFileBridges } from '../bridge-islands';
import { manyBridgesAsChange } from '../bridges-as-change';
import { islandsOf } from '../bridging/plan';
import { BRIDGING_EFFECTS } from '../bridging/together';
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
  prove: (report, _, title) => manyBridgesAsChange(verifyFileBridges(report), title),
};

function sheetsWithIslands({ sheets }: Report): Sheet[] {
  return sheets.filter((sheet) => islandsOf(sheet).length > 0);
}
