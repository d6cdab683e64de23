import { defineConfig } from 'vitest/config';

/** They put something else in the place of a module that other tests use. */
export const APART = [
  'test/cli/files/write-folder.test.ts',
  'test/engine/fixes/added-check.test.ts',
  'test/server/documents/known-configs.test.ts',
  'test/worker/check-store.test.ts',
];

/** Tests of other configurations. */
export const ELSEWHERE = ['test/editor/**', 'test/packed/**', 'test/site/**', 'test/wide/**', '**/node_modules/**'];

/** @param without patterns of tests that are left out */
export function unitTests(without: readonly string[] = []) {
  const exclude = [...ELSEWHERE, ...without];
  const shared = { setupFiles: ['test/seed.ts'], testTimeout: 60_000 };
  // No module keeps state: tests can share what is loaded and compiled, which takes a third off their time.
  const units = { name: 'units', include: ['test/**/*.test.ts'], exclude: [...exclude, ...APART], isolate: false };
  const apart = { name: 'apart', include: APART, exclude };
  return [{ test: { ...shared, ...units } }, { test: { ...shared, ...apart } }];
}

export default defineConfig({ test: { maxWorkers: '100%', projects: unitTests() } });
