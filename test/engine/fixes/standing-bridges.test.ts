/** All bridges that stand in a layer, and what holds whichever way one of them is moved. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it, it as test } from 'vitest';
import { bridgeIslands, type PlannedBridge } from '../../../src/engine/fixes/bridge-islands';
import { type BridgeChange, changeBridge } from '../../../src/engine/fixes/change-bridge';
import { ghostOf } from '../../../src/engine/fixes/plan-change';
import { bridgesOf, lengthOf } from '../../../src/engine/fixes/standing-bridges';
import { distance, interpolate } from '../../../src/geometry/base/vector';
import type { Fix } from '../../../src/report/fix';
import { isRefusal, type Result } from '../../../src/report/refusal';
import type { Report } from '../../../src/report/report';
import { applyEdits } from '../../../src/text/text';
import { areaBetween, areaOfRegion } from '../../edits/bridging';
import { drawings, lines, outlines, sheets } from '../../edits/drawings';
import { rasterIslands, rasterise } from '../../outside/raster';
import { checksOnce } from '../results';

const check = checksOnce();

const demo = readFileSync(path.join(import.meta.dirname, '../../../media/demo/waymarker.svg'), 'utf8');

function done(fix: Result<Fix>, text: string): string {
  if (isRefusal(fix)) throw new Error(fix.reason);
  return applyEdits(text, fix.edits);
}

const rounded = (value: number): number => Math.round(100 * value) / 100;

describe('the bridges of the demo', () => {
  const { text, plan } = bridgeIslands(check(demo));
  const report = check(text);
  const listed = report.sheets.map((sheet) => ({ sheet, bridges: bridgesOf(report, sheet) }));

  it('are those that were put in, the ties of the heron, and the gaps between the corners of the frame', () => {
    const told = listed.map(({ sheet, bridges }) => [
      sheet.layer.name,
      ...bridges.map((bridge) => `${rounded(bridge.width).toFixed(2)} x ${rounded(lengthOf(bridge)).toFixed(1)}`),
    ]);
    expect(told).toEqual([
      ['Sun', '0.80 x 2.4', '0.80 x 2.4'],
      ['Reeds'],
      ['Heron', '1.00 x 1.6', '1.00 x 2.1', '1.00 x 1.8', '1.00 x 1.9'],
      [
        'Numeral',
        '4.00 x 1.4',
        // Through both counters of the 8 in one upright line.
        ...['0.80 x 5.6', '0.80 x 10.0'],
        ...['4.00 x 1.4', '4.00 x 1.4'],
        '0.80 x 6.4',
        '4.00 x 1.4',
      ],
    ]);
    for (const { layerId, from, to } of plan) {
      const there = listed.find(({ sheet }) => sheet.layer.id === layerId)?.bridges ?? [];
      expect(there.some(({ centre }) => distance(centre, interpolate(from, to, 0.5)) < 0.1)).toBe(true);
    }
  });

  it('are the same list for the same report', () => {
    const [first] = listed;
    expect(bridgesOf(report, first!.sheet)).toBe(first!.bridges);
  });

  it('leave a print as it was when they are moved there and back', () => {
    const { sheet, bridges } = listed[0]!;
    const bridge = bridges[0]!;
    const ghost = ghostOf(report, sheet, bridge, { to: { x: bridge.centre.x + 3, y: bridge.centre.y + 9 } });
    if (typeof ghost === 'string') throw new Error(ghost);
    const to = interpolate(ghost.from, ghost.to, 0.5);
    const moved = done(changeBridge(report, sheet, bridge, { kind: 'move', to }), text);
    const there = check(moved);
    const again = bridgesOf(there, there.sheets[0]!).find(({ centre }) => distance(centre, to) < 0.05)!;
    expect(again.width).toBeCloseTo(bridge.width, 2);
    const back = done(changeBridge(there, there.sheets[0]!, again, { kind: 'move', to: bridge.centre }), moved);
    for (const [i, { openings, cutLength }] of check(back).sheets.entries()) {
      expect(areaBetween(openings, report.sheets[i]!.openings)).toBeLessThan(0.01 + 2e-4 * cutLength);
    }
  });
});

const all: Record<string, string> = { ...drawings, ...sheets, ...outlines };

describe.each(Object.keys(all))('each bridge in %s', (what) => {
  let report: Report;
  let text = '';
  let plan: readonly PlannedBridge[] = [];

  beforeAll(() => {
    ({ text, plan } = bridgeIslands(check(all[what]!)));
    report = check(text);
  });

  test('is in the list, once', () => {
    const sheet = report.sheets[0]!;
    const centres = bridgesOf(report, sheet).map(({ centre }) => centre);
    const put = plan.map(({ from, to }) => interpolate(from, to, 0.5));
    for (const place of put) expect(centres.filter((centre) => distance(centre, place) < 0.2)).toHaveLength(1);
  });

  test('stands, once it is put in, where its ghost stood, and holds what it held', () => {
    const sheet = report.sheets[0]!;
    const bridge = bridgesOf(report, sheet)[0]!;
    const before = rasterIslands(rasterise(text, 600)).filter(
      ({ touchesBorder, pixels }) => !touchesBorder && pixels > 30,
    );
    let tried = 0;
    for (const change of changesOf(bridge.centre, bridge.width - sheet.kerf)) {
      const ghost = ghostOf(report, sheet, bridge, change.kind === 'remove' ? {} : change);
      const fix = changeBridge(report, sheet, bridge, change);
      if (typeof ghost === 'string' || isRefusal(fix)) continue;
      tried += 1;
      const [put] = fix.bridges ?? [];
      if (!put) continue;
      expect(areaBetween([put.strip], [ghost.strip])).toBeLessThan(0.02 * areaOfRegion([ghost.strip]));
      const after = applyEdits(text, fix.edits);
      const islands = rasterIslands(rasterise(after, 600)).filter(
        ({ touchesBorder, pixels }) => !touchesBorder && pixels > 30,
      );
      expect(islands.length).toBeLessThanOrEqual(before.length);
      const stands = bridgesOf(check(after), check(after).sheets[0]!);
      expect(stands.some(({ centre }) => distance(centre, interpolate(put.from, put.to, 0.5)) < 0.2)).toBe(true);
    }
    expect(tried).toBeGreaterThan(0);
  });
});

function changesOf({ x, y }: { readonly x: number; readonly y: number }, width: number): BridgeChange[] {
  return [
    { kind: 'width', width: width + 0.2 },
    { kind: 'move', to: { x: x + 0.4, y } },
    { kind: 'move', to: { x, y: y + 0.4 }, width: width + 0.1 },
  ];
}

describe('lines with gaps in them', () => {
  it.each(Object.keys(lines))('%s: what was put in can be found again', (what) => {
    const { text, plan } = bridgeIslands(check(lines[what]!));
    const report = check(text);
    const centres = bridgesOf(report, report.sheets[0]!).map(({ centre }) => centre);
    const found = plan.filter(({ from, to }) => centres.some((c) => distance(c, interpolate(from, to, 0.5)) < 0.5));
    expect(found).toHaveLength(plan.length);
  });
});

describe('a ghost', () => {
  const { text } = bridgeIslands(check(drawings['a letter, evenodd']!));
  const report = check(text);
  const sheet = report.sheets[0]!;
  const bridge = bridgesOf(report, sheet)[0]!;

  it('stands at the nearest place of the gap, wherever the pointer is', () => {
    const ghost = ghostOf(report, sheet, bridge, { to: { x: -20, y: bridge.centre.y } });
    expect(typeof ghost).toBe('object');
    const far = changeBridge(report, sheet, bridge, { kind: 'move', to: { x: -20, y: bridge.centre.y } });
    expect(far).toMatchObject({ reason: expect.stringMatching(/only within its own gap/) });
  });

  it('is as wide as it is asked to be', () => {
    expect(ghostOf(report, sheet, bridge, { width: 1.7 })).toMatchObject({ width: expect.closeTo(1.7, 6) });
  });
});
