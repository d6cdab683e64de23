import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { planBridges } from '../../../src/edits/plan/index';
import { liftingOn } from '../../../src/edits/plan/lifting';
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

function lifting(of: Sheet): ReturnType<typeof liftingOn> {
  const islands = of.pieces.filter(({ island }) => island);
  return liftingOn(of, planBridges(of, islands, { width: 0.8 }).bridges, BENDING);
}

describe('islands that lift on their bridges', () => {
  it('are those that are held on one side alone', () => {
    const [only, ...others] = lifting(sheet('M26 30H74V84H26z'));
    expect(others).toEqual([]);
    expect(only?.island.area).toBeCloseTo(48 * 54, 0);
    expect(only?.lift).toBeGreaterThan(1);
  });

  it('are none where bridges embrace them, nor where they are small', () => {
    expect(lifting(sheet('M16 16H84V84H16z'))).toEqual([]);
    expect(lifting(sheet('M48 80H52V84H48z'))).toEqual([]);
  });

  it('are none without bridges: what falls out is told as an island', () => {
    expect(liftingOn(sheet('M26 30H74V84H26z'), [], BENDING)).toEqual([]);
  });
});
