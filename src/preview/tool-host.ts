/** What the tools ask and do, by way of the page: each question is about the text that is shown. */
import type { LayerId } from '../engine/index';
import type { Point } from '../geometry/base/curve-types';
import type { PreviewStack } from '../protocol/index';
import type { ChangeBridgeParams, StandingBridgeData, WantedBridge } from '../protocol/standing-bridges';
import type { BenchRequests } from './state/requests';
import type { ToolHost } from './tools/tool-context';

/** As much of the page as tools need. */
export interface ToolPage {
  readonly requests: BenchRequests;
  stack(): PreviewStack | undefined;
  undo(): void;
  reveal(uri: string, from: number, to: number): void;
  bringIntoView(point: Point): void;
  holdView(held: boolean): void;
  slipping(): boolean;
}

export function toolHost(page: ToolPage): ToolHost {
  const { requests } = page;
  const versionOf = (layer: LayerId): number => versionIn(page.stack(), layer);
  const changeOf = ({ id, layer }: StandingBridgeData, wanted: WantedBridge): Omit<ChangeBridgeParams, 'uri'> => ({
    layer,
    version: versionOf(layer),
    bridge: id,
    wanted,
  });
  /** What is asked about a layer, of its text as it is shown. */
  const shown = <Asked extends { readonly layer: LayerId }>(asked: Asked): Asked & { readonly version: number } => ({
    ...asked,
    version: versionOf(asked.layer),
  });
  return {
    partAt: (places, reach, sheets) => requests.ask({ kind: 'partAt', places, reach, sheets }),
    part: (layer, number) => requests.ask({ kind: 'part', layer, number }),
    bridgeAt: (layer, point) => requests.ask({ kind: 'bridgeAt', ...shown({ layer, point }) }),
    bridgePlan: (finding) => requests.ask({ kind: 'bridgePlan', finding }),
    standingBridges: () => requests.ask({ kind: 'standingBridges' }),
    bridgeGhost: (bridge, wanted) => requests.ask({ kind: 'bridgeGhost', ...changeOf(bridge, wanted) }),
    changeBridge: (bridge, wanted) => requests.ask({ kind: 'changeBridge', ...changeOf(bridge, wanted) }),
    layerSketch: (asked) => requests.ask({ kind: 'layerSketch', ...shown(asked) }),
    layerPlan: (asked) => requests.ask({ kind: 'layerPlan', ...shown(asked) }),
    planGhost: (asked) => requests.ask({ kind: 'planGhost', ...shown(asked) }),
    dropLayerPlan: () => void requests.ask({ kind: 'dropLayerPlan' }),
    undo: () => page.undo(),
    putIn: async (keep = false) => (await requests.ask({ kind: 'putIn', keep })) ?? false,
    reveal: ({ uri, from, to }) => page.reveal(uri, from, to),
    bringIntoView: (point) => page.bringIntoView(point),
    holdView: (held) => page.holdView(held),
    slipping: () => page.slipping(),
  };
}

/** Of the document that a layer is cut from. */
function versionIn(stack: PreviewStack | undefined, layer: LayerId): number {
  const uri = stack?.layers.find(({ id }) => id === layer)?.uri;
  return stack?.documents.find((document) => document.uri === uri)?.version ?? 0;
}
