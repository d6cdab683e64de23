/** Root fillets: how large they are where there is room, and that there are smaller ones or none where there is not. */
import { describe, expect, it } from 'vitest';
import { changedRegion, cutStrips, stripsFor } from '../../src/edits/bridge/cut';
import { withFillets } from '../../src/edits/roots/find';
import { type Strip, stripAlong } from '../../src/edits/strip/strip';
import type { Point } from '../../src/geometry/base/curve-types';
import { distance } from '../../src/geometry/base/vector';
import { difference } from '../../src/geometry/boolean/index';
import { buildSegmentIndex } from '../../src/geometry/spatial/segment-index';
import { applyEdits } from '../../src/text/text';
import { areaOfRegion, bridge, sheetsOf } from './bridging';
import { drawings, outlines, sheets, svg } from './drawings';

/** Radii of what a strip across an opening gets, in the order of its sides. */
function radii(d: string, from: Point, to: Point, width: number, others: readonly Strip[] = []): number[] {
  const [sheet] = sheetsOf(svg(`<path fill-rule="evenodd" d="${d}"/>`));
  const strip = stripAlong(from, to, width, 0.2);
  const [found] = withFillets(buildSegmentIndex(sheet!.openings), [strip, ...others]);
  return (found?.fillets ?? []).map(({ radius }) => radius);
}

const WIDE_GAP = 'M10 10H50V20H10z';

describe('a fillet', () => {
  it('has half the width of its bridge as its radius', () => {
    for (const radius of radii(WIDE_GAP, { x: 30, y: 10 }, { x: 30, y: 20 }, 2)) expect(radius).toBeCloseTo(1, 9);
    expect(radii(WIDE_GAP, { x: 30, y: 10 }, { x: 30, y: 20 }, 2)).toHaveLength(4);
  });

  it('has a quarter of the length of a short one', () => {
    const short = radii('M10 10H50V12H10z', { x: 30, y: 10 }, { x: 30, y: 12 }, 2);
    expect(short).toHaveLength(4);
    for (const radius of short) expect(radius).toBeCloseTo(0.5, 9);
  });

  it('is none where a gap is narrower than anybody could see it', () => {
    expect(radii('M10 10H50V10.19H10z', { x: 30, y: 10 }, { x: 30, y: 10.19 }, 2)).toEqual([]);
  });

  it('is smaller beside a corner of the drawing, and none right at one', () => {
    const beside = radii('M10 10H31.6V8H50V22H31.6V20H10z', { x: 30, y: 10 }, { x: 30, y: 20 }, 2);
    expect(beside).toHaveLength(4);
    expect([...beside].sort((a, b) => a - b).map((radius) => radius < 0.6)).toEqual([true, true, false, false]);
    expect(radii('M10 10H31.02V8H50V22H31.02V20H10z', { x: 30, y: 10 }, { x: 30, y: 20 }, 2)).toHaveLength(2);
  });

  it('keeps to its half of the way to another strip', () => {
    const other = stripAlong({ x: 33, y: 10 }, { x: 33, y: 20 }, 2, 0.2);
    const near = radii(WIDE_GAP, { x: 30, y: 10 }, { x: 30, y: 20 }, 2, [other]);
    expect(near.map((radius) => Number(radius.toFixed(3))).sort()).toEqual([0.5, 0.5, 1, 1]);
  });

  it('leaves a small island beside the root alone', () => {
    const free = radii(WIDE_GAP, { x: 30, y: 10 }, { x: 30, y: 20 }, 2);
    const taken = radii(`${WIDE_GAP}M31.1 10.1h.1v.1h-.1z`, { x: 30, y: 10 }, { x: 30, y: 20 }, 2);
    expect(taken.filter((radius) => radius > 0.9)).toHaveLength(3);
    expect(Math.min(...taken)).toBeLessThan(Math.min(...free));
  });

  it('takes a third of the side at most where a bank is oblique', () => {
    const [sheet] = sheetsOf(svg('<path d="M10 4L50 44V58L10 18z"/>'));
    const strip = stripAlong({ x: 30, y: 24 }, { x: 30, y: 38 }, 2, 2);
    const [found] = withFillets(buildSegmentIndex(sheet!.openings), [strip]);
    expect(found!.fillets).toHaveLength(4);
    for (const { corner, onSide, onBank, centre, radius } of found!.fillets!) {
      expect(distance(corner, onSide)).toBeLessThanOrEqual(14 / 3 + 1e-6);
      expect(distance(onBank, centre)).toBeCloseTo(radius, 6);
      expect(distance(onSide, centre)).toBeCloseTo(radius, 6);
    }
  });

  it('comes out the same of a turned or mirrored drawing', () => {
    const box = 'M10 10H50V20H10z';
    const upright = radii(box, { x: 14, y: 10 }, { x: 14, y: 20 }, 2);
    const level = radii('M10 10V50H20V10z', { x: 10, y: 14 }, { x: 20, y: 14 }, 2);
    const mirrored = radii(box, { x: 46, y: 20 }, { x: 46, y: 10 }, 2);
    const sorted = (list: number[]) => [...list].sort((a, b) => a - b).map((radius) => radius.toFixed(6));
    expect(sorted(level)).toEqual(sorted(upright));
    expect(sorted(mirrored)).toEqual(sorted(upright));
  });
});

