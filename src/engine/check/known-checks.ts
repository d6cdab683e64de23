/** Reads what may name the checks that there are. */
import { type ConfigReading, parseConfig } from '../../config/read';
import { KNOWN_CHECKS } from '../metas';

export { ALL_METAS, isAcceptable, isKnownCheck, metaOf } from '../metas';

/** @param text of `tombolo.json`; comments and trailing commas are allowed */
export function readConfig(text: string): ConfigReading {
  return parseConfig(text, KNOWN_CHECKS);
}
