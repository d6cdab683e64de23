/** The bridges of a whole layer, as the bench shows them before they are in the text. */
import { type BridgeStyle, bridgeStyleOf } from '../../config/bridge-style';
import { styleEdits } from '../../config/keep-style';
import { effectiveConfig } from '../../engine/check/effective-config';
import { layerBridges, movedPlanFix, movedTogether, type Sheet, sketchedBridges } from '../../engine/index';
import type {
  LayerPlan,
  LayerPlanParams,
  LayerSketch,
  LayerSketchParams,
  LeftIsland,
  PlanGhost,
  PlanGhostParams,
} from '../../protocol/layer-plan';
import { isRefusal } from '../../report/refusal';
import { fileOfLayer } from '../../sheet/layer/layer-id';
import type { CheckedDocument } from '../documents/checked-document';
import { bridgeOffer, bridgePreviewDataOf, refused } from './bridge-requests';
import { regionPath } from './preview-model';
import type { OpenConfig } from './reordering';

/** Quick: planned, but not proven. */
export function layerSketch(checked: CheckedDocument, params: Omit<LayerSketchParams, 'uri'>): LayerSketch | undefined {
  const place = placeOf(checked, params);
  if (!place) return undefined;
  const { owner, sheet, stated, style } = place;
  const bridges = sketchedBridges(owner.report, sheet, style).map(bridgePreviewDataOf);
  return { version: owner.version, layer: sheet.layer.id, style, stated, bridges };
}

/** @returns undefined where there is no such layer, or its text has changed since */
export function layerPlan(
  checked: CheckedDocument,
  params: Omit<LayerPlanParams, 'uri'>,
  openConfig?: OpenConfig,
): LayerPlan | undefined {
  const place = placeOf(checked, params);
  if (!place) return undefined;
  const { owner, sheet, stated, style } = place;
  const { report, version } = owner;
  const { previews, left } = layerBridges(report, sheet, style);
  const fix = movedPlanFix(report, sheet, style, params.moved ?? []);
  const keep = keeping(owner, sheet, style, openConfig);
  return {
    version,
    layer: sheet.layer.id,
    style,
    stated,
    bridges: previews.map(bridgePreviewDataOf),
    answer: isRefusal(fix) ? refused(owner, fix) : bridgeOffer(owner, fix),
    told: isRefusal(fix) ? [] : fix.brings.map(({ message }) => message),
    left: [...left].map(
      ([{ label, polygon }, { reason, first }]): LeftIsland => ({
        at: label,
        outline: regionPath([polygon]),
        reason,
        ...(first !== undefined && { first }),
      }),
    ),
    ...(keep && { keep }),
  };
}

/** Quick: planned, but not proven. */
export function planGhost(checked: CheckedDocument, params: Omit<PlanGhostParams, 'uri'>): PlanGhost | undefined {
  const place = placeOf(checked, params);
  if (!place) return undefined;
  const { owner, sheet, style } = place;
  const { bridges, reason } = movedTogether(owner.report, sheet, style, params.moved ?? [], params.move);
  return {
    version: owner.version,
    ghosts: bridges.map(({ bridge, preview }) => ({ bridge, preview: bridgePreviewDataOf(preview) })),
    ...(reason !== undefined && { reason }),
  };
}

interface Place {
  readonly owner: CheckedDocument;
  readonly sheet: Sheet;
  readonly stated: BridgeStyle;
  readonly style: BridgeStyle;
}

function placeOf(
  checked: CheckedDocument,
  { layer, version, style }: Omit<LayerSketchParams, 'uri'>,
): Place | undefined {
  const owner = checked.named(fileOfLayer(layer));
  const sheet = owner?.report.sheets.find((each) => each.layer.id === layer);
  if (!owner || !sheet || owner.version !== version) return undefined;
  const stated = bridgeStyleOf(effectiveConfig(owner.report.settings), sheet.layer.name);
  return { owner, sheet, stated, style: style ?? stated };
}

/** Of a `tombolo.json` that is being written just now nothing is known. */
function keeping(
  { config }: CheckedDocument,
  { layer: { name } }: Sheet,
  style: BridgeStyle,
  openConfig?: OpenConfig,
): LayerPlan['keep'] {
  if (!config || (openConfig && openConfig.text !== config.text)) return undefined;
  const edits = styleEdits(config.text, config.config.bridges, name, style);
  return edits.length > 0 ? { uri: config.uri, version: openConfig?.version ?? 0, edits } : undefined;
}
