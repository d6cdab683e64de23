/** Words for people: what they say, and how names find room in them. */
import { oneLine } from './plain-text';

/** How something is told to people: a line that lists have room for, and the rest where there is room. */
export interface Wording {
  /** What is, with its measure and its limit within the first 80 characters; at most 120 in all. One cure at most. */
  readonly message: string;
  /** Full sentences: why, in card and paint, all cures, and the setting that decides. */
  readonly detail?: string;
}

/** Characters that a name may take in a message beside what else that must say. */
export const NAME_ROOM = 22;

/** The same for what is written in markup, as references and names of elements. */
export const MARKUP_ROOM = 40;

/**
 * A name in one line of no more than so many characters. What is too long loses its middle: names that are alike often
 * differ at the end, as "Layer 12 copy 3".
 */
export function shortened(name: string, room: number): string {
  const letters = [...oneLine(name).replace(/\s+/g, ' ')];
  if (letters.length <= room) return letters.join('');
  const tail = Math.floor((room - 1) / 3);
  return `${letters.slice(0, room - 1 - tail).join('')}…${letters.slice(letters.length - tail).join('')}`;
}

/**
 * Names in quotation marks that together take no more than so many characters, the marks included. Short names leave
 * their room to longer ones.
 */
export function quoted(names: readonly string[], room = NAME_ROOM): string[] {
  let left = room - 2 * names.length;
  const short = new Map<number, string>();
  const byLength = [...names.keys()].sort((a, b) => lengthOf(names[a]) - lengthOf(names[b]));
  for (const [done, index] of byLength.entries()) {
    const name = shortened(names[index] ?? '', Math.floor(left / (names.length - done)));
    left -= lengthOf(name);
    short.set(index, `"${name}"`);
  }
  return names.map((_, index) => short.get(index) ?? '');
}

function lengthOf(name = ''): number {
  return [...name].length;
}
