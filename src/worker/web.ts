/** The worker as a Web Worker. */
import type { FromWorker, ToWorker } from '../protocol/engine-worker';
import { EngineWorker } from './engine-worker';

declare const self: {
  postMessage(message: FromWorker): void;
  addEventListener(type: 'message', listen: (event: { readonly data: ToWorker }) => void): void;
};

const worker = new EngineWorker((message) => self.postMessage(message));
self.addEventListener('message', ({ data }) => worker.receive(data));
