/** The plan of a layer with one of its bridges moved: what is alike goes with it, and the whole is proven. */
import { describe, expect, it } from 'vitest';
import { defined } from '../../../../src/base/defined';
import {
  applyEdits,
  check,
  layerBridges,
  type MovedBridge,
  movedPlanFix,
  movedTogether,
  type Report,
  type Sheet,
} from '../../../../src/engine/index';
import type { Point } from '../../../../src/geometry/base/curve-types';
import { isRefusal } from '../../../../src/report/refusal';

/** Frames with a square island each, whose gaps are 2 mm wide. */
const frame = (x: number, y: number, size: number): string => {
  const inner = size - 4;
  return `M${x} ${y}h${size}v${size}h${-size}Z M${x + 2} ${y + 2}v${inner}h${inner}v${-inner}Z`;
};
const drawing = (...paths: string[]): string => `<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="60mm"
  viewBox="0 0 80 60" data-tombolo-reading="openings"><g id="Sun"><path d="${paths.join(' ')}"/></g></svg>`;
/** Mirrored about x = 40, and about y = 30. */
const MIRRORED = drawing(frame(10, 20, 20), frame(50, 20, 20));
/** One is larger than the other. */
const UNLIKE = drawing(frame(6, 10, 20), frame(40, 25, 30));

interface Drawn {
  readonly report: Report;
  readonly sheet: Sheet;
}

function drawn(text: string): Drawn {
  const report = check(text, {});
  return { report, sheet: defined(report.sheets[0]) };
}

const middle = ({ from, to }: { from: Point; to: Point }): Point => ({
  x: (from.x + to.x) / 2,
  y: (from.y + to.y) / 2,
});
const endsOf = (moved: readonly MovedBridge[]): MovedBridge[] =>
  moved.map(({ bridge, from, to }) => ({ bridge, from, to }));
const byPlace = (a: Point, b: Point) => a.x - b.x || a.y - b.y;

describe('a bridge of a plan that is moved', () => {
  const { report, sheet } = drawn(MIRRORED);
  const { bridges } = layerBridges(report, sheet, 'auto');
  const first = defined(bridges[0]);
  const isLevel = Math.abs(first.to.x - first.from.x) > Math.abs(first.to.y - first.from.y);
  const at = middle(first);
  const to = isLevel ? { x: at.x, y: at.y + 3 } : { x: at.x + 3, y: at.y };

  it('takes its mirror twins and its likes with it, each to its image', () => {
    const { bridges: moved, reason } = movedTogether(report, sheet, 'auto', [], { bridge: 0, to, apart: false });
    expect(reason).toBeUndefined();
    expect(moved.length).toBeGreaterThan(1);
    expect(defined(moved[0]).bridge).toBe(0);
    const places = moved.map(middle);
    expect(middle(defined(moved[0])).x).toBeCloseTo(to.x, 2);
    expect(middle(defined(moved[0])).y).toBeCloseTo(to.y, 2);
    const images = places.map(({ x, y }) => ({ x: 80 - x, y })).sort(byPlace);
    for (const [i, place] of [...places].sort(byPlace).entries()) {
      expect(Math.hypot(place.x - defined(images[i]).x, place.y - defined(images[i]).y)).toBeLessThan(0.05);
    }
  });

  it('goes alone where they are held apart', () => {
    const { bridges: moved } = movedTogether(report, sheet, 'auto', [], { bridge: 0, to, apart: true });
    expect(moved.map(({ bridge }) => bridge)).toEqual([0]);
  });

  it('is proven with all others: every island hangs where it was moved to', () => {
    const { bridges: moved } = movedTogether(report, sheet, 'auto', [], { bridge: 0, to, apart: false });
    const fix = movedPlanFix(report, sheet, 'auto', endsOf(moved));
    if (isRefusal(fix)) throw new Error(fix.reason);
    expect(fix.bridges?.length).toBe(bridges.length);
    const after = drawn(applyEdits(report.text, fix.edits));
    expect(after.report.findings.filter(({ check }) => check === 'floating-island')).toEqual([]);
    const isCard = (point: Point) =>
      !after.sheet.openings.some(
        ({ outer, holes }) => inside(outer, point) && !holes.some((hole) => inside(hole, point)),
      );
    expect(isCard({ x: 11, y: 21 })).toBe(false);
    for (const each of moved) expect(isCard(middle(each))).toBe(true);
  });

  it('goes on from where it was moved to', () => {
    const once = movedTogether(report, sheet, 'auto', [], { bridge: 0, to, apart: false });
    const again = movedTogether(report, sheet, 'auto', endsOf(once.bridges), { bridge: 0, to: at, apart: false });
    expect(again.bridges.map(({ bridge }) => bridge).sort()).toEqual(once.bridges.map(({ bridge }) => bridge).sort());
    expect(middle(defined(again.bridges[0])).x).toBeCloseTo(at.x, 1);
  });

  it('stays in its gap: beyond it the nearest place is meant', () => {
    const far = isLevel ? { x: at.x, y: at.y + 2 } : { x: at.x + 2, y: at.y };
    const beyond = isLevel ? { x: -30, y: far.y } : { x: far.x, y: -30 };
    const { bridges: moved } = movedTogether(report, sheet, 'auto', [], { bridge: 0, to: beyond, apart: true });
    const gap = middle(defined(moved[0]));
    expect(Math.hypot(gap.x - at.x, gap.y - at.y)).toBeLessThan(20);
  });

  it('says why where nothing fits, and what is not there any more', () => {
    const side = { x: 11, y: 30 };
    expect(movedTogether(report, sheet, 'upright', [], { bridge: 0, to: side, apart: true }).reason).toMatch(
      /^A bridge there would not hold this island\.$/,
    );
    expect(movedTogether(report, sheet, 'auto', [], { bridge: 99, to, apart: true }).bridges).toEqual([]);
    expect(isRefusal(movedPlanFix(report, sheet, 'auto', [{ bridge: 99, from: at, to }]))).toBe(true);
  });
});

