import { defineConfig } from 'vitest/config';
import { THOROUGH_TESTS } from '../thorough';

/**
 * The long corpora, and the long tests with all of their cases, run apart:
 * `npx vitest run --config test/wide/vitest.config.ts`. They print their tables.
 */
export default defineConfig({
  test: {
    include: ['test/wide/**/*.test.ts', ...THOROUGH_TESTS],
    env: { TOMBOLO_THOROUGH: '1' },
    setupFiles: ['test/seed.ts'],
    testTimeout: 900_000,
    disableConsoleIntercept: true,
    maxWorkers: '100%',
  },
});
