import { expect, test } from 'vitest';
import { check } from '../../../src/engine/index';
import type { BridgeOffer, BridgeRefusal } from '../../../src/protocol/index';
import { applyEdits } from '../../../src/text/text';
import { bridgeGhost, changedBridge, standingBridges } from '../../../src/worker/bench/standing-bridge-requests';
import { CheckedDocument } from '../../../src/worker/documents/checked-document';

/** A ring on two bridges of 0.80 mm, and below it, in another layer, nothing of the kind. */
const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="60mm" height="60mm"
  viewBox="0 0 60 60">
<g id="ink"><path d="M5 5h20v9.6h-5v-4.6h-10v4.6h-5z M5 15.4h5v4.6h10v-4.6h5v9.6h-20z"/></g>
<g id="sun"><path d="M2 40h6v12h-6z"/></g>
</svg>`;
const uri = 'file:///ring.svg';
const checked = CheckedDocument.check({ uri, version: 3, open: true, text }, undefined);
const { bridges } = standingBridges(checked);
const [left] = bridges;
const { layer, id: bridge } = left!;

function proven(answer: BridgeOffer | BridgeRefusal): BridgeOffer {
  if ('reason' in answer) throw new Error(answer.reason);
  return answer;
}

test('the bridges of all layers are listed, each with the text of one of its sides', () => {
  expect(bridges).toHaveLength(2);
  expect(left).toMatchObject({ uri, width: expect.closeTo(0.8, 6), length: expect.closeTo(5, 6) });
  expect(left!.centre).toEqual({ x: expect.closeTo(7.5, 6), y: expect.closeTo(15, 6) });
  expect(['h-5', 'h5']).toContain(text.slice(left!.from, left!.to).trim());
  expect(new Set(bridges.map(({ id }) => id)).size).toBe(2);
});

test('a ghost stands where a pointer takes it, and what is then proven stands there, too', () => {
  const ghost = bridgeGhost(checked, { layer, version: 3, bridge, wanted: { to: { x: -5, y: 20 }, width: 1.2 } });
  if ('reason' in ghost) throw new Error(ghost.reason);
  expect(ghost.ghost).toMatchObject({ layer, width: expect.closeTo(1.2, 6) });
  expect(ghost.title).toMatch(/^Move this bridge \d\.\d\d mm down, 1\.20 mm wide$/);
  const { from, to } = ghost.ghost;
  const place = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const offer = proven(changedBridge(checked, { layer, version: 3, bridge, wanted: { to: place, width: 1.2 } }));
  expect(offer).toMatchObject({ uri, version: 3, kind: 'move-bridge', title: ghost.title });
  const after = CheckedDocument.check({ uri, version: 4, open: true, text: applyEdits(text, offer.edits) }, undefined);
  const there = standingBridges(after).bridges.find(({ width }) => Math.abs(width - 1.2) < 0.01);
  expect(Math.hypot(there!.centre.x - place.x, there!.centre.y - place.y)).toBeLessThan(0.05);
});

test('the last bridge that is removed says what falls out', () => {
  const offer = proven(changedBridge(checked, { layer, version: 3, bridge, wanted: { remove: true } }));
  const text2 = applyEdits(text, offer.edits);
  expect(offer.title).toBe('Remove this bridge');
  const second = CheckedDocument.check({ uri, version: 4, open: true, text: text2 }, undefined);
  const [last, ...others] = standingBridges(second).bridges;
  expect(others).toEqual([]);
  const wanted = { remove: true } as const;
  const both = proven(changedBridge(second, { layer: last!.layer, version: 4, bridge: last!.id, wanted }));
  expect(both.title).toMatch(/^Remove this bridge \(it is the last: 100\.0 mm² will fall out\)/);
  expect(check(applyEdits(text2, both.edits)).findings.map((finding) => finding.check)).toContain('floating-island');
});

test('of another version of the text nothing is changed', () => {
  const params = { layer, version: 2, bridge, wanted: { width: 1.2 } };
  expect(bridgeGhost(checked, params)).toEqual({ version: 3, reason: expect.stringMatching(/has changed since/) });
  expect(changedBridge(checked, params)).toEqual({ version: 3, reason: expect.stringMatching(/has changed since/) });
});
