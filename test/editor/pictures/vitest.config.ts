import { defineConfig } from 'vitest/config';

/** Makes the pictures in `media/` anew, out of the real editor. */
export default defineConfig({
  test: {
    include: ['test/editor/pictures/*.test.ts'],
    globalSetup: 'test/editor/workbench/stage.ts',
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
