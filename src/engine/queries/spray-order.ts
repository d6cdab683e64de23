/** In which order the stack of a report has the fewest islands. */
import { limitsOf } from '../../config/limits';
import { count } from '../../config/values';
import type { Report } from '../../report/report';
import { fewestIslands, type SprayOrder, tooManyToOrder } from '../../stack/order/index';
import { effectiveConfig } from '../check/effective-config';

/**
 * @param lightOverDark how many islands a lighter paint over a darker one counts; see `OrderChoice`
 * @returns one sentence where there are too many layers for the best order to be found
 */
export function sprayOrder({ stack, settings, session }: Report, lightOverDark = 0): SprayOrder | string {
  const { layers, firsts } = stack;
  const most = tooManyToOrder(firsts);
  if (most) return `This stack has ${count(layers.length, 'layer')}; the best order is only found for ${most}.`;
  const { slip } = limitsOf(effectiveConfig(settings));
  return session.remember(`spray order ${lightOverDark}`, () => fewestIslands(layers, { slip, lightOverDark }, firsts));
}
