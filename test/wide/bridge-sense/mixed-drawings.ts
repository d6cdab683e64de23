/** All drawings that are judged: words among silhouettes, so that any few of them are a mixture. */
import type { Drawing } from './judge';
import { readSilhouettes } from './read-silhouettes';
import { readWords } from './words';

/** @param count about so many of them, spread over all */
export async function mixedDrawings(count: number): Promise<Drawing[]> {
  const silhouettes: Drawing[] = await readSilhouettes();
  const words = readWords().map((word): Drawing => ({ name: word.name, set: word.style, text: word.text, word }));
  const share = silhouettes.length / Math.max(1, words.length);
  const mixed = words.flatMap((word, i) => {
    return [word, ...silhouettes.slice(Math.round(i * share), Math.round((i + 1) * share))];
  });
  const kept = (i: number): number => Math.floor((i * count) / mixed.length);
  return count >= mixed.length ? mixed : mixed.filter((_, i) => kept(i) !== kept(i - 1));
}
