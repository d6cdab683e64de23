/** Boxes round the curves of a chain, in mm. A chain is met again after each edit, so they are remembered. */
import type { Curve } from './curve';
import { roughBoundsOf } from './measure-curve';
import type { Box } from './region';
import { remember } from './remember';
import { joinBoxes } from './rings';

export interface ChainBoxes {
  /** Round all of it. */
  readonly whole: Box;
  /** Round each of its curves; not the least ones. */
  readonly curves: readonly Box[];
}

export const boxesOfChain = remember((chain: readonly Curve[]): ChainBoxes => {
  const curves = chain.map(roughBoundsOf);
  return { whole: joinBoxes(curves), curves };
});
