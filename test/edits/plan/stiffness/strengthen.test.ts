import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../../src/config/types';
import { type Bridge, planBridges } from '../../../../src/edits/plan/index';
import { liftingOn } from '../../../../src/edits/plan/lifting';
import { WEIGHTS } from '../../../../src/edits/plan/search/weights';
import type { Point } from '../../../../src/geometry/base/curve-types';
import { distance } from '../../../../src/geometry/base/vector';
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

/** Two wide bars, one above the other: the lower one hangs on the upper one, and far from the frame. */
const STACKED = 'M14 14H86V44H14zM14 56H86V84H14z';

function plan(of: Sheet, options = {}): readonly Bridge[] {
  const islands = of.pieces.filter(({ island }) => island);
  return planBridges(of, islands, { width: 0.8, ...options }).bridges;
}

/** mm: bridges this near to each other are the same to the eye. */
const ALIKE = 0.6;

const held = (bridges: readonly Bridge[]) => bridges.reduce((sum, { width }) => sum + width, 0);

/** All sides but the lower one are farther from the frame than a bridge is long. */
const OUT_OF_REACH = 'M26 30H74V84H26z';

describe('an island that lifts too far whatever is done', () => {
  it('gets no comb of wide bridges', () => {
    const bridges = plan(sheet(OUT_OF_REACH));
    expect(bridges.length).toBeGreaterThan(1);
    expect(bridges.length).toBeLessThanOrEqual(3);
    expect(Math.max(...bridges.map(({ width }) => width))).toBeLessThan(2.5);
  });
});

describe('an island that enough bridges hold in the right places', () => {
  it.each([
    ['a bar with one side within reach', 'M34 70H66V84H34z'],
    ['two peaks on one line', 'M25 87L42 71L52 79L62 67L77 87z'],
    // Two upright ones twist; two at a slant, to the heavier side, do not.
    ['an upright bar with a bow to one side', 'M46 17a4 4 0 0 1 8 0V83a4 4 0 0 1 -8 0V72H26V28H46zM34 36H46V64H34z'],
    // Three of them, each stouter than usual.
    ['a plate far from all that is firm', 'M28 34H58V62H28z'],
  ])('gets these, few and wide: %s', (_, data) => {
    const of = sheet(data);
    const bridges = plan(of);
    expect(liftingOn(of, bridges, bendingOf(DEFAULT_CONFIG))).toEqual([]);
    expect(bridges.length).toBeLessThanOrEqual(4);
  });
});

describe('a plan that would swing as a whole', () => {
  const of = sheet(STACKED);

  it('is held by wider or by more bridges', () => {
    const stiff = plan(of);
    const soft = withSwing(1e9, () => plan(of));
    expect(held(stiff)).toBeGreaterThan(held(soft));
  });

  it('stays its own mirror image', () => {
    const bridges = plan(of);
    const mirrored = ({ x, y }: Point) => ({ x: 100 - x, y });
    const hasImage = ({ from, to, width }: Bridge) =>
      bridges.some(
        (other) =>
          other.width === width &&
          distance(other.from, mirrored(from)) < ALIKE &&
          distance(other.to, mirrored(to)) < ALIKE,
      );
    expect(bridges.filter((bridge) => !hasImage(bridge))).toEqual([]);
  });

  it('is left as narrow as asked for where later paint covers it', () => {
    expect(plan(of, { unseen: true }).every(({ width }) => width === 0.8)).toBe(true);
  });

  it('keeps each bridge within the greatest width', () => {
    const widest = WEIGHTS.widest.value * 0.8;
    expect(Math.max(...plan(of).map(({ width }) => width))).toBeLessThanOrEqual(widest + 1e-9);
  });
});

function withSwing<T>(value: number, run: () => T): T {
  const weight = WEIGHTS.swing as { value: number };
  const before = weight.value;
  weight.value = value;
  try {
    return run();
  } finally {
    weight.value = before;
  }
}
