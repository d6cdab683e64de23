/** What is known of the checks, by their own word: those that have a folder, and what the engine itself reports. */
import { ALL_CHECKS } from '../../checks/all';
import type { CheckMeta } from '../../checks/meta';
import type { CheckId, KnownChecks } from '../../config/check-id';
import { type ConfigReading, parseConfig } from '../../config/read';
import { UNUSED_ACCEPTANCE } from './acceptances';
import { INTERNAL } from './fault';
import { UNFINISHED } from './unfinished';

export const ALL_METAS: readonly CheckMeta[] = [
  ...ALL_CHECKS.map(({ meta }) => meta),
  UNUSED_ACCEPTANCE,
  UNFINISHED,
  INTERNAL,
];

const METAS: ReadonlyMap<CheckId, CheckMeta> = new Map(ALL_METAS.map((meta) => [meta.id, meta]));

const KNOWN_CHECKS: KnownChecks = {
  ids: ALL_METAS.map(({ id }) => id),
  acceptable: ALL_METAS.filter(({ acceptable }) => acceptable).map(({ id }) => id),
};

export function metaOf(check: CheckId): CheckMeta | undefined {
  return METAS.get(check);
}

export const isKnownCheck = (check: CheckId): boolean => METAS.has(check);

export const isAcceptable = (check: CheckId): boolean => METAS.get(check)?.acceptable ?? false;

/** @param text of `tombolo.json`; comments and trailing commas are allowed */
export function readConfig(text: string): ConfigReading {
  return parseConfig(text, KNOWN_CHECKS);
}
