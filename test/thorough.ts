/**
 * Long tests: `npm run test:unit` takes a share of their cases, `npm run test:wide` runs the same files with all of them.
 */
export const isThorough = process.env.TOMBOLO_THOROUGH === '1';

/** How many cases a long test takes; what it counts is to be expected in the same proportion. */
export const cases = (all: number, share: number): number => (isThorough ? all : share);

/** The files that `npm run test:wide` runs again. */
export const THOROUGH_TESTS: readonly string[] = [
  'test/drawing/stroke/strokes.test.ts',
  'test/edits/cut-any-path.test.ts',
  'test/engine/fixes/added-check.test.ts',
  'test/engine/fixes/never-worse.test.ts',
  'test/engine/fixes/kept-bridges.test.ts',
  'test/engine/fixes/order/print-stays.test.ts',
  'test/geometry/thickness/invariance.test.ts',
  'test/geometry/thickness/plain-runs.test.ts',
  'test/outside/icons.test.ts',
  'test/outside/necks-as-drawn.test.ts',
  'test/outside/necks-unmoved.test.ts',
  'test/outside/rewritten-curves.test.ts',
  'test/outside/safe-slip.test.ts',
  'test/outside/thin-random-regions.test.ts',
  'test/outside/tongues-posed.test.ts',
  'test/server/random-edits.test.ts',
  'test/sheet/hairlines.test.ts',
  'test/sheet/measure-again.test.ts',
];
