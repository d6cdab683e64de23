/** Islands that later layers paint over, as the bench and the command for the whole file treat them. */
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/index';
import type { BridgeOffer } from '../../../src/protocol/index';
import { applyEdits } from '../../../src/text/text';
import { bridged } from '../../../src/worker/bench/bridge-all';
import { bridgePlan } from '../../../src/worker/bench/bridge-requests';
import { CheckedDocument } from '../../../src/worker/documents/checked-document';
import { DocumentFixes } from '../../../src/worker/fixes/document-fixes';

const text = `<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="60mm" height="30mm"
  viewBox="0 0 60 30">
<g id="Water"><path d="M5 5h20v20h-20z M10 10v10h10v-10z"/><path d="M35 5h20v20h-20z M40 10v10h10v-10z"/></g>
<g id="Heron"><path d="M8 8h14v14h-14z"/></g>
</svg>`;
const checked = CheckedDocument.check({ uri: 'file:///pond.svg', version: 3, open: true, text }, undefined);
const islands = (svg: string) => check(svg).findings.filter((finding) => finding.check === 'floating-island').length;

describe('every island of a document', () => {
  it('is bridged, and it is said how many need no bridge', () => {
    const { edits, ...told } = bridged(checked, {});
    expect(told).toEqual({ version: 3, bridges: 4, refusals: [], covered: 1, cutAway: 0 });
    expect(islands(applyEdits(text, edits))).toBe(0);
  });

  it('is cut away where later layers paint over it, if that is asked for', () => {
    const { edits, ...told } = bridged(checked, { cutCovered: true });
    expect(told).toEqual({ version: 3, bridges: 2, refusals: [], covered: 1, cutAway: 1 });
    const changed = applyEdits(text, edits);
    expect(islands(changed)).toBe(0);
    expect(changed).toContain('d="M5 5h20v20h-20z"');
  });
});

describe('what the bench offers for an island', () => {
  const fixes = new DocumentFixes(checked);
  const planFor = (severity: 'info' | 'error') => {
    const found = checked.report.findings.find((finding) => finding.severity === severity);
    return bridgePlan(checked, { finding: found!.id }, () => fixes) as BridgeOffer;
  };

  it('that later layers paint over is to cut it away, and which part goes', () => {
    const offer = planFor('info');
    expect(offer).toMatchObject({
      kind: 'cut-covered-island',
      title: 'Cut it away: "Heron" is painted over it',
      bridges: [],
      cutAway: [{ layer: checked.report.sheets[0]?.layer.id, outline: expect.stringMatching(/^M[-\d. L]+Z$/) }],
    });
    expect(islands(applyEdits(text, offer.edits))).toBe(1);
  });

  it('that shows are its bridges', () => {
    expect(planFor('error')).toMatchObject({ kind: 'bridge-island', bridges: [{}, {}] });
    expect(planFor('error')).not.toHaveProperty('cutAway');
  });
});
