/**
 * What holds in every run of the tests. Random shapes are the same, so that a run fails only for what has changed;
 * others are drawn with another seed: `TOMBOLO_SEED=7 npm run test:unit`. And a wrong index throws, see
 * src/base/defined.ts.
 */
import fc from 'fast-check';

globalThis.tomboloAssertions = true;
fc.configureGlobal({ seed: Number(process.env.TOMBOLO_SEED ?? 20) });
