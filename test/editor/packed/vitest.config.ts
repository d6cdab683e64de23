import { defineConfig } from 'vitest/config';

/** Packs the extension and installs it; slower than the others, so it runs by `npm run test:package`. */
export default defineConfig({
  test: {
    include: ['test/editor/packed/**/*.test.ts'],
    globalSetup: 'test/editor/packed/stage.ts',
    testTimeout: 90_000,
    hookTimeout: 120_000,
    retry: 1,
  },
});
