/** The worker as a thread of Node.js. */
import { parentPort } from 'node:worker_threads';
import type { ToWorker } from '../protocol/engine-worker';
import { EngineWorker } from './engine-worker';

const worker = new EngineWorker((message) => parentPort?.postMessage(message));
parentPort?.on('message', (message: ToWorker) => worker.receive(message));
