/** The separator as a thread of Node.js. */
import { parentPort, workerData } from 'node:worker_threads';
import type { ToSeparator } from '../../protocol/separating';
import { decodePicture } from '../file/decode';
import { Separator } from './separator';

/** Where the number of what was asked last is written, before its message is sent. */
const newest = new Int32Array((workerData as { readonly newest: SharedArrayBuffer }).newest);

const separator = new Separator(
  (message) => parentPort?.postMessage(message),
  () => Atomics.load(newest, 0),
  decodePicture,
);
parentPort?.on('message', (message: ToSeparator) => void separator.receive(message));
