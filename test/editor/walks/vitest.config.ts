import { mergeConfig } from 'vitest/config';
import workbench from '../vitest.config';

/** Whole jobs in the real editor, step by step; they take minutes, and are run apart from the workbench's own tests. */
const walks = mergeConfig(workbench, { test: { testTimeout: 400_000 } });
walks.test.include = ['test/editor/walks/**/*.test.ts'];

export default walks;
