import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { planFurther } from '../../../src/edits/plan/further';
import { planBridges } from '../../../src/edits/plan/index';
import { liftingOn } from '../../../src/edits/plan/lifting';
import { distance } from '../../../src/geometry/base/vector';
import { bendingOf } from '../../../src/sheet/deflection';
import type { Sheet } from '../../../src/sheet/types';
import { sheetsOf } from '../bridging';

const BENDING = bendingOf(DEFAULT_CONFIG);

/** 100 × 100 mm, painted but for a margin and what is left standing. */
function sheet(standing: string): Sheet {
  const text =
    '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"' +
    ` data-tombolo-reading="openings"><path fill-rule="evenodd" d="M2 2H98V98H2z${standing}"/></svg>`;
  return sheetsOf(text)[0] as Sheet;
}

const planned = (of: Sheet) =>
  planBridges(
    of,
    of.pieces.filter(({ island }) => island),
    { width: 0.8 },
  ).bridges;

/** A wide bar: one bridge alone lets it lift. */
const BAR = 'M14 14H86V84H14z';

describe('bridges beside those that stand', () => {
  it('are added where these let an island lift too far, and leave them as they are', () => {
    const of = sheet(BAR);
    const standing = planned(of).slice(0, 1);
    expect(standing.length).toBeGreaterThan(0);
    expect(liftingOn(of, standing, BENDING)).not.toEqual([]);
    const more = planFurther(of, standing, { width: 0.8 });
    expect(more.length).toBeGreaterThan(0);
    expect(more.length).toBeLessThanOrEqual(4);
    expect(liftingOn(of, [...standing, ...more], BENDING)).toEqual([]);
    expect(more.every(({ from }) => standing.every((other) => distance(from, other.from) > 4))).toBe(true);
  });

  it('are none where all is held well', () => {
    const of = sheet(BAR);
    expect(planFurther(of, planned(of), { width: 0.8 })).toEqual([]);
  });

  it('are none without any that stand', () => {
    expect(planFurther(sheet(BAR), [], { width: 0.8 })).toEqual([]);
  });

  it('are none where they would help little', () => {
    const of = sheet('M26 30H74V84H26z');
    const standing = planned(of);
    expect(liftingOn(of, standing, BENDING)).not.toEqual([]);
    expect(planFurther(of, standing, { width: 0.8 })).toEqual([]);
  });
});