describe('the plan of a layer', () => {
  it('moves nothing of islands that are not alike', () => {
    const { report, sheet } = drawn(UNLIKE);
    const { bridges } = layerBridges(report, sheet, 'upright');
    const large = bridges.findIndex(({ from }) => from.x > 40);
    const at = middle(defined(bridges[large]));
    const { bridges: moved } = movedTogether(report, sheet, 'upright', [], {
      bridge: large,
      to: { x: at.x + 4, y: at.y },
      apart: false,
    });
    const small = new Set(bridges.flatMap(({ from }, number) => (from.x < 40 ? [number] : [])));
    expect(moved.some(({ bridge }) => small.has(bridge))).toBe(false);
  });

  it('is another in each style', () => {
    const { report, sheet } = drawn(UNLIKE);
    const slants = (style: 'upright' | 'level') =>
      layerBridges(report, sheet, style).bridges.map(({ from, to }) => Math.abs(from.x - to.x) < 0.01);
    expect(slants('upright').every(Boolean)).toBe(true);
    expect(slants('level').some(Boolean)).toBe(false);
    expect(layerBridges(report, sheet, 'fewest').bridges.length).toBeLessThanOrEqual(
      layerBridges(report, sheet, 'auto').bridges.length,
    );
  });

  it('tells of what it cannot bridge, by place and reason', () => {
    const { report, sheet } = drawn(drawing('M2 2h76v56h-76Z M38 28v4h4v-4Z'));
    const { proven, left } = layerBridges(report, sheet, 'auto');
    expect(proven).toBeUndefined();
    expect([...left.values()].map(({ reason }) => reason)).toEqual([
      expect.stringMatching(/^No bridge fits the island at 40\.0, 30\.0 mm: all that hangs on the sheet is over /),
    ]);
    expect(isRefusal(movedPlanFix(report, sheet, 'auto', []))).toBe(true);
  });
});

function inside(ring: ArrayLike<number>, { x, y }: Point): boolean {
  let is = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [ring[i] ?? 0, ring[i + 1] ?? 0, ring[j] ?? 0, ring[j + 1] ?? 0];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) is = !is;
  }
  return is;
}

describe('a plan whose bridges are longer than they had better be', () => {
  it('can be had, and tells it', () => {
    const { report, sheet } = drawn(drawing('M2 2H78V58H2Z M15 15V45H65V15Z'));
    const fix = movedPlanFix(report, sheet, 'auto', []);
    if (isRefusal(fix)) throw new Error(fix.reason);
    expect(fix.title).toMatch(/^Bridge every island in layer "Sun" \(\d+ bridges of [\d.]+ mm( to [\d.]+ mm)?\)$/);
    expect(fix.brings.map(({ message }) => message)).toContainEqual(
      expect.stringMatching(/^Bridge at .* bends easily/),
    );
  });
});
