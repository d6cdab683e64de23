/** `tombolo cut --repeat`: sheets that are sprayed again and again along a wall. */
import { InvalidArgumentError } from 'commander';
import { type Repeat, type RepeatPlan, repeatPlan } from '../../engine/index';
import { Failure } from '../failure';
import type { LoadedStack } from '../files/load-stack';

export interface RepeatOptions {
  readonly repeat?: Repeat['axis'];
  /** mm */
  readonly step?: number;
}

export function parseDirection(text: string): Repeat['axis'] {
  const direction = text.trim().toLowerCase();
  if (direction === 'right') return 'x';
  if (direction === 'down') return 'y';
  throw new InvalidArgumentError('Write right or down.');
}

/** How it goes on along the wall; undefined where that is not asked for. */
export function repeatFor(
  { report }: LoadedStack,
  { repeat: axis, step: stated, tiles }: RepeatOptions & { readonly tiles?: unknown },
): { readonly plan: RepeatPlan; readonly told: string } | undefined {
  if (axis === undefined) {
    if (stated !== undefined) throw new Failure('say with --repeat whether it goes on right or down');
    return undefined;
  }
  if (tiles) throw new Failure('tiles have no register holes of a repeat: leave out --tiles or --repeat');
  const { width, height } = report.drawing;
  const step = stated ?? (axis === 'x' ? width : height);
  const plan = repeatPlan(report, { axis, step });
  if (!plan) {
    throw new Failure(
      `no room for register holes ${Number(step.toFixed(2))} mm apart: a margin of 10 mm in tombolo.json would give it`,
    );
  }
  const [near, far] = axis === 'x' ? ['left', 'right'] : ['upper', 'lower'];
  const told = `Repeat it every ${Number(step.toFixed(2))} mm: mark the wall through the two ${far} holes, then lay the ${near} ones on the marks.`;
  return { plan, told };
}
