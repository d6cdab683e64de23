import { defineConfig } from 'vitest/config';

/** Builds the documentation and looks at it in a browser, by `npm run test:site`. */
export default defineConfig({
  test: { include: ['test/site/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 240_000 },
});
