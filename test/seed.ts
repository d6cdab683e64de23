/**
 * Random shapes are the same in every run of the tests, so that a run fails only for what has changed. Others are drawn
 * with another seed: `TOMBOLO_SEED=7 npm run test:unit`.
 */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.TOMBOLO_SEED ?? 20) });
