import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../../src/config/types';
import { type Bridge, planBridges } from '../../../../src/edits/plan/index';
import { liftingOn } from '../../../../src/edits/plan/lifting';
import { bendingOf } from '../../../../src/sheet/deflection';
import type { Sheet } from '../../../../src/sheet/types';
import { sheetsOf } from '../../bridging';

/** 100 × 100 mm, painted but for a margin and what is left standing. */
function sheet(standing: string): Sheet {
  const text =
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"` +
    ` data-tombolo-reading="openings"><path fill-rule="evenodd" d="M2 2H98V98H2z${standing}"/></svg>`;
  return sheetsOf(text)[0] as Sheet;
}

function plan(of: Sheet): readonly Bridge[] {
  const islands = of.pieces.filter(({ island }) => island);
  return planBridges(of, islands, { width: 0.8 }).bridges;
}

/** How many upright bridges there are at most between the same two pieces. */
function mostUpright(bridges: readonly Bridge[]): number {
  const upright = bridges.filter(({ from, to }) => Math.abs(from.x - to.x) < 0.1);
  const isSame = (a: Bridge, b: Bridge) =>
    (a.island === b.island && a.target === b.target) || (a.island === b.target && a.target === b.island);
  return Math.max(...upright.map((one) => upright.filter((other) => isSame(one, other)).length));
}

describe('islands that hang on each other', () => {
  it.each([
    ['a house', 'M14 40L50 14L86 40L80 50L50 30L20 50zM30 46H70V54H30zM22 57H78V85H22z'],
    ['a broad block over a small one', 'M16 14H84V44H16zM30 47H70V84H30z'],
  ])('do so by two wide bridges rather than by a comb: %s', (_, data) => {
    const of = sheet(data);
    const bridges = plan(of);
    expect(mostUpright(bridges)).toBeLessThanOrEqual(2);
    expect(liftingOn(of, bridges, bendingOf(DEFAULT_CONFIG))).toEqual([]);
  });

  it('stay mirrored where they were', () => {
    const bridges = plan(sheet('M16 14H84V44H16zM30 47H70V84H30z'));
    const places = bridges.map(({ from }) => Math.round(from.x)).sort((a, b) => a - b);
    expect(places.map((x) => 100 - x).sort((a, b) => a - b)).toEqual(places);
  });

  it.each(['M30 11H70V89H30z', 'M26 10H74V90H26z', 'M30 14L44 10L58 16L76 10L70 88H34z'])(
    'keep two bridges on each of two sides that face each other: %s',
    (data) => {
      const bridges = plan(sheet(data));
      const ends = (y: number) => bridges.filter(({ to }) => Math.abs(to.y - y) < 1).length;
      expect([ends(2), ends(98)]).toEqual([2, 2]);
    },
  );

  it('are thinned out on both sides of an axis at once', () => {
    const windows = 'M20 14H48V44H20zM52 14H80V44H52zM20 52H80V74H20z';
    const bridges = plan(sheet(windows));
    expect(mostUpright(bridges)).toBeLessThanOrEqual(2);
    expect(liftingOn(sheet(windows), bridges, bendingOf(DEFAULT_CONFIG))).toEqual([]);
  });
});
