/** Text from files, made safe to show. */

/** Controls (a terminal would obey them), line separators, and marks that turn the direction of writing. */
const UNSHOWABLE = /[\p{Cc}\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]+/gu;

/** The text in one line that neither moves the cursor nor colours anything. */
export function oneLine(text: string): string {
  return text.replace(UNSHOWABLE, ' ').trim();
}
