/** Takes one finding of the bench after the other, the way of a person who wants none left. */
import { expect } from 'vitest';
import { choose, findings, fixOf, type Lightbulb, lightbulbAt } from './lightbulb';
import type { Workbench } from './workbench';

export interface Step extends Lightbulb {
  /** The id of its check. */
  readonly check: string;
  /** The row that was chosen. */
  readonly taken: string;
}

/** More than any drawing of these tests has findings. */
const MANY = 15;

/**
 * Takes the first fix of the first finding, or ignores it with a reason where it has none, until nothing is left.
 * @param reason is typed where the caret waits for it
 */
export async function mendAll(workbench: Workbench, reason: string): Promise<Step[]> {
  const steps: Step[] = [];
  while ((await findings(workbench).count()) > 0) {
    expect(steps.length, steps.map(({ taken }) => taken).join('\n')).toBeLessThan(MANY);
    const first = (await findings(workbench).first().textContent()) ?? '';
    const bulb = await lightbulbAt(workbench, 0);
    const fix = fixOf(bulb);
    const taken = fix ?? bulb.offered.find((row) => row.startsWith('Ignore '));
    if (taken === undefined) throw new Error(`Nothing is offered for: ${first}`);
    await choose(workbench, taken);
    if (fix === undefined) await workbench.page.keyboard.type(reason);
    steps.push({ ...bulb, check: /^\d*([a-z-]+)/.exec(first)?.[1] ?? first, taken });
  }
  return steps;
}
