/**
 * What the server tells the worker while that is busy and hears no message: which request nobody waits for any more, and
 * that something more urgent waits. Both look at one piece of shared memory; where there is none, nothing is told, and
 * the worker hears of it between two requests.
 */

/** What a request is waited for with; the lower the number, the more urgent. */
export const Priority = {
  /** Someone has chosen something and waits for it: a fix, a bridge, a picture. */
  chosen: 0,
  /** It would be shown if it were there at once: what lies under the pointer. */
  glance: 1,
  /** The check of a document. */
  check: 2,
  /** Done ahead, in case somebody asks. */
  background: 3,
} as const;
export type Priority = (typeof Priority)[keyof typeof Priority];

/** So many requests may wait at a time; a mark of an older one is overwritten, and then it is done for nothing. */
const CANCEL_SLOTS = 256;
const LEVELS = 4;

export class RunSignals {
  private readonly cells: Int32Array;

  readonly memory: ArrayBufferLike;

  /** @param memory what the other side has; by default new, shared where that can be */
  constructor(memory: ArrayBufferLike = newMemory()) {
    this.memory = memory;
    this.cells = new Int32Array(memory);
  }

  /** Nobody waits for the request of that number any more. */
  cancel(id: number): void {
    Atomics.store(this.cells, LEVELS + (id % CANCEL_SLOTS), id);
  }

  isCancelled(id: number): boolean {
    return Atomics.load(this.cells, LEVELS + (id % CANCEL_SLOTS)) === id;
  }

  /** A request was sent that the worker has not heard yet. */
  sent(priority: Priority): void {
    Atomics.add(this.cells, priority, 1);
  }

  /** The worker has heard a request. */
  heard(priority: Priority): void {
    if (Atomics.load(this.cells, priority) > 0) Atomics.sub(this.cells, priority, 1);
  }

  /** Whether a request is on its way that is more urgent than that. */
  isMoreUrgent(than: Priority): boolean {
    for (let level = 0; level < than; level += 1) if (Atomics.load(this.cells, level) > 0) return true;
    return false;
  }
}

function newMemory(): ArrayBufferLike {
  const bytes = (LEVELS + CANCEL_SLOTS) * Int32Array.BYTES_PER_ELEMENT;
  return typeof SharedArrayBuffer === 'undefined' ? new ArrayBuffer(bytes) : new SharedArrayBuffer(bytes);
}
