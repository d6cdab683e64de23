/** Bridges as the bench shows them before they are in the text. */
import { bridgeAt, findingById } from '../../engine/index';
import type {
  BridgeAtParams,
  BridgeOffer,
  BridgePlanParams,
  BridgePreviewData,
  BridgeRefusal,
} from '../../protocol/index';
import type { Fix } from '../../report/fix';
import { isRefusal, type Refusal, refuse } from '../../report/refusal';
import type { BridgePreview } from '../../report/report';
import { fileOfLayer } from '../../sheet/layer/layer-id';
import type { CheckedDocument } from '../documents/checked-document';
import type { DocumentFixes } from '../fixes/document-fixes';
import { regionPath } from './preview-model';

export const CHANGED = 'The drawing has changed since; choose the place again.';

/** A bridge at a place of the picture. */
export function bridgeOfferAt(
  checked: CheckedDocument,
  { layer, version, point }: Omit<BridgeAtParams, 'uri'>,
): BridgeOffer | BridgeRefusal {
  const owner = checked.named(fileOfLayer(layer));
  const sheet = owner?.report.sheets.find((each) => each.layer.id === layer);
  if (!owner || !sheet) return refused(checked, refuse('The drawing has no such layer any more.'));
  if (owner.version !== version) return refused(checked, refuse(CHANGED));
  const fix = bridgeAt(owner.report, sheet, point);
  return isRefusal(fix) ? refused(owner, fix) : bridgeOffer(owner, fix);
}

/**
 * What a fix of a finding would put in.
 * @param fixesOf gives what is offered in a document of the stack
 */
export function bridgePlan(
  checked: CheckedDocument,
  { finding: id, mend: kind }: Omit<BridgePlanParams, 'uri'>,
  fixesOf: (owner: CheckedDocument) => DocumentFixes,
): BridgeOffer | BridgeRefusal {
  const found = findingById(checked.report, id);
  const owner = found && checked.documents().find(({ report }) => report === found.report);
  if (!found || !owner) return refused(checked, refuse(CHANGED));
  const fixes = fixesOf(owner);
  const candidates = fixes.candidatesOf(found.finding);
  const wanted = kind === undefined ? preferredFirst(candidates) : candidates.filter((each) => each.kind === kind);
  let why: Refusal<Fix> = { reason: 'No bridge fits here.' };
  for (const { id: candidate } of wanted) {
    const result = fixes.result(candidate);
    if (result && isRefusal(result)) why = candidate === wanted[0]?.id ? result : why;
    else if (result?.bridges || result?.cutAway) return bridgeOffer(owner, result);
  }
  return refused(owner, why);
}

function preferredFirst<T extends { readonly preferred: boolean }>(candidates: readonly T[]): T[] {
  return [...candidates].sort((a, b) => Number(b.preferred) - Number(a.preferred));
}

export function bridgeOffer(
  { uri, version }: CheckedDocument,
  { kind, title, edits, bridges = [], cutAway }: Fix,
): BridgeOffer {
  const cuts = cutAway?.map(({ layerId, place }) => ({ layer: layerId, outline: regionPath([place]) }));
  return {
    uri,
    version,
    kind,
    title,
    edits,
    bridges: bridges.map(bridgePreviewDataOf),
    ...(cuts && { cutAway: cuts }),
  };
}

export function refused(owner: CheckedDocument, { anyway, ...why }: Refusal<Fix>): BridgeRefusal {
  const { reason, first } = why;
  const forced = anyway?.bridges && bridgeOffer(owner, anyway);
  return { version: owner.version, reason, ...(first && { first }), ...(forced && { anyway: forced }) };
}

export function bridgePreviewDataOf({
  layerId,
  strip,
  from,
  to,
  width,
  length,
  shown,
}: BridgePreview): BridgePreviewData {
  return { layer: layerId, outline: regionPath([strip]), from, to, width, length, shown };
}
