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
  // Two units at a time; an odd one at the end stands alone. Reading beyond the end would make each turn slow.
  const last = text.length - 1;
  for (let i = 0; i <= last; i += 2) {
    const units = i < last ? text.charCodeAt(i) | (text.charCodeAt(i + 1) << 16) : text.charCodeAt(i);
    high = Math.imul(high ^ units, MULTIPLIERS[0]);
    low = Math.imul(low ^ units, MULTIPLIERS[1]);
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

/**
 * 53 bits of a row of numbers, told to it one after the other, mixed in the same way. Numbers differ where any of their
 * bits does; 0 and -0 are the same.
 */
export class NumbersHash {
  #high = 0x2545f491;
  #low = 0x1b873593;
  readonly #number = new Float64Array(1);
  readonly #words = new Uint32Array(this.#number.buffer);

  add(number: number): void {
    this.#number[0] = number + 0;
    this.#addWord(this.#words[0] as number);
    this.#addWord(this.#words[1] as number);
  }

  /** Of all numbers since the last time it was asked. It begins anew then. */
  take(): number {
    const high = mixed(this.#high ^ (this.#low >>> 7));
    const low = mixed(this.#low ^ high);
    [this.#high, this.#low] = [0x2545f491, 0x1b873593];
    return 4294967296 * (high & 0x1fffff) + (low >>> 0);
  }

  #addWord(word: number): void {
    this.#high = Math.imul(this.#high ^ word, MULTIPLIERS[0]);
    this.#high ^= this.#high >>> 13;
    this.#low = Math.imul(this.#low ^ word, MULTIPLIERS[1]);
    this.#low ^= this.#low >>> 15;
  }
}
