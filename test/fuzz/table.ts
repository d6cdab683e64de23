/** What a run of the fuzz prints at its end. */
import type { FuzzTable } from './batches';

export function rowsOf({ documents, fixes, slowest, slow, slowestFix, memory, failures, kinds }: FuzzTable) {
  return {
    documents,
    'fixes made': fixes,
    'slowest check, ms of processor time': Math.round(slowest),
    'documents with a check over 2 s': slow,
    'slowest fix, ms of processor time': Math.round(slowestFix),
    'largest process, MB': Math.round(memory),
    failures: failures.length,
    ...kinds,
  };
}
