/** Boxes round the curves of a chain, in mm. A chain is met again after each edit, so they are remembered. */
import type { Curve } from '../base/curve-types';
import { memoizeByIdentity } from '../base/derived-facts';
import type { Box } from '../base/polygon-types';
import { joinBoxes } from '../base/ring';
import { roughBoundsOf } from './measure';

export interface ChainBoxes {
  /** Round all of it. */
  readonly whole: Box;
  /** Round each of its curves; not the least ones. */
  readonly curves: readonly Box[];
}

export const boxesOfChain = memoizeByIdentity('boxes of a chain', (chain: readonly Curve[]): ChainBoxes => {
  const curves = chain.map(roughBoundsOf);
  return { whole: joinBoxes(curves), curves };
});
