import { defineConfig } from 'vitest/config';

/** The long corpora, run apart: `npx vitest run --config test/wide/vitest.config.ts`. They print their tables. */
export default defineConfig({
  test: {
    include: ['test/wide/**/*.test.ts'],
    setupFiles: ['test/seed.ts'],
    testTimeout: 900_000,
    disableConsoleIntercept: true,
    maxWorkers: '100%',
  },
});
