/** The thread that separates one picture, as the panel asks it. */
import { Worker } from 'node:worker_threads';
import type * as vscode from 'vscode';
import type { FromSeparator, ToSeparator } from '../../protocol/separating';

export class SeparatorThread implements vscode.Disposable {
  private readonly newest = new Int32Array(new SharedArrayBuffer(4));
  private readonly thread: Worker;

  /**
   * @param script the thread's own
   * @param heard gets its answers
   * @param failed hears in one line why there will be none
   */
  constructor(script: string, heard: (message: FromSeparator) => void, failed: (reason: string) => void) {
    this.thread = new Worker(script, { workerData: { newest: this.newest.buffer } });
    this.thread.on('message', heard);
    this.thread.on('error', (error: Error) => failed(error.message));
  }

  /** What was asked before is stopped. */
  ask(message: ToSeparator): void {
    if (message.type !== 'open') Atomics.store(this.newest, 0, message.id);
    this.thread.postMessage(message);
  }

  stop(): void {
    Atomics.store(this.newest, 0, -1);
  }

  dispose(): void {
    this.stop();
    void this.thread.terminate();
  }
}
