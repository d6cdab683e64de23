/** Bridges that stand, as the bench lists them and handles them. */
import { spanAt } from '../../checks/places';
import {
  type BridgeChange,
  bridgesOf,
  changeBridge,
  ghostOf,
  lengthOf,
  type Sheet,
  type StandingBridge,
  titleOfChange,
} from '../../engine/index';
import { interpolate } from '../../geometry/base/vector';
import type { BridgeOffer, BridgeRefusal } from '../../protocol/index';
import type {
  BridgeId,
  ChangeBridgeParams,
  GhostAnswer,
  StandingBridgeData,
  StandingBridges,
  WantedBridge,
} from '../../protocol/standing-bridges';
import { isRefusal } from '../../report/refusal';
import type { LayerId } from '../../sheet/layer/layer-id';
import { fileOfLayer } from '../../sheet/layer/layer-id';
import { sourcesOf } from '../../sheet/source-index';
import type { CheckedDocument } from '../documents/checked-document';
import { bridgeOffer, bridgePreviewDataOf, CHANGED, refused } from './bridge-requests';

/** Of all layers of the stack. */
export function standingBridges(checked: CheckedDocument): StandingBridges {
  const bridges = checked.report.stack.layers.flatMap(({ file, sheet }) => {
    const owner = checked.named(file) ?? checked;
    return bridgesOf(owner.report, sheet).map((bridge, i) => dataOf(owner, sheet, bridge, i));
  });
  return { version: checked.version, bridges };
}

function dataOf({ uri }: CheckedDocument, sheet: Sheet, bridge: StandingBridge, number: number): StandingBridgeData {
  const { centre, along, width, sides } = bridge;
  const stencil = { drawing: sheet.drawing, sources: sourcesOf };
  const [from, to] = sides.map(([start, end]) => interpolate(start, end, 0.5)) as [typeof centre, typeof centre];
  const layer = sheet.layer.id;
  const text = spanAt(stencil, sheet, from, to);
  const size = { width: width - sheet.kerf, length: lengthOf(bridge) };
  return { id: idOf(layer, number), layer, centre, along, ...size, uri, from: text.from, to: text.to };
}

function idOf(layer: LayerId, number: number): BridgeId {
  return `${layer}/bridge-${number}`;
}

/** Quick: planned, but not proven. */
export function bridgeGhost(checked: CheckedDocument, params: Omit<ChangeBridgeParams, 'uri'>): GhostAnswer {
  const place = placeOf(checked, params);
  if (!place) return { version: checked.version, reason: CHANGED };
  const { owner, sheet, bridge } = place;
  const { wanted } = params;
  const { version } = owner;
  const ghost = ghostOf(owner.report, sheet, bridge, 'remove' in wanted ? {} : wanted);
  if (typeof ghost === 'string') return { version, reason: ghost };
  const at = interpolate(ghost.from, ghost.to, 0.5);
  const change = changeOf(bridge, 'remove' in wanted || !wanted.to ? wanted : { ...wanted, to: at });
  return { version, title: titleOfChange(sheet, bridge, change), ghost: bridgePreviewDataOf(ghost) };
}

export function changedBridge(
  checked: CheckedDocument,
  params: Omit<ChangeBridgeParams, 'uri'>,
): BridgeOffer | BridgeRefusal {
  const place = placeOf(checked, params);
  if (!place) return { version: checked.version, reason: CHANGED };
  const { owner, sheet, bridge } = place;
  const fix = changeBridge(owner.report, sheet, bridge, changeOf(bridge, params.wanted));
  return isRefusal(fix) ? refused(owner, fix) : bridgeOffer(owner, fix);
}

function placeOf(
  checked: CheckedDocument,
  { layer, version, bridge: id }: Omit<ChangeBridgeParams, 'uri'>,
): { owner: CheckedDocument; sheet: Sheet; bridge: StandingBridge } | undefined {
  const owner = checked.named(fileOfLayer(layer));
  const sheet = owner?.report.sheets.find((each) => each.layer.id === layer);
  if (!owner || !sheet || owner.version !== version) return undefined;
  const bridge = bridgesOf(owner.report, sheet).find((_bridge, i) => idOf(layer, i) === id);
  return bridge && { owner, sheet, bridge };
}

function changeOf({ centre }: StandingBridge, wanted: WantedBridge): BridgeChange {
  if ('remove' in wanted) return { kind: 'remove' };
  const { to, width } = wanted;
  if (to === undefined && width !== undefined) return { kind: 'width', width };
  return { kind: 'move', to: to ?? centre, ...(width !== undefined && { width }) };
}
