/** What is known of the checks, by their own word: those that have a folder, and what the engine itself reports. */
import { ALL_CHECKS } from '../checks/all';
import type { CheckMeta } from '../checks/meta';
import type { CheckId, KnownChecks } from '../config/check-id';
import { UNUSED_ACCEPTANCE } from './check/acceptances';
import { INTERNAL } from './check/fault';
import { UNFINISHED } from './check/unfinished';

export const ALL_METAS: readonly CheckMeta[] = [
  ...ALL_CHECKS.map(({ meta }) => meta),
  UNUSED_ACCEPTANCE,
  UNFINISHED,
  INTERNAL,
];

const METAS: ReadonlyMap<CheckId, CheckMeta> = new Map(ALL_METAS.map((meta) => [meta.id, meta]));

/** What a configuration may name. */
export const KNOWN_CHECKS: KnownChecks = {
  ids: ALL_METAS.map(({ id }) => id),
  acceptable: ALL_METAS.filter(({ acceptable }) => acceptable).map(({ id }) => id),
};

export function metaOf(check: CheckId): CheckMeta | undefined {
  return METAS.get(check);
}

export const isKnownCheck = (check: CheckId): boolean => METAS.has(check);

export const isAcceptable = (check: CheckId): boolean => METAS.get(check)?.acceptable ?? false;
