/** What a run of the fuzz prints at its end. */
import type { FuzzTable } from './batches';

export function rowsOf(table: FuzzTable) {
  const { documents, fixes, pictures, pictured, slowest, slow, slowestFix, memory, failures, kinds } = table;
  return {
    documents,
    'fixes made': fixes,
    ...(pictures > 0 && { 'fixes with pictures before and after': pictures, 'documents with such fixes': pictured }),
    'slowest check, ms of processor time': Math.round(slowest),
    'documents with a check over 2 s': slow,
    'slowest fix, ms of processor time': Math.round(slowestFix),
    'largest process, MB': Math.round(memory),
    failures: failures.length,
    ...kinds,
  };
}
