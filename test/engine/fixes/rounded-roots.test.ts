/** Bridges whose roots are rounded are changed as others are, and no fillet stays behind as a notch. */
import { beforeAll, describe, expect, it, it as test } from 'vitest';
import { AUTO_STYLES, type BridgeRoots } from '../../../src/config/bridge-style';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { bridgeIslands } from '../../../src/engine/fixes/bridge-islands';
import { type BridgeChange, changeBridge, changesFor } from '../../../src/engine/fixes/change-bridge';
import { cutAwayHeld, heldUnderPaint } from '../../../src/engine/fixes/covered/held';
import { layerPlanFix, sketchedBridges } from '../../../src/engine/fixes/layer-plan/layer-bridges';
import { bridgeStandingAt, bridgesOf, lengthOf } from '../../../src/engine/fixes/standing-bridges';
import { check, fixesFor } from '../../../src/engine/index';
import { distance, interpolate } from '../../../src/geometry/base/vector';
import { difference } from '../../../src/geometry/boolean/index';
import { isRefusal } from '../../../src/report/refusal';
import type { Report } from '../../../src/report/report';
import { applyEdits } from '../../../src/text/text';
import { areaBetween, areaOfRegion } from '../../edits/bridging';
import { drawings, outlines, sheets, svg } from '../../edits/drawings';
import { proven } from '../results';

const settings = (roots: BridgeRoots) => ({ config: { ...DEFAULT_CONFIG, bridges: { ...AUTO_STYLES, roots } } });
const rounded = (text: string): Report => check(text, settings('rounded'));
const first = ({ sheets: [sheet] }: Report) => sheet!;
const openArea = (report: Report) => areaOfRegion(first(report).openings);

const some: Record<string, string> = {
  'a letter': drawings['a letter']!,
  'an uneven scale': drawings['an uneven scale']!,
  'two rings, one in the other': drawings['two rings, one in the other']!,
  'two islands in one opening': drawings['two islands in one opening']!,
  'a polygon frame': drawings['a polygon frame']!,
  'an oblique frame': svg('<path fill-rule="evenodd" d="M10 10L50 16L46 50L8 44zM16 18L42 20L41 43L15 40z"/>'),
  ...Object.fromEntries([...Object.entries(outlines), ...Object.entries(sheets)].slice(0, 4)),
};

describe.each(Object.keys(some))('a bridge with rounded roots in %s', (what) => {
  const before = rounded(some[what]!);
  let { text, plan }: Pick<ReturnType<typeof bridgeIslands>, 'text' | 'plan'> = { text: '', plan: [] };
  let after = before;

  beforeAll(() => {
    ({ text, plan } = bridgeIslands(before));
    after = rounded(text);
  });

  const changed = (report: Report, place: { x: number; y: number }, change: BridgeChange): Report => {
    const bridge = bridgeStandingAt(report, first(report), place)!;
    return rounded(applyEdits(report.text, proven(changeBridge(report, first(report), bridge, change)).edits));
  };
  const middle = () => interpolate(plan[0]!.from, plan[0]!.to, 0.5);

  test('is put in once, and where roots are square there is more opening left', () => {
    expect(plan.length).toBeGreaterThan(0);
    expect(plan.every(({ strip }) => strip.fillets?.length === 4)).toBe(true);
    expect(bridgeIslands(after).edits).toEqual([]);
    const square = check(bridgeIslands(check(some[what]!)).text);
    const fillets = plan.flatMap(({ strip }) => strip.fillets ?? []);
    const quarter = fillets.reduce((sum, { radius }) => sum + (1 - Math.PI / 4) * radius ** 2, 0);
    expect(openArea(square) - openArea(after)).toBeGreaterThan(0.7 * quarter);
  });

  test('is recognised from bank to bank, as wide as it is', () => {
    const listed = bridgesOf(after, first(after));
    for (const { from, to, cutWidth, length } of plan) {
      const found = bridgeStandingAt(after, first(after), interpolate(from, to, 0.5))!;
      expect(found.width).toBeCloseTo(cutWidth, 1);
      expect(found.width).toBeGreaterThanOrEqual(cutWidth);
      expect(found.flare).toBeGreaterThan(0.3);
      expect(Math.abs(lengthOf(found) - length)).toBeLessThan(0.25 * cutWidth);
      expect(listed.some(({ centre }) => distance(centre, found.centre) < 0.1)).toBe(true);
    }
  });

  test('is taken out with its fillets: what was open before is open again', () => {
    let now = after;
    for (const { from, to } of plan) now = changed(now, interpolate(from, to, 0.5), { kind: 'remove' });
    const lost = openArea(before) - openArea(after);
    expect(areaBetween(first(now).openings, first(before).openings)).toBeLessThan(0.01 * lost);
  });

  test('is shown as it will be, with its fillets', () => {
    const { edits, bridges: previews = [] } = proven(layerPlanFix(before, first(before), 'auto'));
    const strips = previews.map(({ strip }) => strip);
    expect(strips.every(({ outer }) => outer.length > 8)).toBe(true);
    const now = rounded(applyEdits(before.text, edits));
    const shown = difference(first(before).openings, strips);
    expect(areaBetween(shown, first(now).openings)).toBeLessThan(0.002 * first(before).cutLength);
    // Before any is proven each is sketched by itself.
    const sketched = sketchedBridges(before, first(before), 'auto').map(({ strip }) => strip);
    expect(sketched.every(({ outer }) => outer.length > 8)).toBe(true);
  });

  test('is widened, and its fillets grow with it', () => {
    const width = 1.5 * plan[0]!.cutWidth;
    const now = changed(after, middle(), { kind: 'width', width });
    const found = bridgeStandingAt(now, first(now), middle())!;
    expect(found.width).toBeCloseTo(width, 2);
    expect(found.flare).toBeGreaterThan(0.35 * width);
    const { from, to } = plan[0]!;
    const gone = changed(now, interpolate(from, to, 0.5), { kind: 'remove' });
    const alone = changed(after, interpolate(from, to, 0.5), { kind: 'remove' });
    expect(areaBetween(first(gone).openings, first(alone).openings)).toBeLessThan(0.02 * width * plan[0]!.length);
  });

  test('is moved with its fillets, whatever new bridges get', () => {
    const square = check(text);
    const bridge = bridgeStandingAt(square, first(square), middle())!;
    const moves = changesFor(square, first(square), bridge)
      .filter(({ kind }) => kind === 'move')
      .flatMap((change) => {
        const fix = changeBridge(square, first(square), bridge, change);
        return isRefusal(fix) ? [] : [fix];
      });
    expect(moves.length).toBeGreaterThan(0);
    for (const { edits, bridges: [ghost] = [] } of moves) {
      const now = check(applyEdits(text, edits));
      const there = bridgeStandingAt(now, first(now), interpolate(ghost!.from, ghost!.to, 0.5))!;
      expect(there.width).toBeCloseTo(bridge.width, 1);
      expect(there.flare).toBeGreaterThan(0.3);
      // No more of the opening is lost than another bridge takes with its fillets.
      expect(Math.abs(openArea(now) - openArea(after))).toBeLessThan(1.5 * bridge.width ** 2 + 0.1 * plan[0]!.length);
    }
  });
});

