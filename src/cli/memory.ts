/** How much memory the process holds, and how much a run may use of it. */
import { getHeapStatistics, setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

/** Bytes: V8 ends a process whose heap is full, so that the findings of other files would be lost. */
export const MEMORY_BUDGET = 0.75 * getHeapStatistics().heap_size_limit;

/** Milliseconds between two collections that are asked for: each may take a second. */
const BETWEEN_COLLECTIONS = 3000;

let lastCollection = -Infinity;

/** Bytes. What could be collected does not count where it makes the difference. */
export function memoryInUse(): number {
  const held = measure();
  if (held <= MEMORY_BUDGET || performance.now() - lastCollection < BETWEEN_COLLECTIONS) return held;
  collectGarbage();
  lastCollection = performance.now();
  return measure();
}

function measure(): number {
  // The process itself would also be asked for what it holds of the machine, which takes several times as long.
  const { used_heap_size: heap, external_memory: external } = getHeapStatistics();
  return heap + external;
}

/** Node gives its collector to a script only where a flag says so; flags hold for contexts made later. */
function collectGarbage(): void {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
}
