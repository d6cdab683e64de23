/** A short stand-in for a long text, to tell whether two are the same. */

const MULTIPLIERS = [0x9e3779b1, 0x85ebca77] as const;

/**
 * 53 bits of a text's UTF-16 code units as a string of base 36. Two texts that differ have the same one by a chance of
 * one in 2^53. It is no protection against texts that were made to collide.
 * Source of the mixing: the finalizer of MurmurHash3 (A. Appleby, public domain), on two lanes.
 */
export function hashOfText(text: string): string {
  let high = 0x2545f491;
  let low = 0x1b873593 ^ text.length;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    high = Math.imul(high ^ unit, MULTIPLIERS[0]);
    low = Math.imul(low ^ unit, MULTIPLIERS[1]);
    low ^= low >>> 15;
  }
  high = mixed(high ^ (low >>> 7));
  low = mixed(low ^ high);
  return (4294967296 * (high & 0x1fffff) + (low >>> 0)).toString(36);
}

function mixed(bits: number): number {
  let mixing = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  mixing = Math.imul(mixing ^ (mixing >>> 13), 0xc2b2ae35);
  return mixing ^ (mixing >>> 16);
}
