/** Bridges as the bench shows them before they are in the text. */
import { bridgeAt } from '../engine';
import type { BridgeGhost, Mend, Report } from '../report';
import type { CheckedDocument } from './checked-document';
import type { BridgeAtParams, BridgeOffer, BridgePlanParams, BridgeRefusal, GhostBridge } from './protocol';
import { regionPath } from './stack';

/** A bridge at a place of the picture. */
export function bridgeOfferAt(checked: CheckedDocument, { layer, point }: BridgeAtParams): BridgeOffer | BridgeRefusal {
  const { report } = checked;
  const sheet = report.sheets[layer];
  const mend = sheet ? bridgeAt(report, sheet, point) : 'The drawing has no such layer any more.';
  return typeof mend === 'string' ? refusal(checked, mend) : offer(checked, mend);
}

/** What a mend of a finding would put in. */
export function bridgePlan(
  checked: CheckedDocument, { version, finding, mend: kind }: BridgePlanParams,
): BridgeOffer | BridgeRefusal {
  if (version !== checked.version) return refusal(checked, 'The drawing has changed since; choose the place again.');
  const mends = checked.mends(finding).filter(({ bridges }) => bridges !== undefined);
  const mend = kind === undefined ? mends.find(({ preferred }) => preferred) ?? mends[0] : mends.find((each) => each.kind === kind);
  return mend ? offer(checked, mend) : refusal(checked, 'No bridge could be proven to mend this.');
}

function offer({ version, report }: CheckedDocument, { kind, title, edits, bridges = [] }: Mend): BridgeOffer {
  return { version, kind, title, edits, bridges: bridges.map((bridge) => ghostOf(report, bridge)) };
}

function refusal({ version }: CheckedDocument, sentence: string): BridgeRefusal {
  return { version, refusal: sentence };
}

function ghostOf({ sheets }: Report, { layer, strip, ...place }: BridgeGhost): GhostBridge {
  return { ...place, layer: sheets.findIndex((sheet) => sheet.layer.name === layer), outline: regionPath([strip]) };
}
