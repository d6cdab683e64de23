import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { check } from '../../../src/engine/index';
import type { BridgeAnswer, BridgeOffer } from '../../../src/protocol/index';
import { CheckedDocument } from '../../../src/server/documents/checked-document';
import { bridgeOfferAt, bridgePlan } from '../../../src/server/preview/bridge-requests';
import { applyEdits } from '../../../src/text/text';

const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="60mm" height="30mm"
  viewBox="0 0 60 30">
<g id="ink"><path d="M5 5h20v20h-20z M10 10v10h10v-10z"/><path d="M35 5h20v20h-20z M40 10v10h10v-10z"/></g>
<g id="sun"><path d="M2 2h6v26h-6z"/></g>
</svg>`;
const uri = 'file:///two.svg';
const checked = CheckedDocument.check(TextDocument.create(uri, 'xml', 3, text), undefined);

const islands = (svg: string) => check(svg).findings.filter((finding) => finding.check === 'floating-island').length;

function offered(answer: BridgeAnswer): BridgeOffer {
  if (!answer || 'refusal' in answer) throw new Error(answer?.refusal ?? 'no answer');
  return answer;
}

test('a bridge at a point comes with its ghost and the edits that put it there', () => {
  const offer = offered(bridgeOfferAt(checked, { uri, layer: 0, point: { x: 8, y: 14 } }));
  expect(offer).toMatchObject({ version: 3, kind: 'bridge-here' });
  const [ghost] = offer.bridges;
  expect(ghost).toMatchObject({ layer: 0, width: 0.8, outline: expect.stringMatching(/^M[-\d. L]+Z$/) });
  expect(ghost!.length).toBeCloseTo(5, 2);
  // The sun's layer paints over 3 of its 5 mm.
  expect(ghost!.shown).toBeCloseTo(2 / 5, 2);
  expect(islands(applyEdits(text, offer.edits))).toBe(1);
});

test('where no bridge can be, one sentence says why', () => {
  for (const answer of [
    bridgeOfferAt(checked, { uri, layer: 0, point: { x: 30, y: 2 } }),
    bridgeOfferAt(checked, { uri, layer: 7, point: { x: 30, y: 2 } }),
    bridgePlan(checked, { uri, version: 2, finding: 0 }),
    bridgePlan(checked, { uri, version: 3, finding: 99 }),
    bridgePlan(checked, { uri, version: 3, finding: 0, mend: 'accept' }),
  ])
    expect(answer).toEqual({ version: 3, refusal: expect.stringMatching(/^[A-Z][^\n]*\.$/) });
});

test('the plan of a finding is that of its preferred mend, or of the one asked for', () => {
  const plan = offered(bridgePlan(checked, { uri, version: 3, finding: 0 }));
  expect(plan.kind).toBe('bridge-island');
  expect(plan.bridges.every(({ layer }) => layer === 0)).toBe(true);
  expect(islands(applyEdits(text, plan.edits))).toBe(1);
  const layer = offered(bridgePlan(checked, { uri, version: 3, finding: 0, mend: 'bridge-layer' }));
  expect(layer.bridges).toHaveLength(4);
  expect(islands(applyEdits(text, layer.edits))).toBe(0);
});
