/** Rings that are drawn again at the very place, as a line does that goes to and fro. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Ring } from '../base/polygon-types';

/** Each ring once: of those with the same points in the same order, the first. */
export function distinctRings(rings: readonly Ring[]): Ring[] {
  const alike = new Map<number, Ring[]>();
  return rings.filter((ring) => {
    checkpoint(4 + ring.length);
    const hash = hashOf(ring);
    const known = alike.get(hash);
    if (!known) {
      alike.set(hash, [ring]);
      return true;
    }
    if (known.some((other) => areEqual(ring, other))) return false;
    known.push(ring);
    return true;
  });
}

/** A whole number that equal rings have in common. */
function hashOf(ring: Ring): number {
  let hash = ring.length;
  for (const value of ring) hash = (Math.imul(hash, 31) + Math.trunc(value * 1e6)) | 0;
  return hash;
}

function areEqual(a: Ring, b: Ring): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i += 1) if (defined(a[i]) !== defined(b[i])) return false;
  return true;
}
