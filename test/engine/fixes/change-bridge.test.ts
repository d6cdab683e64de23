import { beforeAll, describe, expect, it, it as test } from 'vitest';
import { bridgeAt } from '../../../src/engine/fixes/bridge-at';
import { bridgeIslands } from '../../../src/engine/fixes/bridge-islands';
import { type BridgeChange, changeBridge, changesFor, titleOfChange } from '../../../src/engine/fixes/change-bridge';
import { bridgeAtOffset, bridgeStandingAt } from '../../../src/engine/fixes/standing-bridges';
import { distance, interpolate } from '../../../src/geometry/base/vector';
import type { Fix } from '../../../src/report/fix';
import { isRefusal, type Result, refuse } from '../../../src/report/refusal';
import type { Report } from '../../../src/report/report';
import { applyEdits } from '../../../src/text/text';
import { areaBetween, areaOfRegion } from '../../edits/bridging';
import { drawings, lines, outlines, sheets, svg } from '../../edits/drawings';
import { checksOnce, proven, reasonOf } from '../results';

const all: Record<string, string> = { ...drawings, ...lines, ...sheets, ...outlines };

/** Where circles overlap, the island between them is met by no other straight way. */
const CANNOT_MOVE = ['circles and an ellipse'];
/** Over a round corner of a line, the line's own ends would leave a slot that is too narrow. */
const CANNOT_NARROW = ['a turned square'];

const check = checksOnce();
const sheetOf = (svg: string) => check(svg).sheets[0]!;
const islands = (svg: string) => sheetOf(svg).pieces.filter(({ island }) => island).length;

/** A drawing with its bridges in it, and the middle of the first of them. */
function bridged(svg: string) {
  const { text, plan } = bridgeIslands(check(svg));
  const [first] = plan;
  if (!first) throw new Error('no bridge');
  return { text, place: interpolate(first.from, first.to, 0.5), plan };
}

function changed(text: string, place: { x: number; y: number }, change: BridgeChange): Result<Fix> {
  const report = check(text);
  const sheet = report.sheets[0]!;
  const bridge = bridgeStandingAt(report, sheet, place);
  return bridge ? changeBridge(report, sheet, bridge, change) : refuse('none recognised');
}

function done(mend: Result<Fix>, text: string): string {
  return applyEdits(text, proven(mend).edits);
}

describe.each(Object.keys(all))('a bridge in %s', (what) => {
  let { text, place, plan }: ReturnType<typeof bridged> = { text: '', place: { x: 0, y: 0 }, plan: [] };

  beforeAll(() => {
    ({ text, place, plan } = bridged(all[what]!));
  });

  const lostIn = (svg: string) => areaOfRegion(sheetOf(all[what]!).openings) - areaOfRegion(sheetOf(svg).openings);

  test('is recognised', () => {
    const report = check(text);
    for (const { from, to, cutWidth } of plan) {
      const found = bridgeStandingAt(report, report.sheets[0]!, interpolate(from, to, 0.5));
      expect(found?.width).toBeCloseTo(cutWidth, 1);
    }
  });

  test.skipIf(CANNOT_MOVE.includes(what))('is moved along its gap, and nothing else changes', () => {
    const report = check(text);
    const sheet = report.sheets[0]!;
    const bridge = bridgeStandingAt(report, sheet, place)!;
    const moves = changesFor(report, sheet, bridge)
      .filter(({ kind }) => kind === 'move')
      .map((change) => changeBridge(report, sheet, bridge, change))
      .flatMap((mend) => (isRefusal(mend) ? [] : [mend]));
    expect(moves.length).toBeGreaterThan(0);
    for (const mend of moves) {
      const after = applyEdits(text, mend.edits);
      expect(islands(after)).toBe(0);
      const there = bridgeStandingAt(
        check(after),
        sheetOf(after),
        interpolate(mend.bridges![0]!.from, mend.bridges![0]!.to, 0.5),
      );
      expect(there?.width).toBeCloseTo(bridge.width, 1);
      expect(distance(there!.centre, bridge.centre)).toBeGreaterThan(1);
    }
  });

  test('is taken out: what was open before is open again', () => {
    let again = text;
    for (const { from, to } of plan)
      again = done(changed(again, interpolate(from, to, 0.5), { kind: 'remove' }), again);
    expect(islands(again)).toBe(islands(all[what]!));
    expect(areaBetween(sheetOf(again).openings, sheetOf(all[what]!).openings)).toBeLessThan(0.01 * lostIn(text));
  });

  test.skipIf(CANNOT_NARROW.includes(what))('is made wider, and narrower again', () => {
    const { cutWidth } = plan[0]!;
    const wide = done(changed(text, place, { kind: 'width', width: cutWidth + 0.2 }), text);
    expect(lostIn(wide)).toBeGreaterThan(lostIn(text));
    const narrow = done(changed(wide, place, { kind: 'width', width: cutWidth + 0.1 }), wide);
    const report = check(narrow);
    expect(bridgeStandingAt(report, report.sheets[0]!, place)?.width).toBeCloseTo(cutWidth + 0.1, 1);
  });
});