describe('square roots', () => {
  it('are what is made where nothing else is asked for, and stay so', () => {
    for (const text of Object.values(some)) {
      const { text: plain, plan } = bridgeIslands(check(text));
      expect(bridgeIslands(check(text, settings('square'))).text).toBe(plain);
      expect(plan.every(({ strip }) => strip.fillets === undefined)).toBe(true);
      const report = check(plain);
      for (const bridge of bridgesOf(report, first(report))) expect(bridge.flare).toBe(0);
    }
  });
});

test('what rounded bridges hold under later paint is cut away with them', () => {
  const ring = '<path fill-rule="evenodd" fill="#c33" d="M10 10H50V50H10zM24 24H36V36H24z"/>';
  const text = svg(`<g id="a">${ring}</g><g id="b"><rect x="18" y="18" width="24" height="24" fill="#222"/></g>`);
  const before = rounded(text);
  const { text: bridged, bridges } = bridgeIslands(before, { layer: 'a' });
  expect(bridges).toBeGreaterThan(0);
  const report = rounded(bridged);
  const sheet = first(report);
  const [bridge] = bridgesOf(report, sheet);
  expect(bridge!.flare).toBeGreaterThan(0.3);
  const held = heldUnderPaint(report, sheet, bridge!)!;
  const now = rounded(applyEdits(bridged, proven(cutAwayHeld(report, sheet, held)).edits));
  // The outer square alone.
  expect(openArea(now)).toBeCloseTo(1600, 1);
});

test('a bridge that a raised limit finds thin is widened with its fillets', () => {
  const { text } = bridgeIslands(rounded(some['a polygon frame']!));
  const raised = (drawn: string): Report =>
    check(drawn, { config: { ...DEFAULT_CONFIG, limits: { ...DEFAULT_CONFIG.limits, bridge: 1.4 } } });
  let report = raised(text);
  const thin = () => report.findings.filter((finding) => finding.check === 'thin-bridge');
  expect(thin()).toHaveLength(2);
  for (let [finding] = thin(); finding; [finding] = thin()) {
    const fix = fixesFor(report, finding).fixes.find(({ kind }) => kind === 'widen-bridge')!;
    report = raised(applyEdits(report.text, fix.edits));
  }
  const bridges = bridgesOf(report, first(report));
  expect(bridges).toHaveLength(2);
  for (const { width, flare } of bridges) {
    expect(width).toBeCloseTo(1.4, 1);
    expect(flare).toBeCloseTo(0.7, 1);
  }
});
