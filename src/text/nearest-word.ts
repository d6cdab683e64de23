/** What a misspelt word was probably meant to be. */
import { closest, distance } from 'fastest-levenshtein';

/** The share of its letters that may be wrong: of a short word one. */
const WRONG = 1 / 3;

/** @returns undefined where no word is near */
export function nearestWord(written: string, words: readonly string[]): string | undefined {
  if (words.length === 0 || written === '') return undefined;
  const near = closest(written, words);
  const most = Math.max(1, Math.floor(WRONG * Math.max(written.length, near.length)));
  return distance(written, near) <= most ? near : undefined;
}
