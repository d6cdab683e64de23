/**
 * What a slip bares, by closed forms: two equal discs of radius r, d apart, leave a crescent of π r² less their lens,
 * 2 r² acos(d / 2r) − (d/2) √(4r² − d²) (circle–circle intersection, any table of plane geometry); a straight edge of
 * length L bares L·d, and nothing while d is no more than the overlap.
 */
import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../src/config/types';
import { check } from '../../src/engine/check/check-file';
import { areaOf, difference, intersection } from '../../src/geometry/boolean/index';
import { safeSlips } from '../../src/stack/index';

const sheet = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;

const lens = (r: number, d: number): number =>
  2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d);

describe('a slip', () => {
  it.each([
    [20, 1, 39.9958],
    [20, 0.5, 19.9995],
    [10, 1, 19.9917],
  ])('of a disc of radius %d mm by %d mm leaves a crescent of %d mm²', (r, d, crescent) => {
    expect(Math.PI * r * r - lens(r, d)).toBeCloseTo(crescent, 4);
    const { sheets } = check(
      sheet(`<g><circle cx="50" cy="50" r="${r}"/></g><g><circle cx="${50 + d}" cy="50" r="${r}"/></g>`),
    );
    const [one, other] = sheets.map(({ openings }) => openings);
    if (!one || !other) throw new Error('no sheets');
    expect(Math.abs(areaOf(difference(one, other)) / crescent - 1)).toBeLessThan(1e-4);
    expect(Math.abs(areaOf(intersection(one, other)) / lens(r, d) - 1)).toBeLessThan(1e-4);
  });

  it('of a straight edge bares its length times the slip, less what is overlapped', () => {
    const fields = (lap: number, slip: number) =>
      sheet(`<g><path d="M10 10H${50 + lap}V90H10Z"/></g><g><path d="M${50 + slip} 10H90V90H${50 + slip}Z"/></g>`);
    for (const [lap, slip] of [
      [0, 0.4],
      [0.25, 0.4],
      [0.4, 0.4],
    ] as const) {
      const [left, right] = check(fields(lap, slip)).sheets.map(({ openings }) => openings);
      const ground = [{ outer: Float64Array.of(40, 10, 60, 10, 60, 90, 40, 90), holes: [] }];
      const bare = areaOf(difference(difference(ground, left ?? []), right ?? []));
      expect(bare).toBeCloseTo(80 * Math.max(0, slip - lap), 4);
    }
  });
});

/**
 * Trap widths in print, as inputs of known size: 1/150 and 1/300 inch (Wikipedia, "Trap (printing)"), 0.08 and 0.15 mm
 * for sheet-fed and web offset (a trade article after US printing bodies), 0.2 and 0.3 mm for gravure and flexo
 * (wenjie-printing, fddmlt), 0.5 pt for labels (labelprintingportland), 1 pt in screen printing (zetaprints).
 */
const TRAPS = [25.4 / 150, 25.4 / 300, 0.08, 0.15, 0.2, 0.3, (0.5 * 25.4) / 72, 25.4 / 72];

describe('a trap', () => {
  it.each(TRAPS)('of %d mm is the safe slip of its seam, straight or round', (trap) => {
    const straight = `<g id="a"><path d="M10 10H${50 + trap}V90H10Z"/></g><g id="b"><path d="M50 10H90V90H50Z"/></g>`;
    const round =
      '<g id="a"><path fill-rule="evenodd" d="M10 10H90V90H10Z M30 50a20 20 0 1 0 40 0a20 20 0 1 0-40 0Z"/></g>' +
      `<g id="b"><circle cx="50" cy="50" r="${20 + trap}"/></g>`;
    const slipOf = (body: string) => {
      const [seam, ...others] = safeSlips(check(sheet(body)).stack.seams(0.5));
      expect(others).toEqual([]);
      return seam?.safe;
    };
    expect(slipOf(straight)).toBeCloseTo(trap, 3);
    expect(Math.abs((slipOf(round) ?? 0) - trap)).toBeLessThan(0.003);
    const found = (slip: number) =>
      check(sheet(straight), { config: { ...DEFAULT_CONFIG, limits: { slip } } }).findings.filter(
        ({ check: id }) => id === 'short-overlap',
      ).length;
    expect([found(trap - 0.005), found(trap + 0.005)]).toEqual([0, 1]);
  });
});
