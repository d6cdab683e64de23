/** Plans of a layer as the server would answer them. Sheet mm. */
import type { Point } from '../../../src/geometry/base/curve-types';
import type { BridgeOffer, BridgePreviewData } from '../../../src/protocol/index';
import type { LayerPlan, PlanGhost } from '../../../src/protocol/layer-plan';
import { layerId } from '../../../src/sheet/layer/layer-id';

export const SUN = layerId('', 0);

/** An upright bridge of 0.8 × 2 mm about a point. */
export function bridgeAt({ x, y }: Point): BridgePreviewData {
  const [from, to] = [
    { x, y: y - 1 },
    { x, y: y + 1 },
  ];
  const outline = `M${x - 0.4} ${y - 1}L${x + 0.4} ${y - 1}L${x + 0.4} ${y + 1}L${x - 0.4} ${y + 1}Z`;
  return { layer: SUN, outline, from, to, width: 0.8, length: 2, shown: 1 };
}

export const LEFT = bridgeAt({ x: 10, y: 20 });
export const RIGHT = bridgeAt({ x: 30, y: 20 });

export const ghostAt = (bridge: number, at: Point): PlanGhost['ghosts'][number] => ({ bridge, preview: bridgeAt(at) });

const OFFER: BridgeOffer = {
  uri: 'file:///sun.svg',
  version: 1,
  kind: 'bridge-layer',
  title: 'Bridge every island in layer "Sun" (2 bridges of 0.80 mm)',
  edits: [],
  bridges: [LEFT, RIGHT],
};

export function madePlan(more: Partial<LayerPlan> = {}): LayerPlan {
  const bridges = [LEFT, RIGHT];
  return { version: 1, layer: SUN, style: 'auto', stated: 'auto', bridges, answer: OFFER, told: [], left: [], ...more };
}