/** A drawing with rounded and with square roots. */
function both(text: string) {
  const { before, bridges, text: square, after } = bridge(text);
  const strips = stripsFor(before, bridges, 'rounded');
  const cut = cutStrips(before, strips);
  if ('refusal' in cut) throw new Error(cut.refusal);
  const rounded = applyEdits(text, cut.edits);
  return { before, strips, square, squareSheet: after, rounded, sheet: sheetsOf(rounded)[0]!, edits: cut.edits };
}

const filled: Record<string, string> = { ...drawings, ...outlines, ...sheets };

describe('rounded roots', () => {
  it.each(Object.keys(filled))('of bridges in %s only add material, in their corners', (what) => {
    const { before, strips, squareSheet, sheet } = both(filled[what]!);
    const fillets = strips.flatMap((strip) => strip.fillets ?? []);
    expect(fillets.length).toBeGreaterThan(0);
    const rounding = 0.002 * before.cutLength;
    expect(areaOfRegion(difference(sheet.openings, squareSheet.openings))).toBeLessThan(rounding);
    const gone = difference(before.openings, sheet.openings);
    expect(areaOfRegion(difference(gone, changedRegion(before, strips)))).toBeLessThan(rounding);
    const added = areaOfRegion(difference(squareSheet.openings, sheet.openings));
    // (1 − π/4) r² in a right angle; half to twice as much in others.
    const quarter = fillets.reduce((sum, { radius }) => sum + (1 - Math.PI / 4) * radius ** 2, 0);
    expect(added).toBeGreaterThan(0.7 * quarter - rounding);
    expect(added).toBeLessThan(2 * quarter + rounding);
  });

  it('are written in the digits and the manner of the path', () => {
    const plain = both(svg('<path fill-rule="evenodd" d="M10 10H50V50H10zM20 20H40V40H20z"/>'));
    expect(plain.rounded).toContain('V29.198A0.401 0.401 0 0 1 49.599 29.599H40.401A0.401 0.401 0 0 1 40 29.198V20');
    const curved = both(
      svg(
        '<path fill-rule="evenodd" d="M30 8C44 8 50 18 50 30S44 52 30 52S10 42 10 30S16 8 30 8zM30 14C22 14 18 20 18 30S22 46 30 46S42 40 42 30S38 14 30 14z"/>',
      ),
    );
    expect(curved.rounded).not.toMatch(/[Aa]\d/);
  });

  it('are none where lines are cut, whose ends are caps', () => {
    const line = svg('<circle cx="30" cy="30" r="20" fill="none" stroke="#000" stroke-width="5"/>');
    const { rounded, square } = both(line);
    expect(rounded).toBe(square);
  });
});
