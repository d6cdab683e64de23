/** What the engine asks of where it runs: browsers and Node.js both have this clock, the language itself has not. */
declare const performance: { now(): number };

/** Milliseconds since some moment; only differences mean something. */
export const now = (): number => performance.now();
