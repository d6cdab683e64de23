/** One pending run for each document: asked for again, it is pushed back; cancelled, it never happens. */
export class Debouncer {
  /** By what each pending run is called off. */
  private readonly pending = new Map<string, () => void>();

  /** @param delay milliseconds; whatever was pending under this key is dropped */
  schedule(delay: number, key: string, run: () => void): void {
    this.cancel(key);
    const timer = setTimeout(() => {
      // Changes that arrived while the process was busy are read before the run, and push it back.
      const callOff = afterWhatHasArrived(() => {
        this.pending.delete(key);
        run();
      });
      this.pending.set(key, callOff);
    }, delay);
    this.pending.set(key, () => clearTimeout(timer));
  }

  /** @returns whether one was pending */
  cancel(key: string): boolean {
    this.pending.get(key)?.();
    return this.pending.delete(key);
  }

  cancelAll(): void {
    for (const key of [...this.pending.keys()]) this.cancel(key);
  }
}

/** @returns what calls it off */
function afterWhatHasArrived(run: () => void): () => void {
  // Only Node.js has it; a worker in a browser takes the messages that wait before its next timer.
  if (typeof setImmediate === 'function') {
    const immediate = setImmediate(run);
    return () => clearImmediate(immediate);
  }
  const timer = setTimeout(run, 0);
  return () => clearTimeout(timer);
}
