import { describe, expect, it } from 'vitest';
import { isTooFar } from '../../../src/edits/plan/too-far';
import { buildSegmentIndex } from '../../../src/geometry/spatial/segment-index';
import type { Sheet } from '../../../src/sheet/types';
import { sheetsOf } from '../bridging';

/** 100 × 100 mm. */
function sheet(inside: string): Sheet {
  const text =
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"` +
    ` data-tombolo-reading="openings">${inside}</svg>`;
  return sheetsOf(text)[0] as Sheet;
}

/** Of each island from left to right whether it is too far. */
function farOnes({ pieces }: Sheet): boolean[] {
  const index = buildSegmentIndex(pieces.map(({ polygon }) => polygon));
  return [...pieces.keys()]
    .filter((number) => pieces[number]?.island)
    .sort((a, b) => (pieces[a]?.label.x ?? 0) - (pieces[b]?.label.x ?? 0))
    .map((number) => isTooFar(pieces, number, index, 20));
}

const room = (holes: string) => sheet(`<path fill-rule="evenodd" d="M5 5H95V95H5z${holes}"/>`);

describe('islands that are too far for any bridge', () => {
  it('have nothing that hangs within its length', () => {
    expect(farOnes(room('M26 26H74V74H26z'))).toEqual([true]);
    expect(farOnes(room('M24 26H74V74H24z'))).toEqual([false]);
  });

  it('are not those that others lead to what hangs', () => {
    expect(farOnes(room('M20 45H30V55H20zM45 45H55V55H45z'))).toEqual([false, false]);
  });

  it('are all of a group that is too far together', () => {
    expect(farOnes(room('M30 45H40V55H30zM45 45H55V55H45z'))).toEqual([true, true]);
  });

  it('are measured to the middle of a long edge, too', () => {
    // A spike of the sheet points at the middle of the island's side.
    const spiked = sheet('<path fill-rule="evenodd" d="M5 5H95V95H5V60L11 50 5 40zM30.5 30H70V70H30.5z"/>');
    expect(farOnes(spiked)).toEqual([false]);
    const shorter = sheet('<path fill-rule="evenodd" d="M5 5H95V95H5V60L9 50 5 40zM30.5 30H70V70H30.5z"/>');
    expect(farOnes(shorter)).toEqual([true]);
  });
});
