import { defineConfig } from 'vitest/config';

/** Drives the real workbench; needs the host in `host/` and a built `dist/`. */
export default defineConfig({
  test: {
    include: ['test/editor/workbench/**/*.test.ts'],
    testTimeout: 90_000,
    hookTimeout: 120_000,
    globalSetup: 'test/editor/workbench/stage.ts',
    // One file after the other: a page that one has left in order serves the next. Two at a time save a tenth of the time
    // on two cores, and lose clicks and keys in pages that are still opening.
    maxWorkers: 1,
    isolate: false,
    // A busy machine takes its time to answer; what never comes fails all the same.
    expect: { poll: { timeout: 20_000 } },
    // A click that comes while the page is still moving is lost. What fails twice fails; what failed once is listed.
    retry: 1,
  },
});
