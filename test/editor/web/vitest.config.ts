import { defineConfig } from 'vitest/config';

/** Drives the extension in a browser's own extension host, without Node.js; by `npm run test:web`. */
export default defineConfig({
  test: {
    include: ['test/editor/web/**/*.test.ts'],
    globalSetup: 'test/editor/web/stage.ts',
    testTimeout: 90_000,
    hookTimeout: 120_000,
    fileParallelism: false,
    isolate: false,
    expect: { poll: { timeout: 20_000 } },
    retry: 1,
  },
});