describe('what comes of a change', () => {
  const ring = drawings['a letter, evenodd']!;
  const { text, plan } = bridged(ring);
  const middle = (at: number) => interpolate(plan[at]!.from, plan[at]!.to, 0.5);

  it('is said where the last bridge goes', () => {
    const first = changed(text, middle(0), { kind: 'remove' });
    expect(first).toMatchObject({ title: 'Remove this bridge' });
    const second = changed(done(first, text), middle(1), { kind: 'remove' });
    expect(second).toMatchObject({ title: 'Remove this bridge (it is the last: 400.0 mm² will fall out)' });
    expect(done(second, done(first, text))).toContain('M10 10H50V50H10Z');
  });

  it('is said before it is proven, too', () => {
    const titleOf = (svg: string, at: number) => {
      const sheet = sheetOf(svg);
      return titleOfChange(sheet, bridgeStandingAt(check(svg), sheet, middle(at))!, { kind: 'remove' });
    };
    expect([titleOf(text, 0), titleOf(text, 1)]).toEqual(['Remove this bridge', 'Remove this bridge']);
    const once = done(changed(text, middle(0), { kind: 'remove' }), text);
    expect(titleOf(once, 1)).toBe('Remove this bridge (it is the last: a piece will fall out)');
  });

  it('is refused where it would make a new fault', () => {
    expect(reasonOf(changed(text, middle(0), { kind: 'width', width: 0.4 }))).toMatch(
      /^It would leave a bridge too thin/,
    );
    expect(reasonOf(changed(text, middle(0), { kind: 'move', to: { x: 2, y: 2 } }))).toMatch(/only within its own gap/);
    expect(reasonOf(changed(text, middle(0), { kind: 'width', width: 0.802 }))).toMatch(/0\.80 mm wide already/);
  });

  it('comes to pass where the artist points', () => {
    const mend = changed(text, middle(0), { kind: 'move', to: { x: 30, y: 14 } });
    const [ghost] = proven(mend).bridges!;
    expect(ghost?.from.x).toBeCloseTo(30, 2);
    expect(ghost?.to.x).toBeCloseTo(30, 2);
    expect(islands(done(mend, text))).toBe(0);
  });

  it('a neck between two shapes is widened, but cannot be taken out', () => {
    const pair = svg('<rect x="10" y="10" width="19.6" height="20"/><rect x="30.4" y="10" width="19.6" height="20"/>');
    const wide = done(changed(pair, { x: 30, y: 20 }, { kind: 'width', width: 1.5 }), pair);
    expect(bridgeStandingAt(check(wide), sheetOf(wide), { x: 30, y: 20 })?.width).toBeCloseTo(1.5, 2);
    expect(reasonOf(changed(pair, { x: 30, y: 20 }, { kind: 'remove' }))).toMatch(/join/);
  });

  it('nothing is taken for a bridge that is part of the picture', () => {
    for (const [x, y] of [
      [30, 30],
      [5, 5],
      [58, 30],
      [30, 15],
    ] as const) {
      expect(bridgeStandingAt(check(text), sheetOf(text), { x, y })).toBeUndefined();
    }
  });

  it('a hand-drawn bridge is found by the command at the caret', () => {
    const drawn = svg('<path d="M10 10H29.5L29.3 22H10zM30.5 10H50V22H30.7z"/>');
    const at = bridgeAtOffset(check(drawn), drawn.indexOf('L29.3') + 2);
    expect(at?.bridge.width).toBeCloseTo(1, 2);
    expect(bridgeAtOffset(check(drawn), drawn.indexOf('V22') + 1)).toBeUndefined();
  });
});

describe('the only bridge of a large island, which is a tongue already', () => {
  const stencil = (path: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"
      data-tombolo-reading="openings"><path fill-rule="evenodd" d="${path}"/></svg>`;
  const AT = { x: 50, y: 26.5 };
  const round = held('M25 50a25 25 0 0 1 50 0a25 25 0 0 1-50 0zM28 50a22 22 0 0 0 44 0a22 22 0 0 0-44 0z');

  function held(path: string): string {
    const report = check(stencil(path));
    const text = applyEdits(stencil(path), proven(bridgeAt(report, report.sheets[0]!, AT)).edits);
    expect(check(text).findings.map((finding) => finding.check)).toEqual(['loose-tongue']);
    return text;
  }

  function outcomes(report: Report): string[] {
    const sheet = report.sheets[0]!;
    const bridge = bridgeStandingAt(report, sheet, AT)!;
    const changes: BridgeChange[] = [
      ...[0.3, 0.8, 0.9, 1.6, 5].map((x): BridgeChange => ({ kind: 'move', to: { x: AT.x + x, y: AT.y } })),
      { kind: 'width', width: 2 },
      { kind: 'width', width: 3 },
    ];
    return changes.map((change) => reasonOf(changeBridge(report, sheet, bridge, change)) ?? 'done');
  }

  it('may be moved and widened, however far: the tongue is the same at another root', () => {
    expect(outcomes(check(round))).toEqual(Array(7).fill('done'));
  });

  it('is answered alike for the text alone and for the text that came of an edit, whatever was asked before', () => {
    const plain = check(round.replace('width="100mm"', 'width="100mm" id="post"'));
    expect(outcomes(plain)).toEqual(outcomes(plain.session.check(round, plain.settings)));
  });

  it('may not be moved to where the tongue is longer', () => {
    const long = held('M10 50a40 25 0 0 1 80 0a40 25 0 0 1-80 0zM13 50a37 22 0 0 0 74 0a37 22 0 0 0-74 0z');
    const moved = changed(long, AT, { kind: 'move', to: { x: AT.x + 5, y: AT.y } });
    expect(reasonOf(moved)).toBe('It would leave a loose tongue.');
  });
});
