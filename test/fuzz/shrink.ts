/** Makes a failing text small: stretches are left out as long as it still fails. */

/**
 * @param fails whether a text still fails in the same way
 * @param trials how often that is asked at most
 */
export async function shrunk(text: string, fails: (text: string) => Promise<boolean>, trials: number): Promise<string> {
  let left = trials;
  let kept = text;
  for (let size = Math.ceil(text.length / 2); size >= 1 && left > 0; size = size > 1 ? Math.ceil(size / 2) : 0) {
    for (let from = 0; from < kept.length && left > 0; ) {
      const shorter = kept.slice(0, from) + kept.slice(from + size);
      left -= 1;
      if (await fails(shorter)) kept = shorter;
      else from += size;
    }
  }
  return kept;
}
