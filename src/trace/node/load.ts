/** What becomes of a module's text before the program sees it. */
import { createRequire } from 'node:module';
import path from 'node:path';
import type { TraceSettings } from '../settings';
import type { markSource } from './mark-source';
import { isOwn } from './own-files';
import { wrapMakers } from './tree-libraries';

/** The program's own name of what gives callers. */
export const CALLERS = '__tomboloCallers';

/** Reading programs takes a parser, which is loaded only when there is one to read. */
const load = createRequire(__filename);

export function loadedText(source: string, file: string, { root, attribute }: TraceSettings): string {
  if (!isOwn(file)) return wrapMakers(source);
  // The thread of hooks has been started with the preload as well, and may have marked it already.
  if (!source.includes('<') || source.includes(attribute)) return source;
  const marker = load(path.join(__dirname, 'marker.cjs')) as { readonly markSource: typeof markSource };
  return marker.markSource(source, { file, root, attribute, callers: `globalThis.${CALLERS}()` });
}
