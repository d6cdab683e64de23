import { defineConfig } from 'vitest/config';
import { SLOW_TESTS } from './slow-tests';
import { unitTests } from './vitest.config';

/** The quick tier, for every pause in the work: under a minute on two cores. `npm run test:unit` is the whole. */
export default defineConfig({ test: { maxWorkers: '100%', projects: unitTests(SLOW_TESTS) } });
