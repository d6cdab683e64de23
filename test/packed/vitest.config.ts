import { defineConfig } from 'vitest/config';

/** The library's package, made as npm makes it and used as its users do; runs by `npm run test:package`. */
export default defineConfig({
  test: { include: ['test/packed/**/*.test.ts'], testTimeout: 120_000, hookTimeout: 300_000 },
});
