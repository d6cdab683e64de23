import { describe, expect, it } from 'vitest';
import { planBridges } from '../../../src/edits/plan/index';
import type { Point } from '../../../src/geometry/base/curve-types';
import type { Sheet } from '../../../src/sheet/types';
import { sheetsOf } from '../bridging';

/** A block with a point that runs out under a small square: 1.2 mm away where it is narrower than a bridge, the block itself 6 mm. */
const POINT = 'M14 20H44V35.2L62 35.7L44 36.2V60H14z';
const SQUARE = 'M50 30H54V34H50z';

describe('a bridge to a piece that runs out to a point', () => {
  const text =
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"` +
    ` data-tombolo-reading="openings"><path fill-rule="evenodd" d="M2 2H98V98H2z${POINT}${SQUARE}"/></svg>`;
  const sheet = sheetsOf(text)[0] as Sheet;
  const islands = sheet.pieces.filter(({ island }) => island);
  const { bridges, unbridged } = planBridges(sheet, islands, { width: 0.8 });

  it('ends where that is thick enough to hold', () => {
    const isThin = ({ x, y }: Point) => x > 48 && y > 35;
    expect(unbridged).toEqual([]);
    expect(bridges.flatMap(({ from, to }) => [from, to].filter(isThin))).toEqual([]);
  });
});
