import { expect, test } from 'vitest';
import { check } from '../../../src/engine/index';
import type { BridgeAnswer, BridgeOffer, BridgePlanParams } from '../../../src/protocol/index';
import type { FindingId } from '../../../src/report/finding-id';
import { layerId } from '../../../src/sheet/layer/layer-id';
import { applyEdits } from '../../../src/text/text';
import { bridgeOfferAt, bridgePlan } from '../../../src/worker/bench/bridge-requests';
import { CheckedDocument } from '../../../src/worker/documents/checked-document';
import { DocumentFixes } from '../../../src/worker/fixes/document-fixes';

const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="60mm" height="30mm"
  viewBox="0 0 60 30">
<g id="ink"><path d="M5 5h20v20h-20z M10 10v10h10v-10z"/><path d="M35 5h20v20h-20z M40 10v10h10v-10z"/></g>
<g id="sun"><path d="M2 2h6v26h-6z"/></g>
</svg>`;
const uri = 'file:///two.svg';
const checked = CheckedDocument.check({ uri, version: 3, open: true, text }, undefined);
const fixes = new DocumentFixes(checked);
const [ink, sun] = checked.report.sheets.map(({ layer }) => layer.id);
const [island] = checked.report.findings;
const plan = (params: Partial<BridgePlanParams>) =>
  bridgePlan(checked, { finding: island!.id, ...params }, () => fixes);

const islands = (svg: string) => check(svg).findings.filter((finding) => finding.check === 'floating-island').length;

function offered(answer: BridgeAnswer): BridgeOffer {
  if (!answer || 'reason' in answer) throw new Error(answer?.reason ?? 'no answer');
  return answer;
}

test('a bridge at a point comes with its ghost and the edits that put it there', () => {
  const offer = offered(bridgeOfferAt(checked, { layer: ink!, version: 3, point: { x: 8, y: 14 } }));
  expect(offer).toMatchObject({ version: 3, kind: 'bridge-here' });
  const [ghost] = offer.bridges;
  expect(ghost).toMatchObject({ layer: ink, width: 0.8, outline: expect.stringMatching(/^M[-\d. L]+Z$/) });
  expect(ghost!.length).toBeCloseTo(5, 2);
  // The sun's layer paints over 3 of its 5 mm.
  expect(ghost!.shown).toBeCloseTo(2 / 5, 2);
  expect(islands(applyEdits(text, offer.edits))).toBe(1);
});

test('where no bridge can be, one sentence says why', () => {
  for (const answer of [
    bridgeOfferAt(checked, { layer: ink!, version: 3, point: { x: 30, y: 2 } }),
    bridgeOfferAt(checked, { layer: ink!, version: 2, point: { x: 8, y: 14 } }),
    bridgeOfferAt(checked, { layer: layerId('', 7), version: 3, point: { x: 30, y: 2 } }),
    bridgeOfferAt(checked, { layer: sun!, version: 3, point: { x: 30, y: 2 } }),
    plan({ finding: island!.id.replace('/0', '/99') as FindingId }),
    plan({ finding: `@of-another-version/${island!.check}/0` as FindingId }),
    plan({ mend: 'accept' }),
  ])
    expect(answer).toEqual({ version: 3, reason: expect.stringMatching(/^[A-Z][^\n]*\.$/) });
});

test('the plan of a finding is that of its preferred mend, or of the one asked for', () => {
  const usual = offered(plan({}));
  expect(usual.kind).toBe('bridge-island');
  expect(usual.bridges.every(({ layer }) => layer === ink)).toBe(true);
  expect(islands(applyEdits(text, usual.edits))).toBe(1);
  const layer = offered(plan({ mend: 'bridge-layer' }));
  expect(layer.bridges).toHaveLength(4);
  expect(islands(applyEdits(text, layer.edits))).toBe(0);
});
