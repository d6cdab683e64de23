/** Bridges as the bench shows them before they are in the text. */
import { bridgeAt, type Fix } from '../../engine/index';
import type {
  BridgeAtParams,
  BridgeOffer,
  BridgePlanParams,
  BridgePreviewData,
  BridgeRefusal,
} from '../../protocol/index';
import type { BridgePreview, Report } from '../../report/report';
import type { CheckedDocument } from '../documents/checked-document';
import { findingAt, regionPath } from './preview-model';

/** A bridge at a place of the picture. */
export function bridgeOfferAt(checked: CheckedDocument, { layer, point }: BridgeAtParams): BridgeOffer | BridgeRefusal {
  const place = checked.report.stack.layers[layer];
  const owner = place && checked.named(place.file);
  const mend = owner ? bridgeAt(owner.report, place.sheet, point) : 'The drawing has no such layer any more.';
  return typeof mend === 'string' || !owner ? refusal(checked, String(mend)) : bridgeOffer(owner, mend);
}

/** What a mend of a finding would put in. */
export function bridgePlan(
  checked: CheckedDocument,
  { version, finding, mend: kind }: BridgePlanParams,
): BridgeOffer | BridgeRefusal {
  const place = findingAt(checked, finding);
  if (version !== checked.version || !place) {
    return refusal(checked, 'The drawing has changed since; choose the place again.');
  }
  const { fixes, refusals } = place.checked.fixes(place.index);
  const mends = fixes.filter(({ bridges }) => bridges !== undefined);
  const mend =
    kind === undefined
      ? (mends.find(({ preferred }) => preferred) ?? mends[0])
      : mends.find((each) => each.kind === kind);
  if (mend) return bridgeOffer(place.checked, mend);
  const refused = refusals.find((each) => kind === undefined || each.kind === kind);
  return refusal(checked, refused?.refused ?? 'No bridge could be proven to mend this.');
}

function bridgeOffer(owner: CheckedDocument, { kind, title, edits, bridges = [] }: Fix): BridgeOffer {
  const {
    document: { uri },
    version,
    report,
  } = owner;
  return { uri, version, kind, title, edits, bridges: bridges.map((bridge) => bridgePreviewDataOf(report, bridge)) };
}

function refusal({ version }: CheckedDocument, sentence: string): BridgeRefusal {
  return { version, refusal: sentence };
}

function bridgePreviewDataOf(
  { stack }: Report,
  { layer: _name, layerId, strip, ...place }: BridgePreview,
): BridgePreviewData {
  const index = stack.layers.findIndex(({ sheet }) => sheet.layer.id === layerId);
  return { ...place, layer: index, outline: regionPath([strip]) };
}
