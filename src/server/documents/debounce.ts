/** One pending run for each document: asked for again, it is pushed back; cancelled, it never happens. */
export class Debouncer {
  private readonly pending = new Map<string, { timer: NodeJS.Timeout; immediate?: NodeJS.Immediate }>();

  /** @param delay milliseconds; whatever was pending under this key is dropped */
  schedule(delay: number, key: string, run: () => void): void {
    this.cancel(key);
    const timer = setTimeout(() => {
      // Changes that arrived while the process was busy are read before the run, and push it back.
      const immediate = setImmediate(() => {
        this.pending.delete(key);
        run();
      });
      this.pending.set(key, { timer, immediate });
    }, delay);
    this.pending.set(key, { timer });
  }

  /** @returns whether one was pending */
  cancel(key: string): boolean {
    const { timer, immediate } = this.pending.get(key) ?? {};
    clearTimeout(timer);
    clearImmediate(immediate);
    return this.pending.delete(key);
  }

  cancelAll(): void {
    for (const key of [...this.pending.keys()]) this.cancel(key);
  }
}
