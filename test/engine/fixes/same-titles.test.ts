/** Two layers of one title are two layers: what is asked for one is not done to the other. */

import { describe, expect, it } from 'vitest';
import { hiddenOn } from '../../../src/engine/fixes/bridging/plan';
import { verify } from '../../../src/engine/fixes/verify';
import {
  bridgeIslands,
  candidatesFor,
  check,
  checkProject,
  fixesFor,
  proveFix,
  readConfig,
} from '../../../src/engine/index';
import { areaOf } from '../../../src/geometry/boolean/index';
import { isRefusal } from '../../../src/report/refusal';
import type { Report } from '../../../src/report/report';
import { layerId } from '../../../src/sheet/layer/layer-id';
import { applyEdits } from '../../../src/text/text';
import { proven, reasonOf } from '../results';

const stencil = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;
const ring = (x: number, y: number) =>
  `<path fill-rule="evenodd" d="M${x - 10} ${y - 10}h20v20h-20zM${x - 6} ${y - 6}h12v12h-12z"/>`;
const layer = (...shapes: string[]) => `<g><title>sky</title>${shapes.join('')}</g>`;

const text = stencil(layer(ring(20, 20), ring(60, 20)) + layer(ring(20, 60), ring(60, 60)));
const islands = (svg: string) => check(svg).sheets.map(({ pieces }) => pieces.filter(({ island }) => island).length);

describe('of two layers of one title', () => {
  const report = check(text);
  const findingsIn = (ordinal: number) => report.findings.filter((finding) => finding.layerId === layerId('', ordinal));

  it.each([0, 1])('layer %i is bridged where its own finding asks for it, and shown there', (ordinal) => {
    const [finding] = findingsIn(ordinal);
    const { fixes } = fixesFor(report, finding!);
    for (const kind of ['bridge-island', 'bridge-layer']) {
      const fix = fixes.find((each) => each.kind === kind)!;
      expect(fix.layerId).toBe(layerId('', ordinal));
      expect(new Set(fix.bridges?.map((bridge) => bridge.layerId))).toEqual(new Set([layerId('', ordinal)]));
      const left = kind === 'bridge-layer' ? 0 : 1;
      expect(islands(applyEdits(text, fix.edits))).toEqual(ordinal === 0 ? [left, 2] : [2, left]);
    }
  });

  it('the plan of all bridges says which layer each is in', () => {
    const { plan } = bridgeIslands(report);
    for (const { layerId: id, from } of plan) expect(id).toBe(layerId('', from.y < 40 ? 0 : 1));
    expect(new Set(plan.map((bridge) => bridge.layerId)).size).toBe(2);
  });

  it('the proof for one does not let the other change', () => {
    const everywhere = [{ outer: Float64Array.of(0, 0, 100, 0, 100, 100, 0, 100), holes: [] }];
    // The same small change in the outline of an opening, once in each layer.
    const edit = (old: string) => {
      const from = text.indexOf(old);
      return [{ span: { from, to: from + old.length }, text: old.replace('h20v20', 'h20.5v20') }];
    };
    const [inFirst, inSecond] = [edit('M10 10h20v20'), edit('M10 50h20v20')];
    const within = new Map([[layerId('', 0), everywhere]]);
    expect(isRefusal(verify(report, inFirst, { gone: [], within }))).toBe(false);
    expect(reasonOf(verify(report, inSecond, { gone: [], within }))).toMatch(
      /of layer "sky" would change elsewhere\.$/,
    );
  });
});

describe('what later layers paint over', () => {
  const covers = '<rect x="5" y="5" width="40" height="40"/>';
  const report = check(stencil(layer(ring(20, 20)) + layer(covers)));
  const [below, above] = report.sheets;

  it('is what comes after the layer, though its sheet is a copy', () => {
    expect(areaOf(hiddenOn(report, { ...below! }))).toBeCloseTo(40 * 40, 6);
    expect(areaOf(hiddenOn(report, { ...above! }))).toBe(0);
  });
});

describe('a finding that was shown', () => {
  const files = { 'a.svg': stencil(layer(ring(20, 20), ring(60, 20))), 'b.svg': stencil(layer(ring(20, 60))) };
  const { config } = readConfig('{"layers": [{"from": "a.svg"}, {"from": "b.svg"}]}');
  const project = (texts: Readonly<Record<string, string>>) => checkProject(new Map(Object.entries(texts)), { config });
  const first = project(files).files.get('a.svg') as Report;

  it('is bridged in its own place after another file was edited', () => {
    const [, second] = first.findings.filter((finding) => finding.check === 'floating-island');
    const [candidate] = candidatesFor(first, second!);
    // Two islands more in the other file: every finding behind them in a common list has another number.
    const other = stencil(layer(ring(20, 60), ring(60, 60), ring(60, 20)));
    const now = project({ ...files, 'b.svg': other });
    for (const asked of now.files.values()) {
      const fix = proven(proveFix(asked, candidate!));
      const after = project({ 'b.svg': other, 'a.svg': applyEdits(files['a.svg'], fix.edits) });
      const left = [...after.files].map(([name, { findings }]) => [
        name,
        findings.filter(({ check: id }) => id === 'floating-island').map(({ at }) => Math.round(at!.x / 20) * 20),
      ]);
      expect(Object.fromEntries(left)).toMatchObject({ 'a.svg': [second!.at!.x > 40 ? 20 : 60] });
    }
  });

  it('is not taken for another after its own file was edited', () => {
    const [finding] = first.findings.filter((each) => each.check === 'floating-island');
    const [candidate] = candidatesFor(first, finding!);
    const edited = project({ ...files, 'a.svg': stencil(layer(ring(60, 60))) }).files.get('a.svg') as Report;
    expect(proveFix(edited, candidate!)).toMatchObject({ reason: 'The drawing has changed since; ask again.' });
  });
});
