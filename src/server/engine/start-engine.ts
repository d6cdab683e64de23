import { Worker } from 'node:worker_threads';
import type { FromWorker } from '../../protocol/engine-worker';
import type { StartEngine } from './engine-client';

/** @param file the worker's bundle */
export function engineFrom(file: string): StartEngine {
  return (hear, ended) => {
    const worker = new Worker(file);
    let reason = '';
    worker.on('message', (message: FromWorker) => hear(message));
    worker.on('error', (error) => {
      reason = String(error);
    });
    worker.on('exit', (code) => ended(reason || `exit code ${code}`));
    return { post: (message) => worker.postMessage(message), end: () => void worker.terminate() };
  };
}
