import { inject } from 'vitest';
import type { Stage } from './stage';

/** What is there for the worker that this file runs in. */
export function ownStage(): Stage {
  const stages = inject('stages');
  const stage = stages[(Number(process.env.VITEST_POOL_ID) - 1) % stages.length];
  if (!stage) throw new Error('No stage was raised.');
  return stage;
}
