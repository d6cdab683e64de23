/** Words of files and of their names on a terminal, and in the logs of build services that obey what they read there. */
import { oneLine as plain } from '../text/plain-text';

/**
 * GitHub's runners take `::name::` at the beginning of a line for a command, and `##[name]` anywhere; Azure's take
 * `##vso[name]`.
 */
const COMMAND = /^::|##(?=\[|vso\[)/g;

/** The text in one line that neither a terminal nor a build service obeys. */
export function oneLine(text: string): string {
  return plain(text).replace(COMMAND, (start) => `${start[0]} ${start.slice(1)}`);
}
