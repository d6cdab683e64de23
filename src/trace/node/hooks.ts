/** Runs in the thread of module hooks: marks modules of the ECMAScript kind as they are loaded. */
import type { LoadHook } from 'node:module';
import { settingsOfProcess } from '../settings';
import { loadedText } from './load';
import { isOwn, pathOf } from './own-files';

const settings = settingsOfProcess();

export const load: LoadHook = async (url, context, next) => {
  const loaded = await next(url, context);
  const file = pathOf(url);
  // CommonJS is marked where it is compiled; of packages only the modules that may make elements are looked at.
  if (!settings || file === undefined || loaded.format !== 'module' || !loaded.source) return loaded;
  const source =
    typeof loaded.source === 'string' ? loaded.source : Buffer.from(loaded.source as Uint8Array).toString();
  const text = isOwn(file) || source.includes('createElementNS') ? loadedText(source, file, settings) : source;
  return text === source ? loaded : { ...loaded, source: text };
};
