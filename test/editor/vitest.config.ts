import { defineConfig } from 'vitest/config';

/** Drives the real workbench; needs the host in `host/` and a built `dist/`. */
export default defineConfig({
  test: {
    include: ['test/editor/workbench/**/*.test.ts'],
    testTimeout: 90_000,
    hookTimeout: 120_000,
    globalSetup: 'test/editor/workbench/stage.ts',
    // One after the other in one process: a page that a file has left in order serves the next.
    fileParallelism: false,
    isolate: false,
    // A busy machine takes its time to answer; what never comes fails all the same.
    expect: { poll: { timeout: 20_000 } },
    // A click that comes while the page is still moving is lost. What fails twice fails; what failed once is listed.
    retry: 1,
  },
});
