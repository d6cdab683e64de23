/**
 * Faults of our own. What fails alone is told alone: a check, a layer or a fix that cannot be worked out takes nothing
 * else away.
 */
import { Stopped } from '../../base/checkpoint';
import type { Finding } from '../../checks/finding';
import type { CheckMeta } from '../../checks/meta';
import { shortened } from '../../text/wording';

export const INTERNAL: CheckMeta = {
  id: 'internal',
  summary: 'A fault of Tombolo itself, met while it looked at this file.',
  outcome: 'make Tombolo fail',
  severity: 'warning',
  reads: 'file',
  fixes: [],
  acceptable: false,
  // Of what could not be looked at nobody knows whether it got worse.
  afterFix: { refuses: true },
};

/** What was thrown by code that should not have. */
export interface Fault {
  readonly fault: string;
}

/** Characters of what was thrown that a message has room for. */
const ROOM = 60;

/**
 * What a part of the engine gives, or `otherwise` where it fails.
 * @throws Stopped where the run must end, which is no fault. In tests whatever was thrown, so that none passes unseen
 */
export function isolated<T>(work: () => T, otherwise: (fault: Fault) => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof Stopped || globalThis.tomboloAssertions) throw error;
    return otherwise({ fault: error instanceof Error ? error.message : String(error) });
  }
}

/** @param part of the run, as the report calls it */
export function internalFinding(part: string, { fault }: Fault): Finding {
  const { id: check, severity } = INTERNAL;
  return {
    check,
    severity,
    message: `Tombolo itself failed at ${shortened(part, ROOM)}: nothing is known of it; the rest stands.`,
    detail: `This is no fault of the drawing. Please report it with this file and these words: ${part}: ${fault}`,
    span: { from: 0, to: 0 },
    related: [],
  };
}

/** Why there is no fix where proving it failed. */
export function internalReason({ fault }: Fault): string {
  return `Tombolo itself failed here; please report it: ${shortened(fault, ROOM)}`;
}
