/** A check that is added as one would add any: an exercise for what must hold of all of them. */
import type { Check } from '../../../src/checks/check';
import { inLayer, spanAt } from '../../../src/checks/places';
import { findThinParts } from '../../../src/geometry/thickness/index';

/** mm */
const LONGEST = 2;

/** Bridges that are long for their width: each that the engine puts in is one. */
export const longBridge: Check = {
  meta: {
    id: 'long-bridge',
    summary: 'A bridge that sags over its length.',
    outcome: 'leave a long bridge',
    severity: 'warning',
    reads: 'file',
    fixes: [],
    acceptable: true,
    row: { wrong: 'a long tie sags, and paint creeps under it', click: '' },
  },
  *run(stencil) {
    const { limits } = stencil;
    for (const sheet of stencil.sheets) {
      for (const part of findThinParts(sheet.material, 1.5 * limits.bridge + sheet.kerf)) {
        if (part.kind !== 'neck' || part.length < LONGEST) continue;
        yield {
          message: `Bridge ${part.length.toFixed(1)} mm long; ${LONGEST} mm is the most. Make it shorter.`,
          span: spanAt(stencil, sheet, part.from, part.to),
          ...inLayer(sheet),
          at: part.from,
          related: [],
        };
      }
    }
  },
};
