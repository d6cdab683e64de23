/** The real documents that are changed: icons, emoji, flags, the demo, what failed before, and the W3C suite where it is installed. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';

/**
 * Folders, with how many files each gives. What failed since the seeds of the wide tests were chosen lies in a folder within the
 * corpus, which is left out: with one more document here every document of a seed would be another.
 */
const FOLDERS: readonly (readonly [folder: string, files: number])[] = [
  ['node_modules/@mdi/svg/svg', 60],
  ['node_modules/@tabler/icons/icons/outline', 40],
  ['node_modules/@twemoji/svg', 60],
  ['node_modules/flag-icons/flags/4x3', 30],
  ['node_modules/cryptocurrency-icons/svg/color', 30],
  ['media/demo', 20],
  ['test/fuzz/corpus', 100],
  ['/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1', 150],
];

/** Bytes: larger documents say nothing more, and take their time. */
const LONGEST = 30_000;

/**
 * @param root of the repository
 * @param longest bytes: of the files that are no longer each folder gives as many
 */
export function realDocuments(root: string, longest: number = LONGEST): string[] {
  return FOLDERS.flatMap(([folder, files]) => {
    const at = path.resolve(root, folder);
    if (!existsSync(at)) return [];
    const all = readdirSync(at).filter((name) => name.endsWith('.svg'));
    const short = all.map((name) => path.join(at, name)).filter((file) => statSync(file).size <= longest);
    const step = Math.max(1, Math.floor(short.length / files));
    return short.filter((_, i) => i % step === 0).map((file) => readFileSync(file, 'utf8'));
  });
}
