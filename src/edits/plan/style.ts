/** What a style of bridges asks of a plan. */
import type { BridgeStyle } from '../../config/bridge-style';
import type { PlanOptions } from './types';

const OPTIONS: Readonly<Record<BridgeStyle, Partial<PlanOptions>>> = {
  auto: {},
  upright: { align: 'vertical' },
  level: { align: 'level' },
  shortest: { shortestOnly: true },
  fewest: { count: 1 },
  hidden: { preferHidden: true },
};

export function optionsForStyle(style: BridgeStyle): Partial<PlanOptions> {
  return OPTIONS[style];
}
