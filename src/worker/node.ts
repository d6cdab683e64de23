/** The worker as a thread of Node.js. */
import { getHeapStatistics } from 'node:v8';
import { parentPort } from 'node:worker_threads';
import type { ToWorker } from '../protocol/engine-worker';
import { EngineWorker } from './engine-worker';

/** V8 ends a thread whose heap is full: a run stops before, and says what it left out. */
const MEMORY_SHARE = 0.75;

/** Bytes of this thread alone. */
function memoryInUse(): number {
  const { used_heap_size: heap, external_memory: external } = getHeapStatistics();
  return heap + external;
}

const memoryBudget = MEMORY_SHARE * getHeapStatistics().heap_size_limit;
const worker = new EngineWorker((message) => parentPort?.postMessage(message), { memoryInUse, memoryBudget });
parentPort?.on('message', (message: ToWorker) => worker.receive(message));
