/** Bridges for every island of a layer: the shortest ones, and in lettering upright ones. */

import type { Finding } from '../../../checks/finding';
import { formGlyphRow } from '../../../edits/plan/design/glyph-row';
import { boxOfPolygon } from '../../../geometry/boolean/index';
import { isRefusal, type Result, refuse } from '../../../report/refusal';
import type { Report } from '../../../report/report';
import type { Sheet } from '../../../sheet/types';
import { verifyBridges, verifyLayerBridges } from '../bridge-islands';
import { bridgesAsChange, manyBridgesAsChange } from '../bridges-as-change';
import type { PlannedBridge, VerifiedBridges } from '../bridging/cut';
import { islandsOf } from '../bridging/plan';
import { BRIDGING_EFFECTS } from '../bridging/together';
import type { FixKind, ProvenChange } from '../kind';

/** How many times as long upright bridges may be in all (common practice, no source). */
const MAX_LENGTH_RATIO = 1.5;

const FACTS = { scope: 'layer', safe: false, effects: BRIDGING_EFFECTS, preferred: false } as const;

export const bridgeLayer: FixKind = {
  ...FACTS,
  kind: 'bridge-layer',
  offer: (_, finding) => {
    const sheet = sheetWithIslands(finding);
    return sheet && `Bridge every island in layer "${sheet.layer.name}"`;
  },
  prove: (report, finding, title) => {
    const sheet = sheetWithIslands(finding);
    return sheet && manyBridgesAsChange(verifyLayerBridges(report, sheet), title);
  },
};

export const bridgeLayerUpright: FixKind = {
  ...FACTS,
  kind: 'bridge-layer-upright',
  spare: 2,
  offer: (_, finding) => {
    const sheet = sheetWithIslands(finding);
    if (!sheet || !formGlyphRow(islandsOf(sheet).map(({ polygon }) => boxOfPolygon(polygon)))) return undefined;
    return `Bridge every island in layer "${sheet.layer.name}" with vertical bridges`;
  },
  prove: (report, finding, title) => {
    const sheet = sheetWithIslands(finding);
    return sheet && uprightPlan(report, sheet, title);
  },
};

/** Only where a layer has more than one is it more than the bridges of the one. */
function sheetWithIslands({ subject }: Finding): Sheet | undefined {
  return subject?.kind === 'island' && islandsOf(subject.sheet).length > 1 ? subject.sheet : undefined;
}

/** Not needed where the usual bridges stand upright anyway. */
function uprightPlan(report: Report, sheet: Sheet, title: string): Result<ProvenChange> | undefined {
  const usual = verifyLayerBridges(report, sheet);
  if (isRefusal(usual)) return refuse(usual.reason);
  if (usual.left === 0 && usual.bridges.every(isUpright)) return undefined;
  const aligned = verifyBridges(report, sheet, islandsOf(sheet), { style: 'upright' });
  if (!isRefusal(aligned) && lengthOf(aligned) > MAX_LENGTH_RATIO * lengthOf(usual)) {
    return refuse(`Vertical bridges would be more than ${MAX_LENGTH_RATIO} times as long in all as the shortest.`);
  }
  return bridgesAsChange(aligned, title);
}

/** mm of all bridges together. */
function lengthOf({ bridges }: VerifiedBridges): number {
  return bridges.reduce((sum, { length }) => sum + length, 0);
}

function isUpright({ from, to, length }: PlannedBridge): boolean {
  return Math.abs(from.x - to.x) < 0.1 * length;
}
