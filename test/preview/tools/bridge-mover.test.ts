// @vitest-environment jsdom
/** What is written when Enter comes before the proof: once, and the ghost stands until the new text is shown. */
import { describe, expect, it, vi } from 'vitest';
import { IDENTITY } from '../../../src/geometry/base/matrix';
import { BridgeBar } from '../../../src/preview/tools/bridge-bar';
import { BridgeMover } from '../../../src/preview/tools/bridge-mover';
import { ToolContext, type ToolHost } from '../../../src/preview/tools/tool-context';
import type { BridgeOffer } from '../../../src/protocol/index';
import type { StandingBridgeData } from '../../../src/protocol/standing-bridges';
import { layerId } from '../../../src/sheet/layer/layer-id';
import { madeStack } from '../made-stack';

const layer = layerId('', 0);
const text = { uri: 'file:///heron.svg', from: 0, to: 1 };
const bridge: StandingBridgeData = {
  ...{ id: `${layer}/bridge-0`, layer, width: 0.8, length: 2.4, ...text },
  ...{ centre: { x: 5, y: 5 }, along: { x: 0, y: 1 } },
};
const offer: BridgeOffer = {
  uri: text.uri,
  version: 1,
  kind: 'change',
  title: 'Move this bridge',
  bridges: [],
  edits: [],
};
const press = (key: string) => ({ key, shiftKey: false, altKey: false });

function mover(putIn: ToolHost['putIn']) {
  const proofs: ((answer: BridgeOffer) => void)[] = [];
  const host: Partial<ToolHost> = {
    standingBridges: async () => ({ version: 1, bridges: [bridge] }),
    bridgeGhost: async () => undefined,
    changeBridge: () => new Promise((resolve) => proofs.push(resolve)),
    putIn,
  };
  const context = new ToolContext(host as ToolHost, () => undefined);
  context.stack = madeStack({ names: ['Sun'] });
  context.scene = { kind: 'print', sceneLayers: [{ layer: 0, place: IDENTITY }] };
  const bar = new BridgeBar(
    () => undefined,
    () => undefined,
  );
  return { mover: new BridgeMover(context, bar), bar, proofs };
}

describe('Enter before the proof', () => {
  it('writes once, though two proofs were asked for, and keeps the ghost', async () => {
    const putIn = vi.fn(async () => putIn.mock.calls.length === 1);
    const { mover: hand, bar, proofs } = mover(putIn);
    hand.select(bridge);
    hand.key(press('ArrowRight'));
    await vi.waitFor(() => expect(proofs).toHaveLength(1));
    hand.key(press('Enter'));
    await vi.waitFor(() => expect(proofs).toHaveLength(2));
    for (const answer of proofs) answer(offer);
    await vi.waitFor(() => expect(bar.element.textContent).toContain('Bridge changed.'));
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(putIn).toHaveBeenCalledTimes(1);
    expect(bar.element.textContent).toContain('Bridge changed.');
    hand.draw();
    expect(hand.handles.element.dataset.state).toBe('moved');
  });
});
